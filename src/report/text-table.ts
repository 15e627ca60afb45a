import CliTable from 'cli-table3';
import { columnsOf } from './columns.js';
import { type Cell, cellText, cellTone, type Table } from './document.js';
import type { Paint } from './paint.js';
import { plain } from './plain.js';
import { wrap, wrapHanging } from './wrap.js';

const GAP = '  ';
const JOIN = '; ';
/** Narrower than this, the names in a first column break so often that lines read better than a table. */
const NARROWEST_NAMES = 16;

const EDGES =
  'top top-mid top-left top-right bottom bottom-mid bottom-left bottom-right left left-mid mid mid-mid right right-mid';

const BORDERLESS = { ...Object.fromEntries(EDGES.split(' ').map((edge) => [edge, ''])), middle: GAP };

function naturalWidths({ columns, rows }: Table): number[] {
  return columns.map(({ title }, index) =>
    rows.reduce((widest, row) => Math.max(widest, columnsOf(plain(cellText(row[index])))), columnsOf(title)),
  );
}

/** Widths that fit, taken from the first column if need be; none where even that does not help. */
function fittingWidths(table: Table, width: number): number[] | undefined {
  const [first, ...others] = naturalWidths(table);
  const room = width - others.reduce((sum, each) => sum + each + GAP.length, 0);
  if (room >= first) return [first, ...others];
  return room >= NARROWEST_NAMES ? [room, ...others] : undefined;
}

function headOf({ columns }: Table, widths: number[], paint: Paint): string[] {
  const table = new CliTable({
    head: columns.map(({ title }) => paint.strong(title)),
    colWidths: widths,
    colAligns: columns.map(({ align }) => align ?? 'left'),
    chars: BORDERLESS,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0 },
  });
  return table.toString().split('\n');
}

/** As cli-table3 draws it, which looks through every row above each cell for one that spans it: a long lay would wait minutes. */
function drawnRow({ columns }: Table, row: Cell[], widths: number[], paint: Paint): string[] {
  const cells = row.map((cell, index) => wrap(plain(cellText(cell)), widths[index]));
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    cells
      .map((lines, index) => {
        const text = lines[line] ?? '';
        const blank = ' '.repeat(widths[index] - columnsOf(text));
        const shown = text && paint.tone(cellTone(row[index]), text);
        return columns[index].align === 'right' ? blank + shown : shown + blank;
      })
      .join(GAP),
  );
}

function asTable(table: Table, widths: number[], paint: Paint): string[] {
  const lines = headOf(table, widths, paint);
  for (const row of table.rows) lines.push(...drawnRow(table, row, widths, paint));
  return lines;
}

interface Field {
  text: string;
  cell: Cell;
}

function fields({ columns }: Table, row: Table['rows'][number]): Field[] {
  return row.slice(1).flatMap((cell, index) => {
    const { title } = columns[index + 1];
    const text = plain(cellText(cell));
    return text ? [{ text: title ? `${title}: ${text}` : text, cell }] : [];
  });
}

/** As many whole fields a line as there is room for. */
function fieldLines(given: Field[], width: number, paint: Paint): string[] {
  const lines: string[] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const { text, cell } of given) {
    const wrapped = wrapHanging(text, width, GAP, `${GAP}${GAP}`).map((line) =>
      paint.tone(cellTone(cell), line),
    );
    const joined = used + JOIN.length + columnsOf(text);
    if (joined <= width) {
      lines[lines.length - 1] += JOIN + paint.tone(cellTone(cell), text);
      used = joined;
    } else {
      lines.push(...wrapped);
      used = wrapped.length === 1 ? GAP.length + columnsOf(text) : Number.POSITIVE_INFINITY;
    }
  }
  return lines;
}

function asLines(table: Table, width: number, paint: Paint): string[] {
  return table.rows.flatMap((row) => [
    ...wrap(plain(cellText(row[0])), width).map((line) => paint.strong(line)),
    ...fieldLines(fields(table, row), width, paint),
  ]);
}

/** A table where it fits, one group of lines a row where it does not. */
export function tableText(table: Table, width: number, paint: Paint): string[] {
  const widths = fittingWidths(table, width);
  return widths ? asTable(table, widths, paint) : asLines(table, width, paint);
}
