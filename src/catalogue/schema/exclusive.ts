import * as z from 'zod';

function isMapping(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function listed(keys: readonly string[], word: string): string {
  return keys.length < 2 ? keys.join('') : `${keys.slice(0, -1).join(', ')} ${word} ${keys.at(-1)}`;
}

/**
 * A check that a mapping has exactly one of the keys. It runs even where a key has a problem of its own, so that all the
 * problems of a document come out at once.
 */
export function exactlyOne<T>(keys: readonly string[], what: string) {
  return z.superRefine<T>(
    (value, context) => {
      const mapping = value as Record<string, unknown>;
      const given = keys.filter((key) => Object.hasOwn(mapping, key) && mapping[key] !== undefined);
      if (given.length === 1) return;
      context.addIssue({
        code: 'custom',
        path: given.length === 0 ? [] : [given[1]],
        message:
          given.length === 0
            ? `${what} is wanted: ${listed(keys, 'or')}`
            : `${listed(given, 'and')} each give ${what}: keep one`,
      });
    },
    { when: (payload) => isMapping(payload.value) },
  );
}
