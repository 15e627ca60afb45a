import type { MarkedAnswer, Marking } from '../../drill/marking/marking.js';
import type { Level, Problem } from '../../drill/problem.js';
import type { Step } from '../../drill/tutor.js';
import { type Block, heading, paragraph } from '../document.js';
import { counted } from '../words.js';
import { givenItems, rulesBlocks, stepsBlock, toleranceText } from './key-document.js';
import { choicesBlocks, sketchBlocks } from './sheet-document.js';

export interface Progress {
  count: number;
  right: number;
}

export const welcomeBlocks = (count: number, rules: string): Block[] => [
  { kind: 'heading', level: 1, text: `${counted(count, 'problem')} by the rule set: ${rules}` },
  paragraph(
    'Answer with a figure, with or without its unit. ? shows the figures and rules, w the working of the last problem; skip goes on, q or Ctrl-C ends.',
  ),
];

/** One problem as it is posed: how far we are, the question, what to choose from. */
export function posedBlocks(problem: Problem, { count, right }: Progress): Block[] {
  const before = problem.number - 1;
  const soFar = before > 0 ? `; ${right} of ${before} right so far` : '';
  return [
    heading(`Problem ${problem.number} of ${count}, level ${problem.level}${soFar}`),
    paragraph(problem.question),
    ...sketchBlocks(problem),
    ...choicesBlocks(problem),
  ];
}

/** What `?` shows: all that is needed, but not how to put it together. */
export const helpBlocks = (problem: Problem): Block[] => [
  { kind: 'list', items: givenItems(problem) },
  ...rulesBlocks(problem),
];

export const workingBlocks = (problem: Problem): Block[] => [
  stepsBlock(problem),
  ...(problem.crossCheck
    ? [
        paragraph(
          `${problem.crossCheck.solverText} by the program's own solution: ${problem.crossCheck.reason}`,
        ),
      ]
    : []),
];

const STEP_WORDS: Record<Step, (level: Level) => string> = {
  up: (level) => `Up to level ${level}.`,
  down: (level) => `Back to level ${level}.`,
  same: () => '',
};

/** What is said to an answer: right or wrong, by which slip, and the working where it was wrong. */
export function verdictBlocks(marked: MarkedAnswer, step: Step, level: Level): Block[] {
  const { problem, verdict, slip, note } = marked;
  const moved = STEP_WORDS[step](level);
  const within = toleranceText(problem);
  const key = `${problem.answer.text}${within && ` (${within} is right)`}`;
  if (verdict === 'right') {
    return [paragraph(`RIGHT: ${key}. ${note ? `${note} ` : ''}${moved}`.trim(), 'good')];
  }
  const head = verdict === 'blank' ? 'SKIPPED' : 'WRONG';
  return [
    paragraph(`${head}: it is ${key}. ${moved}`.trim(), 'bad'),
    ...(slip ? [paragraph(slip.why)] : verdict === 'wrong' ? [paragraph('No known slip gives this.')] : []),
    ...workingBlocks(problem),
  ];
}

/** How it went: by topic, and what to go over again. */
export function summaryBlocks(marking: Marking, level: Level): Block[] {
  const [mark] = marking.students;
  if (!mark || mark.of === 0) return [paragraph('Nothing was answered.')];
  const { right, of, topics, teachAgain } = mark;
  return [
    heading(`${right} of ${of} right, ending at level ${level}`),
    {
      kind: 'table',
      columns: [{ title: 'Topic' }, { title: 'Right', align: 'right' }, { title: 'Asked', align: 'right' }],
      rows: topics.map((topic) => [
        topic.topicTitle,
        String(topic.right),
        String(topic.right + topic.wrong + topic.blank),
      ]),
    },
    ...(teachAgain.length > 0
      ? [
          paragraph('Go over again:'),
          { kind: 'list' as const, items: teachAgain.map((text) => ({ lines: [text] })) },
        ]
      : [paragraph('Nothing to go over again.')]),
  ];
}
