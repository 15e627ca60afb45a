import { decimalsOf } from '../print.js';
import type { Problem, Slip } from '../problem.js';
import { readCsv } from './csv.js';
import { readAnswer } from './read-answer.js';
import { teachAgain } from './teach-again.js';

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
export function markAnswer(problem: Problem, student: string, text: string): MarkedAnswer {
  const base = { student, problem, text };
  const reading = readAnswer(problem, text);
  if (reading.kind === 'blank') return { ...base, verdict: 'blank' };
  if (reading.kind === 'unreadable') return { ...base, verdict: 'unreadable', note: reading.note };
  const { answer } = problem;
  if (reading.kind === 'word' || answer.kind === 'word') {
    const word = reading.kind === 'word' ? reading.word : String(reading.value);
    const right = answer.kind === 'word' && word === answer.word;
    const slip = slipOfChoice(problem, word);
    return { ...base, verdict: right ? 'right' : 'wrong', read: word, ...(right ? {} : slipPart(slip)) };
  }
  const note = reading.note === undefined ? {} : { note: reading.note };
  const off = Math.abs(reading.value - answer.value);
  if (off <= answer.tolerance * (1 + 1e-9))
    return { ...base, verdict: 'right', read: reading.value, ...note };
  const rounded = roundedTo(reading.value, answer.value);
  const near = slipOf(problem, reading.value);
  const printed = near !== undefined && Number(near.text.replace(/,/g, '').split(' ')[0]) === reading.value;
  const slip = slipOfChoice(problem, reading.value) ?? (rounded && !printed ? undefined : near);
  const coarse = `it is the right answer rounded to the nearest ${rounded} ${answer.unit}, and within ${answer.tolerance} is asked`;
  return {
    ...base,
    verdict: 'wrong',
    read: reading.value,
    ...slipPart(slip),
    ...(rounded && slip === undefined ? { note: coarse } : note),
  };
}

const slipPart = (slip: { slip: string; why: string } | undefined) =>
  slip === undefined ? {} : { slip: { slip: slip.slip, why: slip.why } };

/** The mistake behind a wrong choice, or behind a wrong word. */
function slipOfChoice({ choices, slips, answer }: Problem, value: number | string) {
  const choice = choices.find((each) => each.value === value && !each.right);
  if (choice?.slip !== undefined && choice.why !== undefined) return { slip: choice.slip, why: choice.why };
  return answer.kind === 'word' ? slips.find((slip) => slip.value === value) : undefined;
}

/** Five or ten, where the value is another rounded to it. */
const roundedTo = (value: number, exact: number): number | undefined =>
  [5, 10].find((step) => value !== 0 && Math.abs(step * Math.round(exact / step) - value) < 1e-9);

/** How far an answer may lie from a slip's, as a part of it, and still be taken for it. */
const SLIP_BAND = 0.02;

/** The slip whose answer lies nearest, if it is near enough. */
function slipOf(problem: Problem, value: number): Slip | undefined {
  const { answer } = problem;
  if (answer.kind !== 'number') return undefined;
  let best: Slip | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const slip of problem.slips) {
    const expected = slip.value as number;
    const off = Math.abs(value - expected);
    const size = Math.abs(expected);
    const printed = 0.5 * 10 ** -decimalsOf(expected, answer.unit);
    const near = Math.max(SLIP_BAND * size, Math.min(answer.tolerance, 0.05 * size), printed * (1 + 1e-9));
    // Nearer to the right answer than to the slip's, it tells of no slip.
    if (off <= near && off < least && off < Math.abs(value - answer.value)) {
      best = slip;
      least = off;
    }
  }
  return best;
}

/** What a trainer decided about an answer that could not be read. */
export interface Decision {
  readonly student: string;
  readonly problem: string;
  /** The answer as it was written; a decision about another one does not count. */
  readonly answer: string;
  readonly verdict: 'right' | 'wrong' | 'blank';
}

function decided(marked: MarkedAnswer, decisions: readonly Decision[]): MarkedAnswer {
  if (marked.verdict !== 'unreadable') return marked;
  const found = decisions.find(
    ({ student, problem, answer }) =>
      student === marked.student &&
      Number(problem) === marked.problem.number &&
      answer.trim() === marked.text.trim(),
  );
  return found ? { ...marked, verdict: found.verdict, note: 'decided by hand' } : marked;
}

/** Mark a class: every student against every problem; a missing cell or row counts as blank. */
export function markClass(
  problems: readonly Problem[],
  answers: readonly GivenAnswer[],
  decisions: readonly Decision[] = [],
): Marking {
  const notes: string[] = [];
  const byStudent = new Map<string, Map<Problem, string>>();
  for (const { student, problem: name, text } of answers) {
    const problem = problemNamed(problems, name);
    if (problem === undefined) {
      if (text.trim() !== '') notes.push(`${student}: no problem of this sheet is called ${name}`);
      continue;
    }
    const cells = byStudent.get(student) ?? new Map<Problem, string>();
    const before = cells.get(problem)?.trim() ?? '';
    // A blank never takes the place of an answer.
    if (text.trim() === '' && before !== '') continue;
    if (before !== '' && before !== text.trim())
      notes.push(`${student}: problem ${problem.number} is answered twice; the last answer counts`);
    cells.set(problem, text);
    byStudent.set(student, cells);
  }
  const students = [...byStudent].map(([student, cells]): StudentMark => {
    const marked = problems.map((problem) =>
      decided(markAnswer(problem, student, cells.get(problem) ?? ''), decisions),
    );
    const topics = topicMarks(marked);
    return {
      student,
      right: marked.filter(({ verdict }) => verdict === 'right').length,
      of: problems.length,
      answers: marked,
      topics,
      teachAgain: teachAgain(topics),
    };
  });
  const topics = topicMarks(students.flatMap((student) => student.answers));
  return { students, topics, teachAgain: teachAgain(topics), notes: [...new Set(notes)] };
}

/** `3`, `q3`, `Q 3`, `problem 3`, `#3` or an id. */
function problemNamed(problems: readonly Problem[], name: string): Problem | undefined {
  const plain = name.trim().toLowerCase();
  const byId = problems.find(({ id }) => id.toLowerCase() === plain);
  if (byId !== undefined) return byId;
  const number = /^(?:q|question|problem|p|no|nr|#)?[\s._#-]*(\d+)\.?$/.exec(plain)?.[1];
  return number === undefined ? undefined : problems.find((problem) => problem.number === Number(number));
}

function topicMarks(answers: readonly MarkedAnswer[]): TopicMark[] {
  const topics = new Map<string, MarkedAnswer[]>();
  for (const answer of answers) {
    const { topic } = answer.problem;
    topics.set(topic, [...(topics.get(topic) ?? []), answer]);
  }
  return [...topics.values()].map((of) => {
    const count = (verdicts: readonly Verdict[]) =>
      of.filter(({ verdict }) => verdicts.includes(verdict)).length;
    const slips = new Map<string, { slip: string; why: string; count: number }>();
    for (const { slip } of of)
      if (slip) slips.set(slip.slip, { ...slip, count: (slips.get(slip.slip)?.count ?? 0) + 1 });
    const { topic, topicTitle } = of[0].problem;
    return {
      topic,
      topicTitle,
      right: count(['right']),
      wrong: count(['wrong', 'unreadable']),
      blank: count(['blank']),
      slips: [...slips.values()].sort((a, b) => b.count - a.count),
    };
  });
}

const STUDENT = /^(?:student|name|pupil|trainee|crew|student name|who)$/i;
const STUDENT_NUMBER = /^(?:(?:student|trainee|roll|badge|employee)[ _]?(?:no|nr|number|id)\.?|student #)$/i;
const PROBLEM = /^(?:problem|question|q|no|number|id|problem id|problem number)$/i;
const ANSWER = /^(?:answer|response|value|given)$/i;

/**
 * Read a CSV of answers: first row names the columns; one student a row (`student,1,2,3`), or, where there are
 * columns `problem` (or `question`) and `answer`, one answer a row. Comma, semicolon or tab; byte-order mark, quotes,
 * blank lines and short rows are survived. `student` is used where the file has no column for the name. What could not be
 * used is said in `notes`.
 */
export function readAnswers(csv: string, student: string, notes: string[] = []): readonly GivenAnswer[] {
  const [header, ...rows] = readCsv(csv).map((row) => row.map((cell) => cell.trim()));
  if (header === undefined) {
    notes.push(`${student}: the file is empty`);
    return [];
  }
  const nameAt = header.findIndex((cell) => STUDENT.test(cell));
  const problemAt = header.findIndex((cell) => PROBLEM.test(cell));
  const answerAt = header.findIndex((cell) => ANSWER.test(cell));
  const numberAt = header.findIndex((cell) => STUDENT_NUMBER.test(cell));
  const number = (row: readonly string[]) => (numberAt >= 0 ? (row[numberAt] ?? '') : '');
  const named = (row: readonly string[], otherwise: string) => {
    const name = (nameAt >= 0 && row[nameAt]) || (number(row) === '' ? otherwise : '');
    return [name, number(row) === '' ? '' : name === '' ? `No. ${number(row)}` : `(${number(row)})`]
      .filter((part) => part !== '')
      .join(' ');
  };
  const whose = (row: readonly string[]) => named(row, student);
  if (problemAt >= 0 && answerAt >= 0)
    return rows.map((row) => ({
      student: whose(row),
      problem: row[problemAt] ?? '',
      text: row[answerAt] ?? '',
    }));
  const answers: GivenAnswer[] = [];
  const seen = new Set<string>();
  rows.forEach((row, index) => {
    const unnamed = nameAt >= 0 || rows.length > 1 ? `${student}, row ${index + 2}` : student;
    let own = named(row, unnamed);
    if (seen.has(own) && number(row) === '') {
      notes.push(
        `${own}: two rows bear this name; they are marked apart, and a column student number would tell them apart`,
      );
      own = `${own}, row ${index + 2}`;
    }
    seen.add(own);
    if (row.slice(header.length).some((cell) => cell !== ''))
      notes.push(
        `${own}: row ${index + 2} has more cells than the header; put an answer with a decimal comma in quotes, or separate by semicolons`,
      );
    header.forEach((problem, at) => {
      if (at !== nameAt && at !== numberAt && problem !== '')
        answers.push({ student: own, problem, text: row[at] ?? '' });
    });
  });
  return answers;
}
