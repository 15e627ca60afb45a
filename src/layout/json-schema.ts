import * as z from 'zod';
import { layoutSchema } from './schema/layout.js';

/** The layout document as a JSON Schema (draft 7), which YAML editors check and complete by. */
export function layoutJsonSchema(): z.core.JSONSchema.BaseSchema {
  return z.toJSONSchema(layoutSchema, { target: 'draft-07', io: 'input' });
}
