import CliTable from 'cli-table3';
import { type Cell, cellText, cellTone, type Table } from './document.js';
import type { Paint } from './paint.js';
import { plain } from './plain.js';
import { columnsOf, wrap, wrapHanging } from './wrap.js';

const GAP = '  ';
/** Narrower than this, the names in a first column break so often that lines read better than a table. */
const NARROWEST_NAMES = 16;

const BORDERLESS = {
  top: '', 'top-mid': '', 'top-left': '', 'top-right': '',
  bottom: '', 'bottom-mid': '', 'bottom-left': '', 'bottom-right': '',
  left: '', 'left-mid': '', mid: '', 'mid-mid': '',
  right: '', 'right-mid': '', middle: GAP,
}; // biome-ignore format: one line an edge

function naturalWidths({ columns, rows }: Table): number[] {
  return columns.map(({ title }, index) =>
    Math.max(columnsOf(title), ...rows.map((row) => columnsOf(plain(cellText(row[index]))))),
  );
}

/** Widths that fit, taken from the first column if need be; none where even that does not help. */
function fittingWidths(table: Table, width: number): number[] | undefined {
  const [first, ...others] = naturalWidths(table);
  const room = width - others.reduce((sum, each) => sum + each + GAP.length, 0);
  if (room >= first) return [first, ...others];
  return room >= NARROWEST_NAMES ? [room, ...others] : undefined;
}

function painted(cell: Cell, width: number, paint: Paint): string {
  return wrap(plain(cellText(cell)), width)
    .map((line) => paint.tone(cellTone(cell), line))
    .join('\n');
}

function asTable({ columns, rows }: Table, widths: number[], paint: Paint): string[] {
  const table = new CliTable({
    head: columns.map(({ title }) => paint.strong(title)),
    colWidths: widths,
    colAligns: columns.map(({ align }) => align ?? 'left'),
    chars: BORDERLESS,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
  });
  for (const row of rows) table.push(row.map((cell, index) => painted(cell, widths[index], paint)));
  return table.toString().split('\n');
}

function asLines({ columns, rows }: Table, width: number, paint: Paint): string[] {
  return rows.flatMap(([name, ...cells]) => [
    ...wrap(plain(cellText(name)), width).map((line) => paint.strong(line)),
    ...cells.flatMap((cell, index) => {
      const text = plain(cellText(cell));
      if (!text) return [];
      const { title } = columns[index + 1];
      const lines = wrapHanging(title ? `${title}: ${text}` : text, width, GAP, `${GAP}${GAP}`);
      return lines.map((line) => paint.tone(cellTone(cell), line));
    }),
  ]);
}

/** A table where it fits, one group of lines a row where it does not. */
export function tableText(table: Table, width: number, paint: Paint): string[] {
  const widths = fittingWidths(table, width);
  return widths ? asTable(table, widths, paint) : asLines(table, width, paint);
}
