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
export function subjectOf({ problems, exam }: Sheet): string {
  const titles = [...new Set(problems.map((problem) => problem.topicTitle))];
  const levels = problems.map(({ level }) => level);
  const [least, most] = [Math.min(...levels), Math.max(...levels)];
  const level = least === most ? `level ${least}` : `levels ${least} to ${most}`;
  const version = exam === undefined ? '' : `, version ${exam}`;
  return `${titles.length === 1 ? titles[0] : 'mixed topics'}, ${level}${version}`;
}
