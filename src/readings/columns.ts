import type { Dimension } from '../quantity/dimension.js';
import { nearest } from '../quantity/nearest.js';
import { plainName } from './sheet.js';

/** A column that a kind of readings may have, or a line of its settings. */
export interface Column {
  /** As a header writes it: `discharge`. */
  name: string;
  /** Undefined where it holds a word. */
  dimension?: Dimension;
  /** What a header or setting may look like. */
  example: string;
  also?: readonly string[];
}

export interface NamedColumn {
  column: Column;
  /** What follows the name: its unit, brackets taken off. */
  unit: string;
}

/** The column that a header cell names, and the unit behind the name: `discharge a (psi)`. */
export function columnNamed(text: string, columns: readonly Column[]): NamedColumn | undefined {
  const written = plainName(text);
  const names = columns.flatMap((column) =>
    [column.name, ...(column.also ?? [])].map((name) => ({ name, column })),
  );
  names.sort((one, other) => other.name.length - one.name.length);
  for (const { name, column } of names) {
    if (written !== name && !new RegExp(`^${name}[\\s(\\[,/]`).test(written)) continue;
    // The unit as it was written: inHg and MPa have capitals.
    const rest = text
      .trim()
      .replace(/[_\s]+/g, ' ')
      .slice(name.length);
    return { column, unit: rest.replace(/^[\s,/]*[([]?\s*/, '').replace(/\s*[)\]]?\s*:?$/, '') };
  }
  return undefined;
}

/** The name that a reader most likely meant. */
export const nearestColumn = (text: string, columns: readonly Column[]): string | undefined =>
  nearest(
    plainName(text).replace(/\s*[([].*$/, ''),
    columns.map(({ name }) => name),
  ) ??
  nearest(
    plainName(text).split(' ')[0],
    columns.map(({ name }) => name),
  );
