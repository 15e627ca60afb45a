import type { Sheet } from '../../drill/generate.js';

/** A sheet with what has to stand on it so that it can be made again and marked by its own key. */
export interface PrintedSheet {
  sheet: Sheet;
  /** Fingerprint of the sheet, as `sheetCode` gives it. */
  code: string;
  /** The command line that makes the sheet again. */
  command: string;
}

/** What the sheet is about, for its title. */
export function subjectOf({ problems, level }: Sheet): string {
  const titles = [...new Set(problems.map((problem) => problem.topicTitle))];
  return `${titles.length === 1 ? titles[0] : 'mixed topics'}, level ${level}`;
}
