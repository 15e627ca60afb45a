import type * as z from 'zod';
import { choice } from '../../catalogue/schema/choice.js';

export { choice };

/** What a schema is that is made when something is first read by it: most layouts need few of all that there are. */
export function made<S extends z.ZodType>(later: z.ZodLazy<S>): S {
  return later._zod.innerType;
}

export function isMapping(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What stands in the document, as a sentence begins. */
export function whatStands(value: unknown): string {
  if (value === undefined || value === null || value === '') return 'nothing stands here';
  if (Array.isArray(value)) return 'a list stands here';
  if (typeof value === 'object') return 'a mapping stands here';
  const text = String(value);
  const shown = text.length > 40 ? `${text.slice(0, 37)}...` : text;
  return typeof value === 'string' ? `"${shown}" stands here` : `${shown} stands here`;
}

/** A list or a mapping: two shapes of the same thing. */
export function listOrMapping<L extends z.ZodType, M extends z.ZodType>(list: L, mapping: M, wanted: string) {
  return choice([list, mapping], (value) => {
    if (Array.isArray(value)) return 0;
    return isMapping(value) ? 1 : `${whatStands(value)}; ${wanted}`;
  });
}

/** A text or a mapping: an id of the catalogue or the thing itself, a quantity or several. */
export function textOrMapping<T extends z.ZodType, M extends z.ZodType>(text: T, mapping: M) {
  return choice([text, mapping], (value) => (isMapping(value) ? 1 : 0));
}
