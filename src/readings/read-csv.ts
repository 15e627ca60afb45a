import { excerptAt, lineStartsOf } from '../layout/excerpt.js';
import type { ProblemList } from '../layout/problem.js';
import { type Column, columnNamed, nearestColumn } from './columns.js';
import { type CsvCell, csvRows } from './csv-cells.js';
import { type Cell, type Place, plainName, type Sheet, type SheetRow } from './sheet.js';

/** What may stand in a file of readings. */
export interface Kinds {
  columns: readonly Column[];
  settings: readonly Column[];
}

/**
 * A sheet out of comma-, semicolon- or tab-separated text: lines of a setting and its value, then a header with units, then a
 * row for each reading. Undefined where it has no header; that is reported.
 */
export function readCsvSheet(
  file: string,
  text: string,
  kinds: Kinds,
  problems: ProblemList,
): Sheet | undefined {
  const starts = lineStartsOf(text);
  const placeOf = ({ from, to }: Pick<CsvCell, 'from' | 'to'>): Place => {
    const at = excerptAt(text, starts, from, to);
    return { line: at.line, problem: (message, more) => ({ file, path: [], ...at, message, ...more }) };
  };
  const rows = csvRows(text);
  const headerAt = rows.findIndex((row) => isHeader(row, kinds.columns));
  if (headerAt < 0) {
    const place = placeOf(rows[0]?.[0] ?? { from: 0, to: 1 });
    problems.add(
      place.problem(rows.length === 0 ? 'the file has no readings' : 'no header of columns is found', {
        expected: `a line such as ${kinds.columns
          .slice(0, 4)
          .map(({ example }) => example)
          .join(', ')}`,
      }),
    );
    return undefined;
  }
  const settings = readSettings(rows.slice(0, headerAt), kinds.settings, placeOf, problems);
  const header = rows[headerAt].map((cell) => ({ cell, named: columnNamed(cell.text, kinds.columns) }));
  const columns = new Map<string, Place>();
  for (const { cell, named } of header) {
    const place = placeOf(cell);
    if (cell.text === '') continue;
    if (named === undefined) {
      reportUnknown(cell.text, place, kinds.columns, problems, 'column');
    } else if (columns.has(named.column.name)) {
      problems.add(place.problem(`the column ${named.column.name} stands here a second time`));
    } else columns.set(named.column.name, place);
  }
  const read = rows.slice(headerAt + 1).map((row): SheetRow => {
    const written = row.findLastIndex(({ text }) => text !== '') + 1;
    if (written > header.length)
      problems.add(
        placeOf(row[header.length]).problem(`this row has ${written} cells and the header ${header.length}`, {
          hint: 'decimals are written with a point, 410.5; a comma starts a new cell',
        }),
      );
    const cells = new Map<string, Cell>();
    header.forEach(({ cell: head, named }, index) => {
      const cell = row[index];
      if (named === undefined || cell === undefined || cell.text === '') return;
      const unit = named.unit === '' ? undefined : { text: named.unit, place: placeOf(head) };
      cells.set(named.column.name, { text: cell.text, unit, place: placeOf(cell) });
    });
    return { place: placeOf({ from: row[0].from, to: row[row.length - 1].to }), cells };
  });
  const head = placeOf({ from: rows[headerAt][0].from, to: rows[headerAt][header.length - 1].to });
  return { file, settings, columns, rows: read, head };
}

/** A header names two columns or more, and has no figures in it. */
const isHeader = (row: readonly CsvCell[], columns: readonly Column[]): boolean =>
  row.filter(({ text }) => columnNamed(text, columns) !== undefined).length >= 2 &&
  !row.some(({ text }) => /^[-+]?[\d.]/.test(text));

function readSettings(
  rows: readonly CsvCell[][],
  known: readonly Column[],
  placeOf: (cell: CsvCell) => Place,
  problems: ProblemList,
): Map<string, Cell> {
  const settings = new Map<string, Cell>();
  for (const row of rows) {
    const [key, ...values] = row;
    const place = placeOf(key);
    const setting = known.find(({ name, also = [] }) => [name, ...also].includes(plainName(key.text)));
    const given = values.filter(({ text }) => text !== '');
    if (setting === undefined) reportUnknown(key.text, place, known, problems, 'line');
    else if (given.length === 0)
      problems.add(place.problem(`${setting.name} has no value`, { expected: setting.example }));
    else if (settings.has(setting.name)) problems.add(place.problem(`${setting.name} is set a second time`));
    else {
      // A comma within a text, 1,200 ft, made two cells of one value.
      const text = given.map((cell) => cell.text).join(',');
      settings.set(setting.name, {
        text,
        place: placeOf({ text, from: given[0].from, to: given[given.length - 1].to }),
      });
    }
  }
  return settings;
}

export function reportUnknown(
  text: string,
  place: Place,
  known: readonly Column[],
  problems: ProblemList,
  what: 'column' | 'line' | 'key',
): void {
  const close = nearestColumn(text, known);
  problems.add(
    place.problem(`no ${what} ${text.slice(0, 40)} is known here`, {
      expected: close ? undefined : `one of ${known.map(({ name }) => name).join(', ')}`,
      hint: close && `did you mean ${known.find(({ name }) => name === close)?.example ?? close}?`,
    }),
  );
}
