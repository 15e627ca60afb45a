import * as z from 'zod';
import { type CatalogueRows, KINDS, SCHEMAS } from '../catalogue/kind.js';
import { readDataFolder } from '../catalogue/read-data.js';

/**
 * Every row of the data folder, as written and as a model in SI; throws with all that is wrong, so that no bad row is ever
 * shipped.
 */
export function checkedRows(folder: string): { rows: CatalogueRows; models: CatalogueRows } {
  const rows = readDataFolder(folder);
  const models = {} as CatalogueRows;
  const faults: string[] = [];
  for (const kind of KINDS) {
    models[kind] = {};
    for (const [id, row] of Object.entries(rows[kind])) {
      const parsed = SCHEMAS[kind].safeParse(row);
      if (parsed.success) models[kind][id] = parsed.data;
      else faults.push(`${kind} ${id}:\n${z.prettifyError(parsed.error)}`);
    }
  }
  if (faults.length > 0) throw new Error(`the catalogue's data is wrong\n${faults.join('\n')}`);
  return { rows, models };
}
