import type { Problem } from '../../drill/problem.js';
import { type Block, type Document, heading, paragraph } from '../document.js';
import { sentence } from '../words.js';
import { type PrintedSheet, subjectOf } from './printed-sheet.js';
import { drawSketch } from './sketch.js';

/** Lines of writing that the working of a problem of a level takes. */
const ROOM = [0, 2, 3, 4, 5, 6];

export const problemTitle = ({ number, topicTitle, level }: Problem): string =>
  `${number}. ${topicTitle} (level ${level})`;

export const sketchBlocks = ({ sketch }: Problem): Block[] =>
  sketch ? [{ kind: 'figure', words: `Lay: ${sentence(sketch.words)}`, drawing: drawSketch(sketch) }] : [];

export function choicesBlocks({ choices }: Problem): Block[] {
  if (choices.length === 0) return [];
  return [{ kind: 'list', marks: 'letter', items: choices.map(({ text }) => ({ lines: [text] })) }];
}

function answerBlocks(problem: Problem): Block[] {
  const { answer, choices, find, level } = problem;
  if (choices.length > 0) return choicesBlocks(problem);
  const field =
    answer.kind === 'number'
      ? { label: find.symbol, ...(answer.unit && { unit: answer.unit }) }
      : { label: 'Answer' };
  return [{ kind: 'blank', room: ROOM[level], fields: [field] }];
}

/** One problem as a student sees it. */
export const problemBlocks = (problem: Problem): Block[] => [
  heading(problemTitle(problem)),
  paragraph(problem.question),
  ...sketchBlocks(problem),
  ...answerBlocks(problem),
];

/** What tells this sheet from every other; on the sheet and on its key. */
export function originBlocks({ sheet, code, command }: PrintedSheet): Block[] {
  const { rules, version } = sheet;
  return [
    paragraph(`Sheet ${code}. Work by the rule set: ${rules.title}. Source: ${sentence(rules.source)}`),
    paragraph(`Made by pumpyoke ${version}; the same again: ${command}`, 'quiet'),
  ];
}

/** The figures of the rule set that the problems of the sheet rest on, each once. */
function referenceBlock({ sheet }: PrintedSheet): Block {
  const figures = new Map<string, string[]>();
  for (const { constants } of sheet.problems)
    for (const { name, text } of constants) figures.set(`${name} ${text}`, [name, text]);
  const table: Block = {
    kind: 'table',
    columns: [{ title: 'Figure' }, { title: 'Value', align: 'right' }],
    rows: [...figures.values()].sort(([a], [b]) => (a < b ? -1 : 1)),
  };
  return { kind: 'group', blocks: [heading(`Reference: ${sheet.rules.title}`), table] };
}

/** The problems, without a word of their answers. */
export function sheetBlocks(printed: PrintedSheet, reference = false): Block[] {
  return [
    { kind: 'heading', level: 1, text: `Problems: ${subjectOf(printed.sheet)}` },
    { kind: 'blank', fields: [{ label: 'Name' }, { label: 'Date' }] },
    ...originBlocks(printed),
    ...(reference ? [referenceBlock(printed)] : []),
    ...printed.sheet.problems.map((problem): Block => ({ kind: 'group', blocks: problemBlocks(problem) })),
  ];
}

export const sheetDocument = (printed: PrintedSheet, reference = false): Document => ({
  title: `Problems: ${subjectOf(printed.sheet)} (sheet ${printed.code})`,
  blocks: sheetBlocks(printed, reference),
});
