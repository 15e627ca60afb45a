/**
 * The order in which unknown heads are eliminated, and where each product of the elimination lands.
 *
 * The matrix of a lay is nearly a tree's: taking always a node with the fewest neighbours left (minimum degree)
 * eliminates leaves first and makes no new entries there, so that factor and solve grow in proportion to the lay.
 * Found once for a topology; used for every iteration and every re-solve.
 */
export interface EliminationPlan {
  /** Unknown heads. */
  size: number;
  /** Position in the elimination order by node number. */
  position: Int32Array;
  /** Start of each column's entries below the diagonal, by position; `size + 1` long. */
  columnStart: Int32Array;
  /** Row (as a position) of each entry, rising within a column. */
  row: Int32Array;
  /** Start in `target` of each column's products, by position. */
  targetStart: Int32Array;
  /** For each pair of entries of a column, the entry that their product is taken from. */
  target: Int32Array;
}

/** Plans the elimination for `size` nodes joined by `pairs` [node, node]; a pair may stand there more than once. */
export function planElimination(
  size: number,
  pairs: readonly (readonly [number, number])[],
): EliminationPlan {
  const order = minimumDegreeOrder(size, pairs);
  const { position, columns } = order;
  const columnStart = new Int32Array(size + 1);
  for (let k = 0; k < size; k++) columnStart[k + 1] = columnStart[k] + columns[k].length;
  const row = new Int32Array(columnStart[size]);
  for (let k = 0; k < size; k++) row.set(columns[k], columnStart[k]);

  const targetStart = new Int32Array(size + 1);
  for (let k = 0; k < size; k++) {
    const entries = columns[k].length;
    targetStart[k + 1] = targetStart[k] + (entries * (entries - 1)) / 2;
  }
  const target = new Int32Array(targetStart[size]);
  const plan = { size, position, columnStart, row, targetStart, target };
  for (let k = 0, t = 0; k < size; k++) {
    for (let a = columnStart[k]; a < columnStart[k + 1]; a++) {
      for (let b = a + 1; b < columnStart[k + 1]; b++) target[t++] = entryAt(plan, row[a], row[b]);
    }
  }
  return plan;
}

/** The entry of the pair of positions (`column` before `rowWanted`) in the plan. */
export function entryAt(
  plan: Pick<EliminationPlan, 'columnStart' | 'row'>,
  column: number,
  rowWanted: number,
): number {
  let low = plan.columnStart[column];
  let high = plan.columnStart[column + 1] - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (plan.row[middle] < rowWanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

function minimumDegreeOrder(size: number, pairs: readonly (readonly [number, number])[]) {
  const neighbours: number[][] = Array.from({ length: size }, () => []);
  for (const [a, b] of pairs) {
    if (a === b) continue;
    if (!neighbours[a].includes(b)) {
      neighbours[a].push(b);
      neighbours[b].push(a);
    }
  }
  // Buckets of nodes by degree; an entry is stale where the degree has changed since, and is passed over.
  const buckets: number[][] = [];
  const file = (node: number) => {
    const degree = neighbours[node].length;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree].push(node);
  };
  for (let node = size - 1; node >= 0; node--) file(node);

  const position = new Int32Array(size).fill(-1);
  const eliminated: number[][] = [];
  let lowest = 0;
  const taken: number[] = [];
  for (let k = 0; k < size; ) {
    while ((taken[lowest] ?? 0) === buckets[lowest].length) lowest++;
    const node = buckets[lowest][taken[lowest] ?? 0];
    taken[lowest] = (taken[lowest] ?? 0) + 1;
    if (position[node] >= 0 || neighbours[node].length !== lowest) continue;
    position[node] = k++;
    const around = neighbours[node];
    eliminated.push(around);
    for (const one of around) {
      const list = neighbours[one];
      list.splice(list.indexOf(node), 1);
    }
    for (let a = 0; a < around.length; a++) {
      for (let b = a + 1; b < around.length; b++) {
        if (!neighbours[around[a]].includes(around[b])) {
          neighbours[around[a]].push(around[b]);
          neighbours[around[b]].push(around[a]);
        }
      }
    }
    for (const one of around) {
      file(one);
      lowest = Math.min(lowest, neighbours[one].length);
    }
  }
  const columns = eliminated.map((around) => around.map((node) => position[node]).sort((a, b) => a - b));
  return { position, columns };
}
