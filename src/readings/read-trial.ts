import type { Layout, Staging } from '../layout/layout.js';
import { STAGINGS } from '../layout/schema/layout.js';
import { nearest } from '../quantity/nearest.js';
import { SheetReading } from './read-sheet.js';
import { type Cell, plainName, type Sheet, type SheetRow } from './sheet.js';
import { INSTRUMENTS, type Instrument, SET_UP, TRIAL_SET } from './trial-columns.js';

/** One set-up of a test day with all that was read in it, SI. */
export interface TrialRow {
  line: number;
  staging: Staging;
  /** Bore of the orifice on the outlet, m; undefined with the outlets shut. */
  orifice?: number;
  read: Partial<Record<Instrument, number>>;
}

/** The sheet of a test day, SI. */
export interface TrialReadings {
  file: string;
  title?: string;
  date?: string;
  rows: TrialRow[];
  /** What instruments may be off by, at every reading alike. */
  gaugeError?: number;
  inletError?: number;
  meterError?: number;
  speedError?: number;
}

const COLUMNS = [...Object.values(SET_UP), ...Object.values(INSTRUMENTS)];
const KINDS = { columns: COLUMNS, settings: Object.values(TRIAL_SET) };
const LARGEST_ORIFICE = 0.2;
const SHUT = ['shut', 'closed', 'none', '0'];

/** Reads the sheet of a test day of a layout; throws `LayoutProblems` with all that is wrong in it. */
export function readTrial(path: string, layout: Layout): TrialReadings {
  const reading = new SheetReading();
  const sheet = reading.open(path, KINDS);
  return finished(sheet && trialOf(sheet, layout, reading), reading);
}

/** As `readTrial`, of a text as if it stood in `file`. */
export function readTrialText(text: string, file: string, layout: Layout): TrialReadings {
  const reading = new SheetReading();
  const sheet = reading.sheetOf(file, text, KINDS);
  return finished(sheet && trialOf(sheet, layout, reading), reading);
}

function finished(trial: TrialReadings | undefined, reading: SheetReading): TrialReadings {
  if (!trial || reading.problems.any) throw reading.problems.toError('the readings');
  return trial;
}

function trialOf(sheet: Sheet, layout: Layout, reading: SheetReading): TrialReadings | undefined {
  const instruments = Object.values(INSTRUMENTS).filter(({ name }) => sheet.columns.has(name));
  if (instruments.length === 0)
    reading.problems.add(
      sheet.head.problem('no instrument has a column', {
        expected: `one or more of ${Object.values(INSTRUMENTS)
          .map(({ example }) => example)
          .join(', ')}`,
      }),
    );
  reading.wants(sheet, SET_UP.orifice);
  if (reading.problems.any) return undefined;
  const rows = sheet.rows.flatMap((row) => rowOf(row, layout, reading) ?? []);
  const set = (column: (typeof TRIAL_SET)['gaugeError']) =>
    reading.value(sheet.settings.get(column.name), column);
  const seen = new Map<string, number>();
  for (const row of rows) {
    const key = `${row.staging} ${row.orifice} ${JSON.stringify(row.read)}`;
    const of = seen.get(key);
    if (of !== undefined)
      reading.problems.add(
        (sheet.rows.find(({ place }) => place.line === row.line) as SheetRow).place.problem(
          `this row says in every figure what line ${of} says`,
          { hint: 'strike it out if it was copied; two readings would differ in something' },
        ),
      );
    seen.set(key, row.line);
  }
  return {
    file: sheet.file,
    title: sheet.settings.get('title')?.text,
    date: sheet.settings.get('date')?.text,
    rows,
    gaugeError: set(TRIAL_SET.gaugeError),
    inletError: set(TRIAL_SET.inletError),
    meterError: set(TRIAL_SET.meterError),
    speedError: set(TRIAL_SET.speedError),
  };
}

function rowOf(row: SheetRow, layout: Layout, reading: SheetReading): TrialRow | undefined {
  const staging = stagingOf(row.cells.get('staging'), layout, reading);
  const orifice = orificeOf(row, reading);
  const read: TrialRow['read'] = {};
  for (const name of Object.keys(INSTRUMENTS) as Instrument[]) {
    const cell = row.cells.get(name);
    const value = reading.value(cell, INSTRUMENTS[name]);
    if (cell === undefined || value === undefined) continue;
    if (/^(tee|flow)$/.test(name) && orifice === 'shut') {
      reading.problems.add(
        cell.place.problem(`nothing flows with the outlet shut, and a ${name} reading stands here`, {
          hint: 'leave the cell blank, or write the bore of the orifice',
        }),
      );
    } else read[name] = value;
  }
  if (staging === undefined || orifice === undefined) return undefined;
  if (Object.keys(read).length === 0) {
    reading.problems.add(
      row.place.problem('nothing was read in this row', { expected: 'one reading or more, or no row' }),
    );
    return undefined;
  }
  return { line: row.place.line, staging, ...(orifice !== 'shut' && { orifice }), read };
}

function stagingOf(cell: Cell | undefined, layout: Layout, reading: SheetReading): Staging | undefined {
  if (cell === undefined) return layout.staging;
  const written = plainName(cell.text).replaceAll(' ', '_');
  const staging = STAGINGS.find((one) => one === written);
  const complain = (message: string, hint: string) => {
    reading.problems.add(cell.place.problem(message, { hint }));
    return undefined;
  };
  if (staging === undefined) {
    const close = nearest(written, [...STAGINGS]);
    return complain(
      `no staging ${cell.text.slice(0, 30)} is known`,
      close ? `did you mean ${close}?` : `one of ${STAGINGS.join(', ')}`,
    );
  }
  if (staging !== 'a' && layout.engine.pumps.b === undefined)
    return complain('the engine of the layout has one pump', 'write a, or add pump b to the engine');
  return staging;
}

function orificeOf(row: SheetRow, reading: SheetReading): number | 'shut' | undefined {
  const cell = row.cells.get('orifice');
  if (cell && SHUT.includes(plainName(cell.text))) return 'shut';
  const bore = reading.needed(row, SET_UP.orifice);
  if (bore !== undefined && cell && (bore <= 0 || bore > LARGEST_ORIFICE)) {
    reading.problems.add(
      cell.place.problem('no orifice has such a bore', { expected: 'a bore such as 0.716 in, or shut' }),
    );
    return undefined;
  }
  return bore;
}
