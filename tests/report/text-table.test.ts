import { expect, test } from 'vitest';
import type { Table } from '../../src/report/document.js';
import { paintFor } from '../../src/report/paint.js';
import { tableText } from '../../src/report/text-table.js';

const paint = paintFor(false);

/** Titles wider than any cell, so that each row is drawn alike whatever stands beside it. */
const COLUMNS: Table['columns'] = [
  { title: 'The part as it is called in the layout', align: 'left' },
  { title: 'Loss by friction', align: 'right' },
  { title: 'What it is' },
];

const rowsOf = (count: number): string[][] =>
  Array.from({ length: count }, (_, index) => [
    index % 7 === 0 ? `hose ${index} of the line that leads to the saddle` : `hose ${index}`,
    `${index} psi`,
    index % 5 === 0 ? '' : 'hose',
  ]);

const drawn = (rows: string[][]) => tableText({ kind: 'table', columns: COLUMNS, rows }, 62, paint);

test('a long table looks as its rows do one by one, under one heading', () => {
  const rows = rowsOf(1000);
  const [head] = drawn(rows.slice(0, 1));
  expect(drawn(rows)).toEqual([head, ...rows.flatMap((row) => drawn([row]).slice(1))]);
});

test('a table of 20,000 rows is drawn within seconds', { timeout: 10_000 }, () => {
  expect(drawn(rowsOf(20_000)).length).toBeGreaterThan(20_000);
});

test('a table of 200,000 rows is measured without running out of stack', { timeout: 30_000 }, () => {
  const rows = Array.from({ length: 200_000 }, (_, index) => [
    `${index}`,
    'a passage too wide for so little room',
  ]);
  const columns = [{ title: 'Part' }, { title: 'Remark' }];
  expect(tableText({ kind: 'table', columns, rows }, 24, paint).length).toBeGreaterThan(200_000);
});
