import type { Problem } from '../../drill/problem.js';
import { csvOf } from '../csv.js';
import type { PrintedSheet } from './printed-sheet.js';

const FIRST = [
  'number',
  'id',
  'topic',
  'topic_title',
  'level',
  'rules',
  'units',
  'question',
  'sketch',
  'answer',
  'unit',
  'tolerance',
  'answer_letter',
];
const LAST = ['steps', 'slips', 'solver_answer', 'reason_for_gap', 'seed', 'version', 'sheet'];

const stepText = ({ say, symbol, formula, substitution, text }: Problem['steps'][number]): string =>
  `${say}: ${symbol} = ${formula} = ${substitution} = ${text}`;

const DIGITS = 12;

const figure = (value: number): number => Number(value.toPrecision(DIGITS));

function row(problem: Problem, code: string, choices: number): (string | number)[] {
  const { answer, crossCheck } = problem;
  const asked = answer.kind === 'number';
  return [
    problem.number,
    problem.id,
    problem.topic,
    problem.topicTitle,
    problem.level,
    problem.rules,
    problem.units,
    problem.question,
    problem.sketch?.words ?? '',
    asked ? figure(answer.value) : answer.word,
    asked ? answer.unit : '',
    asked ? figure(answer.tolerance) : '',
    problem.choices.find((choice) => choice.right)?.letter ?? '',
    ...Array.from({ length: choices }, (_, index) => problem.choices[index]?.text ?? ''),
    problem.steps.map(stepText).join('\n'),
    problem.slips.map(({ text, why }) => `${text}: ${why}`).join('\n'),
    crossCheck?.solverText ?? '',
    crossCheck?.reason ?? '',
    problem.seed,
    problem.version,
    code,
  ];
}

/** One problem a row with everything that a quiz bank asks for; `choice_a` and on only where there are choices. */
export function sheetCsv({ sheet, code }: PrintedSheet): string {
  const { problems } = sheet;
  const choices = Math.max(0, ...problems.map((problem) => problem.choices.length));
  const letters = Array.from({ length: choices }, (_, i) => `choice_${String.fromCharCode(97 + i)}`);
  return csvOf([[...FIRST, ...letters, ...LAST], ...problems.map((problem) => row(problem, code, choices))]);
}

/** An empty form for the answers, whose first row says which sheet they belong to. */
export function answerForm({ sheet, code, command }: PrintedSheet): string {
  const numbers = sheet.problems.map((problem) => problem.number);
  return csvOf([
    ['sheet', code, command],
    ['student', ...numbers],
  ]);
}
