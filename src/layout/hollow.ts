import { isMapping } from './schema/choice.js';

/** Keys on the way to a value; `*` is every entry. */
export type Pattern = readonly string[];

/** A copy of a value in which what stands at a pattern is changed; whatever does not fit the pattern stays. */
export function changeAt(value: unknown, pattern: Pattern, change: (inside: unknown) => unknown): unknown {
  const [key, ...rest] = pattern;
  if (key === undefined) return change(value);
  if (key === '*') {
    if (Array.isArray(value)) return value.map((item) => changeAt(item, rest, change));
    if (!isMapping(value)) return value;
    return Object.fromEntries(
      Object.entries(value).map(([name, item]) => [name, changeAt(item, rest, change)]),
    );
  }
  if (!isMapping(value) || !Object.hasOwn(value, key)) return value;
  return { ...value, [key]: changeAt(value[key], rest, change) };
}

/** Empties the lists of steps at the patterns: each is read by itself, so that one mistake does not hide another. */
export function withoutSteps(value: unknown, patterns: readonly Pattern[]): unknown {
  const empty = (steps: unknown) => (Array.isArray(steps) ? [] : steps);
  return patterns.reduce((copy, pattern) => changeAt(copy, pattern, empty), value);
}

/** Puts an id in the place of each model at the patterns, which is looked up by itself. */
export function withoutModels(value: unknown, patterns: readonly Pattern[]): unknown {
  const plain = (model: unknown) => (typeof model === 'string' || isMapping(model) ? 'id' : model);
  return patterns.reduce((copy, pattern) => changeAt(copy, pattern, plain), value);
}
