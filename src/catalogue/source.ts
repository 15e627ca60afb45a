import type { Source } from './schema/text.js';

/**
 * Where a value of a part comes from: the entry of `source` for its key, or for the mapping it stands in
 * (`limits` covers `limits.burst`). Undefined where the part says nothing of it.
 */
export function sourceOf(part: { source?: Source }, key: string): string | undefined {
  const { source } = part;
  if (source === undefined || typeof source === 'string') return source;
  for (let path = key; path !== ''; path = path.slice(0, Math.max(0, path.lastIndexOf('.'))))
    if (Object.hasOwn(source, path)) return source[path];
  return undefined;
}

/** Every source that a part names, each once. */
export function sourcesOf(part: { source?: Source }): string[] {
  const { source } = part;
  if (source === undefined) return [];
  return typeof source === 'string' ? [source] : [...new Set(Object.values(source))];
}
