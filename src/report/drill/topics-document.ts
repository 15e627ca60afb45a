import { type Document, paragraph } from '../document.js';

export interface Topic {
  readonly id: string;
  readonly title: string;
  readonly levels: readonly number[];
}

const levelsText = (levels: readonly number[]) =>
  levels.length === 1 ? `${levels[0]}` : `${levels[0]} to ${levels[levels.length - 1]}`;

/** The topics that problems are drawn from, easy to hard. */
export const topicsDocument = (topics: readonly Topic[]): Document => ({
  title: 'Topics of the drill',
  blocks: [
    { kind: 'heading', level: 1, text: 'Topics, easy to hard' },
    paragraph(
      'A level is the number of steps that a problem takes: 1 is one step, 4 is four, and 5 is five or more. Where a sum has more steps than its level, the question gives the first ones worked.',
    ),
    {
      kind: 'table',
      columns: [{ title: 'Topic' }, { title: 'Levels' }, { title: 'What it is about' }],
      rows: topics.map(({ id, title, levels }) => [id, levelsText(levels), title]),
    },
  ],
});
