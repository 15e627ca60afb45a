/** So many nozzles are tried in every set of them; of more, sets are made smaller one nozzle at a time. */
const MOST_TRIED_WHOLE = 8;

/** How often a set is grown past a nozzle that is too many for it. */
const MOST_ROUNDS = 8;

/** Whether a set of open nozzles can all be served, and those of it with the least margin first. */
export type CanServe = (open: ReadonlySet<string>) => { served: boolean; order: readonly string[] };

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
  canServe: CanServe,
): Served {
  const names = nozzles.map(({ name }) => name);
  if (names.length <= MOST_TRIED_WHOLE) {
    for (let size = names.length; size > 0; size--) {
      for (const set of setsOf(names, size))
        if (canServe(new Set(set)).served) return { served: set, exact: true };
    }
    return { served: [], exact: true };
  }
  const all = new Set(names);
  const { served, order } = canServe(all);
  if (served) return { served: names, exact: true };
  const thirst = [...nozzles].sort((a, b) => b.flow - a.flow).map(({ name }) => name);
  const byWorst = shrink(order, canServe);
  const byFlow = shrink(thirst, canServe);
  const best = grown(byFlow.length > byWorst.length ? byFlow : byWorst, names, canServe);
  return { served: names.filter((name) => best.has(name)), exact: false };
}

/**
 * Shuts nozzles in an order, the first first, until the rest can be served. As shutting one never lowers another, fewer shut
 * cannot serve where more do not: how many are shut is found by halving.
 */
function shrink(order: readonly string[], canServe: CanServe): string[] {
  let tooFew = 0;
  let enough = order.length;
  while (enough - tooFew > 1) {
    const shut = Math.floor((tooFew + enough) / 2);
    if (canServe(new Set(order.slice(shut))).served) enough = shut;
    else tooFew = shut;
  }
  return order.slice(enough);
}

/** Opens what else the set still bears: as many as come first, found by halving, then past the one that is too many, and again. */
function grown(set: readonly string[], names: readonly string[], canServe: CanServe): Set<string> {
  let open = new Set(set);
  let rest = names.filter((name) => !open.has(name));
  for (let round = 0; round < MOST_ROUNDS && rest.length > 0; round++) {
    const bears = (count: number) => canServe(new Set([...open, ...rest.slice(0, count)])).served;
    let borne = 0;
    let tooMany = rest.length + 1;
    while (tooMany - borne > 1) {
      const count = Math.floor((borne + tooMany) / 2);
      if (bears(count)) borne = count;
      else tooMany = count;
    }
    open = new Set([...open, ...rest.slice(0, borne)]);
    rest = rest.slice(borne + 1);
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
