import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CatalogueRows } from './kind.js';
import { readDataFolder } from './read-data.js';

/** Set by the bundler, which writes the rows beside the bundle so that no start has to parse YAML. */
declare const PUMPYOKE_BUNDLED: boolean | undefined;

export function catalogueRows(): CatalogueRows {
  if (typeof PUMPYOKE_BUNDLED !== 'undefined' && PUMPYOKE_BUNDLED)
    return JSON.parse(readFileSync(new URL('./catalogue.json', import.meta.url), 'utf8'));
  return readDataFolder(fileURLToPath(new URL('../../data/', import.meta.url)));
}
