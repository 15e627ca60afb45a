import type { Problem } from '../layout/problem.js';

/** What more a problem says beside its message. */
export interface More {
  expected?: string;
  hint?: string;
}

/** A place in a file of readings, which can be complained of. */
export interface Place {
  line: number;
  problem(message: string, more?: More): Problem;
}

/** What somebody wrote, and where. `unit` is that of its column, where the column says one. */
export interface Cell {
  text: string;
  unit?: { text: string; place: Place };
  place: Place;
}

/** A row of readings, by the name of the column; a column without a cell there is missing or blank. */
export interface SheetRow {
  place: Place;
  cells: ReadonlyMap<string, Cell>;
}

/** A file of readings as it was written: what was set for all of them, and a row for each. */
export interface Sheet {
  file: string;
  settings: ReadonlyMap<string, Cell>;
  /** Columns that the header names; in YAML, every key that a reading has. */
  columns: ReadonlyMap<string, Place>;
  rows: readonly SheetRow[];
  /** The header, or the list of readings. */
  head: Place;
}

/** A name as any writer may have it: `Discharge_A` is `discharge a`. */
export const plainName = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[_\s]+/g, ' ')
    .replace(/\s*:\s*$/, '')
    .trim();
