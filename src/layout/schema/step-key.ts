import { nearest } from '../../quantity/nearest.js';

/** The key that names the kind of a step: the first of its keys that names one. */
export function stepKeyOf<K extends string>(
  step: Record<string, unknown>,
  kinds: readonly K[],
): K | undefined {
  return Object.keys(step).find((key): key is K => (kinds as readonly string[]).includes(key));
}

/** Why a mapping is no step, with the kind that was most likely meant. */
export function misspelt(step: Record<string, unknown>, kinds: readonly string[]): string {
  const keys = Object.keys(step);
  if (keys.length === 0) return `an empty step; one of these names its kind: ${kinds.join(', ')}`;
  for (const key of keys) {
    const meant = nearest(key, kinds);
    if (meant) return `${key} names no kind of step: did you mean ${meant}?`;
  }
  return `no key here names a kind of step: ${kinds.join(', ')}`;
}
