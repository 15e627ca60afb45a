import type { CatalogueRows } from '../catalogue/kind.js';
import { loadCatalogue } from '../catalogue/load.js';
import { engineJsonSchema, layoutJsonSchema } from '../layout/json-schema.js';

/** The JSON Schemas that ship as files, by the name of the file, with the ids of these rows in them. */
export function schemaFiles(rows: CatalogueRows): Record<string, string> {
  const catalogue = loadCatalogue(rows);
  const text = (schema: object) => `${JSON.stringify(schema, null, 1)}\n`;
  return {
    'layout.json': text(layoutJsonSchema(catalogue)),
    'engine.json': text(engineJsonSchema(catalogue)),
  };
}
