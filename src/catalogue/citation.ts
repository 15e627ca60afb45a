import type { Source } from './schema/text.js';
import { sourceOf, sourcesOf } from './source.js';

/** Where a value of a part comes from, or all that the part names; the layout, where it names nothing. */
export function citation(part: { source?: Source }, key?: string): string {
  const own = key === undefined ? undefined : sourceOf(part, key);
  return own ?? (sourcesOf(part).join('; ') || 'stated in the layout');
}
