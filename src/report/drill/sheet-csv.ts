import type { Problem } from '../../drill/problem.js';
import { csvOf } from '../csv.js';
import type { PrintedSheet } from './printed-sheet.js';

type Cell = string | number;

interface Field {
  title: string;
  cell(problem: Problem): Cell;
}

const stepText = ({ say, symbol, formula, substitution, text }: Problem['steps'][number]): string =>
  `${say}: ${symbol} = ${formula} = ${substitution} = ${text}`;

const DIGITS = 12;

const figure = (value: number): number => Number(value.toPrecision(DIGITS));

const ASKED: Field[] = [
  { title: 'number', cell: ({ number }) => number },
  { title: 'id', cell: ({ id }) => id },
  { title: 'topic', cell: ({ topic }) => topic },
  { title: 'topic_title', cell: ({ topicTitle }) => topicTitle },
  { title: 'level', cell: ({ level }) => level },
  { title: 'rules', cell: ({ rules }) => rules },
  { title: 'units', cell: ({ units }) => units },
  { title: 'seed', cell: ({ seed }) => seed },
  { title: 'version', cell: ({ version }) => version },
  { title: 'question', cell: ({ question }) => question },
  { title: 'sketch', cell: ({ sketch }) => sketch?.words ?? '' },
  { title: 'unit', cell: ({ answer }) => (answer.kind === 'number' ? answer.unit : '') },
];

const KEY: Field[] = [
  {
    title: 'answer',
    cell: ({ answer }) => (answer.kind === 'number' ? figure(answer.value) : answer.word),
  },
  {
    title: 'tolerance',
    cell: ({ answer }) => (answer.kind === 'number' ? figure(answer.tolerance) : ''),
  },
  { title: 'answer_letter', cell: ({ choices }) => choices.find(({ right }) => right)?.letter ?? '' },
  { title: 'steps', cell: ({ steps }) => steps.map(stepText).join('\n') },
  { title: 'slips', cell: ({ slips }) => slips.map(({ text, why }) => `${text}: ${why}`).join('\n') },
  { title: 'solver_answer', cell: ({ crossCheck }) => crossCheck?.solverText ?? '' },
  { title: 'reason_for_gap', cell: ({ crossCheck }) => crossCheck?.reason ?? '' },
];

/** `choice_a` and on, as many as the problem that offers most. */
function choiceFields(problems: readonly Problem[]): Field[] {
  const most = Math.max(0, ...problems.map(({ choices }) => choices.length));
  return Array.from({ length: most }, (_, index) => ({
    title: `choice_${String.fromCharCode(97 + index)}`,
    cell: ({ choices }: Problem) => choices[index]?.text ?? '',
  }));
}

/** One problem a row with everything that a quiz bank asks for, its key too unless that goes elsewhere. */
export function sheetCsv({ sheet, code }: PrintedSheet, withKey = true): string {
  const { problems } = sheet;
  const fields = [...ASKED, ...choiceFields(problems), ...(withKey ? KEY : [])];
  return csvOf([
    [...fields.map(({ title }) => title), 'sheet'],
    ...problems.map((problem) => [...fields.map(({ cell }) => cell(problem)), code]),
  ]);
}

/** An empty form for the answers, whose first row says which sheet they belong to. */
export function answerForm({ sheet, code, command }: PrintedSheet): string {
  const numbers = sheet.problems.map((problem) => problem.number);
  return csvOf([
    ['sheet', code, command],
    ['student', ...numbers],
  ]);
}
