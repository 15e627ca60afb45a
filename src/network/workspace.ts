import { Region } from './memory.js';
import type { EliminationPlan } from './ordering.js';

/** Solutions that are kept to guess the next from. */
export const PAST = 4;

/** Of `kernel/system.ts`: how many sizes it begins with, and how many addresses follow. */
const SIZES = 7;
const ADDRESSES = 20 + PAST;

/** The arrays of one network's equations, where the kernel reads and writes them, and what it does with them. */
export class Workspace {
  /** By chain: positions of its ends, and its entry in the matrix; the one past the last where an end is fixed. */
  readonly tail: Int32Array;
  readonly tip: Int32Array;
  readonly entry: Int32Array;
  /** By chain, m3/s: its flow, and what the last step moved it by. */
  readonly flow: Float64Array;
  readonly step: Float64Array;
  /** By chain: m, and one over d(loss)/d(flow), m3/s per m. */
  readonly loss: Float64Array;
  readonly conductance: Float64Array;
  /** By chain: its quadratic parts together, m per (m3/s)^2, and the largest flow below which a part is linear, m3/s. */
  readonly resistance: Float64Array;
  readonly linearBelow: Float64Array;
  /** By position: m, and the water drawn, m3/s. */
  readonly head: Float64Array;
  readonly demand: Float64Array;
  /** By position, m3/s: the right-hand side of the system while it is solved, free between. */
  readonly rightSide: Float64Array;
  /** By solution kept: its weight in a guess. */
  readonly weight: Float64Array;
  /** What the last step found of the plain chains: descent, along, worst head and worst correction (see Equations). */
  readonly found: Float64Array;
  /** Where all this lies, with room for a fold of the network's trees. */
  readonly region: Region;
  /** Addresses of the flows of the solutions kept. */
  private readonly past: readonly number[];
  private readonly system: Int32Array;
  private readonly address: number;

  /** For so many chains, and so many positions of which the plan has a part. */
  constructor(chains: number, positions: number, plan: EliminationPlan) {
    const entries = plan.row.length + 1;
    const region = new Region(roomFor(chains, positions, plan));
    const { size, columnStart, row, targetStart, target } = plan;
    const ofChains = () => region.doubles(chains);
    const ofPositions = () => region.doubles(positions);
    const copied = (array: Int32Array) => {
      const copy = region.integers(array.length);
      copy.set(array);
      return copy;
    };
    this.region = region;
    this.system = region.integers(SIZES + ADDRESSES);
    this.address = this.system.byteOffset;
    this.tail = region.integers(chains);
    this.tip = region.integers(chains);
    this.entry = region.integers(chains);
    this.flow = ofChains();
    this.step = ofChains();
    this.loss = ofChains();
    this.conductance = ofChains();
    this.resistance = ofChains();
    this.linearBelow = ofChains();
    this.head = ofPositions();
    this.demand = ofPositions();
    this.rightSide = ofPositions();
    this.weight = region.doubles(PAST);
    this.found = region.doubles(FOUND);
    const past = Array.from({ length: PAST }, ofChains);
    this.past = past.map((array) => array.byteOffset);
    let singles = 0;
    while (singles < size && columnStart[singles + 1] === singles + 1) singles++;
    // In the order of kernel/system.ts.
    this.system.set([0, 0, chains, singles, size, positions, entries]);
    const byChain = [this.tail, this.tip, this.entry, this.flow, this.step, this.loss, this.conductance];
    const byPosition = [this.head, this.demand, ofPositions(), this.rightSide];
    const elimination = [region.doubles(entries), ...[columnStart, row, targetStart, target].map(copied)];
    const arrays = [...byChain, this.resistance, this.linearBelow, ...byPosition, ...elimination];
    arrays.push(this.found, this.weight, ...past);
    this.system.set(
      arrays.map((array) => array.byteOffset),
      SIZES,
    );
  }

  /** Says that chains numbered below `plainEnd` go by one quadratic law, and those below `outletEnd` end at a fixed head. */
  setEnds(outletEnd: number, plainEnd: number): void {
    this.system[0] = outletEnd;
    this.system[1] = plainEnd;
  }

  /** Solves for all heads; returns the position of a zero pivot, or -1. */
  solveHeads(): number {
    return this.region.kernel.solveHeads(this.address);
  }

  /** Linearises the laws of the plain chains at their flows. */
  linearise(): void {
    this.region.kernel.linearise(this.address);
  }

  /**
   * Solves for all heads, and moves the flows of the plain chains, linearises and judges them (see Equations). Returns the
   * position of a zero pivot, and has done nothing then; or -1.
   */
  advance(): number {
    return this.region.kernel.advance(this.address);
  }

  /**
   * Keeps the flows in a slot of the solutions kept, sets them to the sum of all kept, each times its `weight`, and linearises
   * the laws of the plain chains there.
   */
  guess(slot: number): void {
    this.region.kernel.guess(this.address, this.past[slot]);
  }

  /** Unfolds the trees of the fold at an address (see TreeFold), and linearises the plain chains. */
  unfold(fold: number): void {
    this.region.kernel.unfold(this.address, fold);
  }
}

const FOUND = 4;

/** Bytes for the arrays above and for those of a fold, each at a full multiple of eight. */
function roomFor(chains: number, positions: number, plan: EliminationPlan): number {
  const entries = plan.row.length + 1;
  const integers = 6 * chains + 5 * positions + 2 + plan.row.length + plan.target.length;
  const doubles = (8 + PAST) * chains + 9 * positions + entries + PAST + FOUND;
  const arrays = 50;
  return 4 * (integers + SIZES + ADDRESSES) + 8 * (doubles + arrays) + 4 * 2 * ADDRESSES;
}
