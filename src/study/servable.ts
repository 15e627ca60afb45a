/** So many nozzles are tried in every set of them; of more, sets are made smaller one nozzle at a time. */
const MOST_TRIED_WHOLE = 8;

export interface Served {
  served: string[];
  exact: boolean;
}

/**
 * The largest set of nozzles that can all be served at once. Shutting a nozzle never lowers another, so every part of a
 * set that can be served can be served as well.
 */
export function largestServed(
  nozzles: readonly { name: string; flow: number }[],
  canServe: (open: ReadonlySet<string>) => { served: boolean; worst?: string },
): Served {
  const names = nozzles.map(({ name }) => name);
  if (names.length <= MOST_TRIED_WHOLE) {
    for (let size = names.length; size > 0; size--) {
      for (const set of setsOf(names, size))
        if (canServe(new Set(set)).served) return { served: set, exact: true };
    }
    return { served: [], exact: true };
  }
  const byWorst = shrink(names, canServe, (_, worst) => worst);
  const thirst = [...nozzles].sort((a, b) => b.flow - a.flow).map(({ name }) => name);
  const byFlow = shrink(names, canServe, (open) => thirst.find((name) => open.has(name)));
  const best = byFlow.length > byWorst.length ? byFlow : byWorst;
  return { served: names.filter((name) => grown(best, names, canServe).has(name)), exact: false };
}

function shrink(
  names: readonly string[],
  canServe: (open: ReadonlySet<string>) => { served: boolean; worst?: string },
  next: (open: ReadonlySet<string>, worst: string | undefined) => string | undefined,
): string[] {
  const open = new Set(names);
  while (open.size > 0) {
    const { served, worst } = canServe(open);
    if (served) break;
    const shut = next(open, worst) ?? [...open][open.size - 1];
    open.delete(shut);
  }
  return [...open];
}

/** Opens whatever else the set still bears. */
function grown(
  set: readonly string[],
  names: readonly string[],
  canServe: (open: ReadonlySet<string>) => { served: boolean },
): Set<string> {
  const open = new Set(set);
  for (const name of names) {
    if (open.has(name)) continue;
    open.add(name);
    if (!canServe(open).served) open.delete(name);
  }
  return open;
}

/** Every set of a size, those with the first names first. */
function* setsOf(names: readonly string[], size: number, from = 0): Generator<string[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= names.length - size; i++)
    for (const rest of setsOf(names, size - 1, i + 1)) yield [names[i], ...rest];
}
