import { expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { markdownOf } from '../../src/report/markdown.js';
import { flowing, meeting } from './answers.js';

const markdown = (answer: Parameters<typeof answerDocument>[0]): string =>
  markdownOf(answerDocument(answer, 'us'));

test('the verdict is the one heading of the first level', () => {
  const first = markdown(meeting()).match(/^# .*/gm);
  expect(first).toHaveLength(1);
  expect(markdown(meeting()).startsWith('# MEETS NWCG engine type 3')).toBe(true);
});

test('every row of a table has the cells of its head', () => {
  for (const answer of [meeting(), flowing()]) {
    const tables = markdown(answer)
      .split('\n\n')
      .filter((block) => block.startsWith('|'));
    expect(tables.length).toBeGreaterThan(2);
    for (const table of tables) {
      const counts = table.split('\n').map((row) => row.match(/(?<!\\)\|/g)?.length);
      expect(new Set(counts).size).toBe(1);
    }
  }
});

test('text out of a file is neither mark nor tag', () => {
  const answer = meeting();
  answer.title = '# <img src=x> *a* | [b](c)';
  const text = markdown(answer);
  expect(text).toContain('\\# &lt;img src=x> \\*a\\* \\| \\[b\\](c)');
});
