import fc from 'fast-check';
import { expect, test } from 'vitest';
import { columnsOf } from '../../src/report/columns.js';
import { wrap, wrapHanging } from '../../src/report/wrap.js';

test('no line is wider than asked, and no letter is lost', () => {
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 2, max: 60 }), (text, width) => {
      const lines = wrap(text, width);
      for (const line of lines) expect(columnsOf(line)).toBeLessThanOrEqual(width);
      const bare = (string: string) => string.replace(/[ \u00a0]/g, '');
      expect(bare(lines.join(''))).toBe(bare(text));
    }),
  );
});

test('hanging lines stand under the text of the first', () => {
  expect(wrapHanging('one two three', 10, '- ', '  ')).toEqual(['- one two', '  three']);
});

test('a word longer than the line is cut', () => {
  expect(wrap('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
});

test('wide letters take two columns, marks none', () => {
  expect(columnsOf('Larkspur')).toBe(8);
  expect(columnsOf('山火事')).toBe(6);
  expect(columnsOf('e\u0301')).toBe(1);
  expect(columnsOf('🔥 614')).toBe(6);
  expect(wrap('山火事', 4)).toEqual(['山火', '事']);
});
