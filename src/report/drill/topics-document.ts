import type { Document } from '../document.js';

export interface Topic {
  readonly id: string;
  readonly title: string;
}

/** The topics that problems are drawn from, easy to hard. */
export const topicsDocument = (topics: readonly Topic[]): Document => ({
  title: 'Topics of the drill',
  blocks: [
    { kind: 'heading', level: 1, text: 'Topics, easy to hard' },
    {
      kind: 'table',
      columns: [{ title: 'Topic' }, { title: 'What it is about' }],
      rows: topics.map(({ id, title }) => [id, title]),
    },
  ],
});
