import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import { type CatalogueRows, KINDS } from './kind.js';

/** The data files of a kind: `hose.yaml`, and every YAML file in `hose/`. */
function filesOf(folder: string, kind: string): string[] {
  const files = [];
  const single = join(folder, `${kind}.yaml`);
  if (statSync(single, { throwIfNoEntry: false })?.isFile()) files.push(single);
  const many = join(folder, kind);
  if (statSync(many, { throwIfNoEntry: false })?.isDirectory())
    for (const name of readdirSync(many).sort()) if (name.endsWith('.yaml')) files.push(join(many, name));
  return files;
}

function readRows(file: string): [string, unknown][] {
  const rows: unknown = parse(readFileSync(file, 'utf8'));
  if (typeof rows !== 'object' || rows === null || Array.isArray(rows))
    throw new Error(`${file} is not a mapping from id to row`);
  return Object.entries(rows);
}

/** Reads every row of the data folder, as plain objects. Throws where a file is no mapping or an id comes twice. */
export function readDataFolder(folder: string): CatalogueRows {
  const rows = {} as CatalogueRows;
  for (const kind of KINDS) {
    const found = new Map<string, unknown>();
    for (const file of filesOf(folder, kind))
      for (const [id, row] of readRows(file)) {
        if (found.has(id)) throw new Error(`${file}: ${kind} ${id} is in another file too`);
        found.set(id, row);
      }
    rows[kind] = Object.fromEntries(found);
  }
  return rows;
}
