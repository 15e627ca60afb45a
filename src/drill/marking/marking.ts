import type { Problem } from '../problem.js';

/** One cell of an answer sheet. `text` may be blank, `72 psi`, `72psi`, `500 kPa`, `1/2`, `72,5`, or a choice's letter. */
export interface GivenAnswer {
  readonly student: string;
  /** A problem's number on the sheet (`1`, `q1`, `Q 1`) or its id. */
  readonly problem: string;
  readonly text: string;
}

export type Verdict = 'right' | 'wrong' | 'blank' | 'unreadable';

export interface MarkedAnswer {
  readonly student: string;
  readonly problem: Problem;
  readonly text: string;
  readonly verdict: Verdict;
  /** The answer as read, in the problem's unit; a word for a word answer. */
  readonly read?: number | string;
  /** The slip that gives this wrong answer, where one does. */
  readonly slip?: { readonly slip: string; readonly why: string };
  /** Why it could not be read, or that it carried another unit than asked. */
  readonly note?: string;
}

export interface TopicMark {
  readonly topic: string;
  readonly topicTitle: string;
  readonly right: number;
  readonly wrong: number;
  readonly blank: number;
  /** Slips made, most frequent first. */
  readonly slips: readonly { readonly slip: string; readonly why: string; readonly count: number }[];
}

export interface StudentMark {
  readonly student: string;
  readonly right: number;
  readonly of: number;
  readonly answers: readonly MarkedAnswer[];
  readonly topics: readonly TopicMark[];
  /** What to teach again: one sentence a topic or slip, worst first. */
  readonly teachAgain: readonly string[];
}

export interface Marking {
  readonly students: readonly StudentMark[];
  readonly topics: readonly TopicMark[];
  readonly teachAgain: readonly string[];
  /** Cells that belong to no problem, rows that could not be read. */
  readonly notes: readonly string[];
}

/** Mark one answer to one problem: blank, unreadable, right within tolerance, or wrong by a known slip. */
export declare function markAnswer(problem: Problem, student: string, text: string): MarkedAnswer;

/** Mark a class: every student against every problem; a missing cell or row counts as blank. */
export declare function markClass(problems: readonly Problem[], answers: readonly GivenAnswer[]): Marking;

/**
 * Read a CSV of answers: first row names the columns; one student a row (`student,1,2,3`), or, where there are
 * columns `problem` (or `question`) and `answer`, one answer a row. Comma, semicolon or tab; byte-order mark, quotes,
 * blank lines and short rows are survived. `student` is used where the file has no column for the name.
 */
export declare function readAnswers(csv: string, student: string): readonly GivenAnswer[];
