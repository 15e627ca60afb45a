import type { Path } from './step.js';

/** One thing that is wrong in a document, and where. */
export interface Problem {
  file: string;
  /** Keys and indices from the top of the document; an engine's file hangs under `engine`. */
  path: Path;
  /** From one; missing where the whole file is meant. */
  line?: number;
  column?: number;
  /** The offending line, cut to a width that a terminal holds. */
  excerpt?: string;
  /** Where the offending text starts in the excerpt, and how long it is there. */
  markerOffset?: number;
  markerLength?: number;
  message: string;
  expected?: string;
  hint?: string;
}

/** Nobody reads on after this many, and a hostile file could ask for millions. */
const MOST_SHOWN = 200;

/** A problem as a person reads it: place, message, the line with a marker under the text, what was expected. */
export function problemText(problem: Problem): string {
  const {
    file,
    line,
    column,
    excerpt,
    markerOffset = 0,
    markerLength = 1,
    message,
    expected,
    hint,
  } = problem;
  const place = line === undefined ? file : `${file}:${line}:${column}`;
  const lines = [`${place}: ${message}`];
  if (excerpt !== undefined) {
    const gutter = `${line} | `;
    lines.push(`  ${gutter}${excerpt}`);
    lines.push(`  ${' '.repeat(gutter.length + markerOffset)}${'^'.repeat(markerLength)}`);
  }
  if (expected !== undefined) lines.push(`  expected: ${expected}`);
  if (hint !== undefined) lines.push(`  ${hint}`);
  return lines.join('\n');
}

/** All that is wrong in a document and the files it draws on, in the order of the text. */
export class LayoutProblems extends Error {
  override name = 'LayoutProblems';
  readonly problems: readonly Problem[];
  /** Whether there may be more of them, the search having stopped. */
  readonly more: boolean;
  /** What they were found in. */
  readonly within: string;

  constructor(problems: readonly Problem[], more = false, within = 'the layout') {
    const rest = more ? [`There are more; these are the first ${problems.length} that were found.`] : [];
    super([...problems.map(problemText), ...rest].join('\n'));
    this.problems = problems;
    this.more = more;
    this.within = within;
  }
}

/** Control and formatting characters could rewrite the reader's terminal; a tab would move the marker. */
export function printable(text: string): string {
  return text.replace(/\t/g, ' ').replace(/[\p{Cc}\p{Cf}\u2028\u2029]/gu, '\ufffd');
}

/** Gathers problems while a document is read. */
export class ProblemList {
  private readonly found: Problem[] = [];
  private readonly seen = new Set<string>();
  private readonly files: string[] = [];

  get any(): boolean {
    return this.found.length > 0;
  }

  get all(): readonly Problem[] {
    return this.found;
  }

  /** Whether no more are taken. */
  get full(): boolean {
    return this.found.length >= MOST_SHOWN;
  }

  add(problem: Problem): void {
    const key = `${problem.file}:${problem.line}:${problem.column}:${problem.message}`;
    if (this.seen.has(key)) return;
    if (this.full) return;
    this.seen.add(key);
    if (!this.files.includes(problem.file)) this.files.push(problem.file);
    this.found.push({ ...problem, file: printable(problem.file), message: printable(problem.message) });
  }

  /** In the order of the files and their lines. */
  toError(within?: string): LayoutProblems {
    const rank = (problem: Problem) => this.files.findIndex((file) => printable(file) === problem.file);
    const sorted = [...this.found].sort(
      (one, other) =>
        rank(one) - rank(other) ||
        (one.line ?? 0) - (other.line ?? 0) ||
        (one.column ?? 0) - (other.column ?? 0),
    );
    return new LayoutProblems(sorted, this.full, within);
  }
}
