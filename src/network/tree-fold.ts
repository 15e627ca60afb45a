import type { Equations } from './equations.js';

/**
 * The trees of a network, folded for a first guess.
 *
 * A lay is nearly a tree whose leaves open to the air. Seen from upstream, a leaf of resistance r at height z passes
 * q = g sqrt(H - z) with g = 1 / sqrt(r); a hose before it adds its resistance, and leaves that meet add their g, their
 * height being the mean weighted by g (exact where all are level, close where the head is large against the heights).
 * So every tree folds into one opening at the node it hangs on. What is left, the core (the engine with its two pumps,
 * and any loops), is small and is solved first; then the flows are unfolded down the trees.
 *
 * Nodes go by their position in the equations, chains by their number. How the trees fold depends on no pump, so that a
 * fold serves until a resistance, a fixed head or a draw is changed.
 */
export class TreeFold {
  /** Chains that are not folded. */
  readonly core: readonly number[];
  /** Positions in the core at which something opens to a fixed head. */
  readonly openings: readonly number[];
  private readonly equations: Equations;
  private readonly address: number;
  /** Folded nodes, leaves first; each with the chain to the node upstream, and that node. */
  private readonly node: Int32Array;
  private readonly chain: Int32Array;
  private readonly into: Int32Array;
  private readonly sign: Float64Array;
  /** Of each: resistance of its chain, the square of the flow for each metre of head above the height, and that height. */
  private readonly upTo: Float64Array;
  private readonly share: Float64Array;
  private readonly height: Float64Array;
  /** Chains that end at a fixed head, each with the node before it and the end. */
  private readonly outlet: Int32Array;
  private readonly outletAt: Int32Array;
  private readonly outletTo: Int32Array;
  private readonly outletSign: Float64Array;
  private readonly outletShare: Float64Array;
  /** By position: of all that opens beyond it. */
  private readonly conductance: Float64Array;
  private readonly weightedHeight: Float64Array;
  /** By position: what is drawn at it and beyond, m3/s. */
  private readonly drawn: Float64Array;

  constructor(equations: Equations) {
    this.equations = equations;
    const { tail, tip, plan, losses } = equations;
    const room = equations.head.length;
    const fixed = (at: number) => at >= plan.size;
    const incident: number[][] = Array.from({ length: room }, () => []);
    const stays = new Uint8Array(room);
    const outlets: number[] = [];
    const core: number[] = [];
    for (let i = 0; i < losses.count; i++) {
      const from = tail[i];
      const to = tip[i];
      if (!fixed(from) && !fixed(to)) {
        incident[from].push(i);
        incident[to].push(i);
      } else if (losses.isPump(i) || (fixed(from) && fixed(to))) {
        core.push(i);
        stays[from] = 1;
        stays[to] = 1;
      } else outlets.push(i);
    }
    const { order, gone } = foldLeaves(equations, incident, (at) => !fixed(at) && !stays[at]);
    const { region } = equations.workspace;
    const address = region.integers(ADDRESSES);
    this.address = address.byteOffset;
    const integers = <T>(list: readonly T[], each: (one: T) => number) => {
      const array = region.integers(list.length);
      list.forEach((one, index) => {
        array[index] = each(one);
      });
      return array;
    };
    this.outlet = integers(outlets, (i) => i);
    this.outletAt = integers(outlets, (i) => (fixed(tail[i]) ? tip[i] : tail[i]));
    this.outletTo = integers(outlets, (i) => (fixed(tail[i]) ? tail[i] : tip[i]));
    this.outletSign = region.doubles(outlets.length);
    this.outletShare = region.doubles(outlets.length);
    outlets.forEach((i, index) => {
      this.outletSign[index] = fixed(tail[i]) ? -1 : 1;
    });
    const opens = new Uint8Array(room);
    for (const at of this.outletAt) opens[at] = 1;
    for (const { node, into } of order) if (opens[node]) opens[into] = 1;
    for (let i = 0; i < losses.count; i++) {
      if (!fixed(tail[i]) && !fixed(tip[i]) && !gone[tail[i]] && !gone[tip[i]]) core.push(i);
    }
    this.core = core;
    this.openings = Array.from(opens.keys()).filter((at) => opens[at] && !fixed(at) && !gone[at]);
    this.node = integers(order, (one) => one.node);
    this.chain = integers(order, (one) => one.chain);
    this.into = integers(order, (one) => one.into);
    this.sign = region.doubles(order.length);
    this.upTo = region.doubles(order.length);
    this.share = region.doubles(order.length);
    this.height = region.doubles(order.length);
    order.forEach((one, index) => {
      this.sign[index] = tail[one.chain] === one.into ? 1 : -1;
    });
    this.conductance = new Float64Array(room);
    this.weightedHeight = new Float64Array(room);
    this.drawn = region.doubles(room);
    // In the order of kernel/unfold.ts.
    const folded = [this.node, this.chain, this.into, this.sign, this.upTo, this.share, this.height];
    const ends = [this.outlet, this.outletAt, this.outletTo, this.outletSign, this.outletShare];
    const addresses = [...folded, this.drawn, ...ends].map((array) => array.byteOffset);
    address.set([order.length, outlets.length, ...addresses]);
  }

  /** Whether folding leaves less to solve than there was. */
  get worthwhile(): boolean {
    return this.node.length > 0;
  }

  /** Folds the trees; `resistance` by chain, m per (m3/s)^2. */
  fold(resistance: Float64Array): void {
    const { conductance, weightedHeight, drawn, outlet, outletAt, outletTo, outletShare } = this;
    const { node, chain, into, upTo, share, height } = this;
    const { head, demand } = this.equations;
    conductance.fill(0);
    weightedHeight.fill(0);
    drawn.set(demand);
    for (let i = 0; i < outlet.length; i++) {
      const squared = 1 / resistance[outlet[i]];
      const g = Math.sqrt(squared);
      outletShare[i] = squared;
      conductance[outletAt[i]] += g;
      weightedHeight[outletAt[i]] += g * head[outletTo[i]];
    }
    for (let i = 0; i < node.length; i++) {
      const at = node[i];
      const own = conductance[at];
      drawn[into[i]] += drawn[at];
      upTo[i] = resistance[chain[i]];
      share[i] = (own * own) / (1 + own * own * upTo[i]);
      height[i] = own > 0 ? weightedHeight[at] / own : 0;
      const g = Math.sqrt(share[i]);
      conductance[into[i]] += g;
      weightedHeight[into[i]] += g * height[i];
    }
  }

  /** What all that opens beyond a node passes as one opening, m per (m3/s)^2. */
  openingResistance(at: number): number {
    return 1 / this.conductance[at] ** 2;
  }

  /** The height of that opening, m. */
  openingHeight(at: number): number {
    return this.weightedHeight[at] / this.conductance[at];
  }

  /** What is drawn at a node of the core and beyond it, m3/s. */
  drawnFrom(at: number): number {
    return this.drawn[at];
  }

  /**
   * Unfolds the trees from the heads that stand at the nodes of the core: fills the heads and flows of all beyond, and
   * linearises the laws of the plain chains.
   */
  unfold(): void {
    this.equations.workspace.unfold(this.address);
  }
}

/** Of `kernel/unfold.ts`. */
const ADDRESSES = 15;

interface Fold {
  node: number;
  chain: number;
  into: number;
}

/** Takes leaves off for as long as there are any that hang on a passive chain. */
function foldLeaves(
  { tail, tip, losses }: Equations,
  incident: readonly (readonly number[])[],
  mayGo: (at: number) => boolean,
) {
  const degree = incident.map((list) => list.length);
  const gone = new Uint8Array(incident.length);
  const order: Fold[] = [];
  const other = (i: number, at: number) => (tail[i] === at ? tip[i] : tail[i]);
  const isLeaf = (at: number) => mayGo(at) && !gone[at] && degree[at] === 1;
  const queue = Array.from(incident.keys()).filter(isLeaf);
  for (let next = 0; next < queue.length; next++) {
    const node = queue[next];
    if (!isLeaf(node)) continue;
    const chain = incident[node].find((i) => !gone[other(i, node)]) as number;
    if (losses.isPump(chain)) continue;
    const into = other(chain, node);
    gone[node] = 1;
    degree[into]--;
    order.push({ node, chain, into });
    if (isLeaf(into)) queue.push(into);
  }
  return { order, gone };
}
