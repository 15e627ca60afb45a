import { expect, test } from 'vitest';
import type { Cell, Table } from '../../src/report/document.js';
import { paintFor } from '../../src/report/paint.js';
import { tableText } from '../../src/report/text-table.js';

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

const toned = (rows: string[][]): Cell[][] =>
  rows.map((row, index) =>
    row.map((text, column) => ((index + column) % 4 === 0 ? { text, tone: 'bad' } : text)),
  );

const drawn = (rows: Cell[][], paint = paintFor(false)) =>
  tableText({ kind: 'table', columns: COLUMNS, rows }, 62, paint);

for (const colour of [false, true]) {
  test(`a long table looks as its rows do one by one, under one heading, ${colour ? 'in' : 'without'} colour`, () => {
    const rows = toned(rowsOf(1000));
    const paint = paintFor(colour);
    const [head] = drawn(rows.slice(0, 1), paint);
    expect(drawn(rows, paint)).toEqual([head, ...rows.flatMap((row) => drawn([row], paint).slice(1))]);
  });
}

test('a table of 20,000 rows is drawn within seconds', { timeout: 10_000 }, () => {
  expect(drawn(rowsOf(20_000)).length).toBeGreaterThan(20_000);
});

test('a table of 200,000 rows is measured without running out of stack', { timeout: 30_000 }, () => {
  const rows = Array.from({ length: 200_000 }, (_, index) => [
    `${index}`,
    'a passage too wide for so little room',
  ]);
  const columns = [{ title: 'Part' }, { title: 'Remark' }];
  expect(tableText({ kind: 'table', columns, rows }, 24, paintFor(false)).length).toBeGreaterThan(200_000);
});
