import { DECISION_HEAD, unreadIn } from '../../drill/marking/by-hand.js';
import type { MarkedAnswer, Marking } from '../../drill/marking/marking.js';
import { csvOf } from '../csv.js';
import type { PrintedMarking } from './marking-json.js';

const HEAD = [
  'student',
  'number',
  'topic',
  'level',
  'answer',
  'verdict',
  'right_answer',
  'slip',
  'teach_again',
  'note',
  'sheet',
];

const row = ({ student, problem, text, verdict, slip, note }: MarkedAnswer, code: string) => [
  student,
  problem.number,
  problem.topic,
  problem.level,
  text,
  verdict,
  problem.answer.text,
  slip?.slip ?? '',
  slip?.why ?? '',
  note ?? '',
  code,
];

/** One answer a row, so that a spreadsheet can sum it whichever way the trainer likes. */
export const markingCsv = ({ marking, code }: PrintedMarking): string =>
  csvOf([HEAD, ...marking.students.flatMap(({ answers }) => answers.map((answer) => row(answer, code)))]);

/** What could not be read, with an empty column for what a person decides. */
export const undecidedCsv = (marking: Marking): string =>
  csvOf([
    DECISION_HEAD,
    ...unreadIn(marking).map(({ student, problem, text }) => [
      student,
      problem.number,
      text,
      problem.answer.text,
      '',
    ]),
  ]);
