import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CatalogueRows } from './kind.js';
import { readDataFolder } from './read-data.js';

/** Set by the bundler, which writes the rows beside the bundle so that no start has to parse YAML. */
declare const PUMPYOKE_BUNDLED: boolean | undefined;

const bundled = (): boolean => typeof PUMPYOKE_BUNDLED !== 'undefined' && PUMPYOKE_BUNDLED;

const beside = (name: string): CatalogueRows =>
  JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));

/** The rows as the data files have them. */
export function catalogueRows(): CatalogueRows {
  return bundled()
    ? beside('./catalogue.json')
    : readDataFolder(fileURLToPath(new URL('../../data/', import.meta.url)));
}

/** The rows as models in SI, which the build has read by their schemas; undefined where nothing was built. */
export function catalogueModels(): CatalogueRows | undefined {
  return bundled() ? beside('./catalogue-models.json') : undefined;
}
