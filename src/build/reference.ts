import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type JsonSchema, layoutJsonSchema } from '../layout/json-schema.js';
import { layoutReference } from './layout-reference.js';

// Runs from dist/build/, where `npm run reference` puts it.
const docs = fileURLToPath(new URL('../../docs/', import.meta.url));
mkdirSync(docs, { recursive: true });
writeFileSync(`${docs}layout.md`, layoutReference(layoutJsonSchema() as JsonSchema));
