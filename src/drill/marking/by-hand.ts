import { readCsv } from './csv.js';
import type { Decision, GivenAnswer, MarkedAnswer, Marking } from './marking.js';

/** Answers that could not be read, to be decided by a person. */
export const unreadIn = ({ students }: Marking): MarkedAnswer[] =>
  students.flatMap(({ answers }) => answers.filter(({ verdict }) => verdict === 'unreadable'));

export const DECISION_HEAD = ['student', 'problem', 'answer', 'right_answer', 'decision'];

/**
 * Decisions from a CSV with the columns student, problem, answer and decision: right, wrong or blank (r, w, b; yes, no).
 * What has no decision yet is left out; what is none goes to `notes`.
 */
export function readDecisions(csv: string, notes: string[]): Decision[] {
  const [head = [], ...rows] = readCsv(csv).map((row) => row.map((cell) => cell.trim()));
  const at = (name: string) => head.findIndex((cell) => cell.toLowerCase() === name);
  const [student, problem, answer, decision] = ['student', 'problem', 'answer', 'decision'].map(at);
  if ([student, problem, answer, decision].some((column) => column < 0)) {
    notes.push('the file of decisions lacks one of the columns student, problem, answer, decision');
    return [];
  }
  return rows.flatMap((row): Decision[] => {
    const said = (row[decision] ?? '').toLowerCase();
    const who = { student: row[student] ?? '', problem: row[problem] ?? '', answer: row[answer] ?? '' };
    if (said === '') return [];
    if (/^(?:r|right|y|yes|correct)$/.test(said)) return [{ ...who, verdict: 'right' }];
    if (/^(?:w|wrong|n|no|incorrect)$/.test(said)) return [{ ...who, verdict: 'wrong' }];
    if (/^(?:b|blank)$/.test(said)) return [{ ...who, verdict: 'blank' }];
    notes.push(
      `${who.student}: the decision ${said} on problem ${who.problem} is none of right, wrong, blank`,
    );
    return [];
  });
}

/** Students of one name in several files are one only where no problem is answered by both. */
export function namesakesApart(
  files: readonly { readonly name: string; readonly answers: readonly GivenAnswer[] }[],
  notes: string[],
): GivenAnswer[] {
  const answered = new Map<string, Set<string>>();
  return files.flatMap(({ name, answers }) => {
    const clash = ({ student, problem, text }: GivenAnswer) =>
      text.trim() !== '' && answered.get(student)?.has(problem) === true;
    const twice = new Set(answers.filter(clash).map(({ student }) => student));
    for (const student of twice)
      notes.push(`${student}: two files bear this name and answer the same problems; they are marked apart`);
    const own = answers.map((answer) =>
      twice.has(answer.student) ? { ...answer, student: `${answer.student}, ${name}` } : answer,
    );
    for (const { student, problem, text } of own) {
      if (text.trim() === '') continue;
      answered.set(student, (answered.get(student) ?? new Set<string>()).add(problem));
    }
    return own;
  });
}
