import CliTable from 'cli-table3';
import { expect, test } from 'vitest';
import { type Cell, cellText, cellTone, type Table } from '../../src/report/document.js';
import { type Paint, paintFor } from '../../src/report/paint.js';
import { tableText } from '../../src/report/text-table.js';
import { wrap } from '../../src/report/wrap.js';

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
  tableText({ kind: 'table', columns: COLUMNS, rows }, WIDTH, paint);

const WIDTH = 62;
const GAP = '  ';

/** The same table whole, as the library draws it. */
function byLibrary(rows: Cell[][], paint: Paint): string[] {
  const [, ...others] = COLUMNS.map(({ title }) => title.length);
  const widths = [WIDTH - others.reduce((sum, width) => sum + width + GAP.length, 0), ...others];
  const edges =
    'top top-mid top-left top-right bottom bottom-mid bottom-left bottom-right left left-mid mid mid-mid';
  const table = new CliTable({
    head: COLUMNS.map(({ title }) => paint.strong(title)),
    colWidths: widths,
    colAligns: COLUMNS.map(({ align }) => align ?? 'left'),
    chars: Object.fromEntries([
      ...`${edges} right right-mid`.split(' ').map((edge) => [edge, '']),
      ['middle', GAP],
    ]),
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
  });
  const toned = (cell: Cell, column: number) =>
    wrap(cellText(cell), widths[column])
      .map((line) => paint.tone(cellTone(cell), line))
      .join('\n');
  for (const row of rows) table.push(row.map(toned));
  return table.toString().split('\n');
}

for (const colour of [false, true]) {
  test(`a table looks as the library would draw it whole, ${colour ? 'in' : 'without'} colour`, () => {
    const rows = toned(rowsOf(90));
    const paint = paintFor(colour);
    expect(drawn(rows, paint)).toEqual(byLibrary(rows, paint));
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
