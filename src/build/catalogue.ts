import * as z from 'zod';
import { type CatalogueRows, KINDS, SCHEMAS } from '../catalogue/kind.js';
import { readDataFolder } from '../catalogue/read-data.js';

/** Every row of the data folder; throws with all that is wrong, so that no bad row is ever shipped. */
export function checkedRows(folder: string): CatalogueRows {
  const rows = readDataFolder(folder);
  const faults = KINDS.flatMap((kind) =>
    Object.entries(rows[kind]).flatMap(([id, row]) => {
      const parsed = SCHEMAS[kind].safeParse(row);
      return parsed.success ? [] : [`${kind} ${id}:\n${z.prettifyError(parsed.error)}`];
    }),
  );
  if (faults.length > 0) throw new Error(`the catalogue's data is wrong\n${faults.join('\n')}`);
  return rows;
}
