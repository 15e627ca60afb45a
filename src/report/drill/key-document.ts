import type { CrossCheck, Problem, Step } from '../../drill/problem.js';
import { type Block, type Document, heading, type ListItem, paragraph } from '../document.js';
import { sentence } from '../words.js';
import { type PrintedSheet, subjectOf } from './printed-sheet.js';
import { originBlocks, problemTitle, sketchBlocks } from './sheet-document.js';

/** `B) 118 psi`, or without its letter where nothing was to choose from. */
export function answerText({ answer, choices }: Problem): string {
  const right = choices.find((choice) => choice.right);
  return right ? `${right.letter}) ${answer.text}` : answer.text;
}

export const toleranceText = ({ answer }: Problem): string =>
  answer.kind === 'number' ? answer.toleranceText : '';

export const givenItems = ({ given }: Problem): ListItem[] =>
  given.map(({ symbol, name, text }) => ({ lines: [`${symbol} = ${text}, ${name}`] }));

function stepItem({ say, symbol, formula, substitution, text, rounding }: Step): ListItem {
  return {
    lead: say,
    lines: [`${symbol} = ${formula}`, `= ${substitution}`, `= ${text}${rounding ? ` (${rounding})` : ''}`],
  };
}

function crossCheckBlocks(check: CrossCheck | undefined): Block[] {
  if (!check) return [];
  const { handText, solverText, reason } = check;
  return [paragraph(`By hand ${handText}; the program's own solution ${solverText}. ${sentence(reason)}`)];
}

function slipBlocks({ slips: known, choices }: Problem): Block[] {
  // A wrong choice can be the answer to a mistake that is no slip of the topic's own.
  const offered = choices.filter(({ right, text }) => !right && !known.some((slip) => slip.text === text));
  const slips = [...known, ...offered.map(({ text, why = '' }) => ({ text, why }))];
  if (slips.length === 0) return [];
  return [
    paragraph('Wrong answers, and the slip behind each:'),
    { kind: 'list', items: slips.map(({ text, why }) => ({ lead: text, lines: [why] })) },
  ];
}

/** What the rule set says here: its figures by their symbols, and what has none. */
export function rulesBlocks({ constants, rulesUsed }: Problem): Block[] {
  const said = new Set(constants.map(({ name, text }) => `${name}: ${text}`));
  const items = [
    ...rulesUsed.filter(({ text }) => !said.has(text)).map(({ text, source }) => `${text} (${source})`),
    ...constants.map(({ symbol, name, text, source }) => `${symbol} = ${text}, ${name} (${source})`),
  ];
  if (items.length === 0) return [];
  return [paragraph('Rules:'), { kind: 'list', items: items.map((line) => ({ lines: [line] })) }];
}

export const stepsBlock = ({ steps }: Problem): Block => ({
  kind: 'list',
  marks: 'number',
  items: steps.map(stepItem),
});

function findText({ find, answer }: Problem): string {
  if (answer.kind === 'word') return `Find: ${find.name}.`;
  return `Find: ${find.symbol}, ${find.name}${find.unit && `, in ${find.unit}`}.`;
}

/** One problem worked, from what is given to what goes wrong with it. */
export function workedBlocks(problem: Problem): Block[] {
  const { answer, crossCheck } = problem;
  const within = answer.kind === 'number' ? ` (${answer.toleranceText} is right)` : '';
  return [
    {
      kind: 'group',
      blocks: [
        heading(problemTitle(problem)),
        ...sketchBlocks(problem),
        paragraph('Given:'),
        { kind: 'list', items: givenItems(problem) },
        paragraph(findText(problem)),
      ],
    },
    ...rulesBlocks(problem),
    stepsBlock(problem),
    paragraph(`Answer: ${answerText(problem)}${within}.`, 'good'),
    ...crossCheckBlocks(crossCheck),
    ...slipBlocks(problem),
  ];
}

/** All answers at a glance, for marking by hand. */
const answersTable = (problems: readonly Problem[]): Block => ({
  kind: 'table',
  columns: [{ title: 'No.' }, { title: 'Answer' }, { title: 'Right within' }],
  rows: problems.map((problem) => [String(problem.number), answerText(problem), toleranceText(problem)]),
});

/** Answer and steps alone, a line a step. */
function shortBlocks(problem: Problem): Block[] {
  const { number, steps, topicTitle } = problem;
  const lines = steps.map(({ symbol, substitution, text }) => `${symbol} = ${substitution} = ${text}`);
  const within = toleranceText(problem);
  const answer = `Answer: ${answerText(problem)}${within && ` (${within} is right)`}`;
  return [
    {
      kind: 'group',
      blocks: [{ kind: 'list', items: [{ lead: `${number}. ${topicTitle}. ${answer}`, lines }] }],
    },
  ];
}

export function keyBlocks(printed: PrintedSheet, short = false): Block[] {
  const { problems } = printed.sheet;
  return [
    { kind: 'heading', level: 1, text: `Key: ${subjectOf(printed.sheet)}` },
    ...originBlocks(printed),
    heading('Answers at a glance'),
    answersTable(problems),
    ...problems.flatMap(short ? shortBlocks : workedBlocks),
  ];
}

export const keyDocument = (printed: PrintedSheet, short = false): Document => ({
  title: `Key: ${subjectOf(printed.sheet)} (sheet ${printed.code})`,
  blocks: keyBlocks(printed, short),
});
