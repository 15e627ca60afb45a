import { KERNEL } from './kernel-code.js';
import type { EliminationPlan } from './ordering.js';

// What is used of it, as the types of Node leave it out and those of browsers bring all that a page has.
interface Memory {
  readonly buffer: ArrayBuffer;
}
declare const WebAssembly: {
  Module: new (code: Uint8Array) => object;
  Memory: new (pages: { initial: number; maximum: number }) => Memory;
  Instance: new (module: object, imports: { env: { memory: Memory } }) => { exports: unknown };
};

/** What the compiled kernel offers; `system` is an address. */
interface Kernel {
  linearise(system: number): void;
  advance(system: number): number;
  /** Four arrays, each times its weight, to one of `count` doubles. */
  guess(system: number, into: number): void;
}

/** Solutions that are kept to guess the next from. */
export const PAST = 4;

const PAGE = 65_536;
/** Networks share blocks of memory of this size, bytes, or of their own where they are larger. */
const BLOCK = 16 * PAGE;

let compiled: object | undefined;
let current: Block | undefined;

/** A block of memory that networks share. It is filled once and goes when none of them is left. */
class Block {
  readonly kernel: Kernel;
  private readonly memory: Memory;
  private used = 0;

  constructor(bytes: number) {
    const pages = Math.ceil(bytes / PAGE);
    compiled ??= new WebAssembly.Module(Buffer.from(KERNEL, 'base64'));
    this.memory = new WebAssembly.Memory({ initial: pages, maximum: pages });
    const instance = new WebAssembly.Instance(compiled, { env: { memory: this.memory } });
    this.kernel = instance.exports as Kernel;
  }

  /** A block with so much room left. */
  static with(bytes: number): Block {
    if (bytes > BLOCK / 4) return new Block(bytes);
    if (!current || current.used + bytes > BLOCK) current = new Block(BLOCK);
    return current;
  }

  doubles(length: number): Float64Array {
    return new Float64Array(this.memory.buffer, this.take(8 * length), length);
  }

  integers(length: number): Int32Array {
    return new Int32Array(this.memory.buffer, this.take(4 * length), length);
  }

  private take(bytes: number): number {
    const address = this.used;
    this.used += 8 * Math.ceil(bytes / 8);
    return address;
  }
}

/**
 * The arrays of one network's equations, where the kernel reads and writes them, and what it does with them. The kernel is
 * the loops in which a large network spends its time, compiled to WebAssembly from `kernel/`: there they take half as long.
 */
export class Workspace {
  /** By chain: positions of its ends, and its entry in the matrix; the one past the last where an end is fixed. */
  readonly tail: Int32Array;
  readonly tip: Int32Array;
  readonly entry: Int32Array;
  /** By chain, m3/s: its flow, and what the last sweep moved it by. */
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
  /** By solution kept: its weight in a guess. */
  readonly weight: Float64Array;
  /** What the last sweep of the plain chains found: descent, along, worst head and worst correction. */
  readonly found: Float64Array;
  private readonly kernel: Kernel;
  private readonly system: Int32Array;
  private readonly address: number;
  /** Addresses of the flows of the solutions kept. */
  private readonly past: readonly number[];

  /** For so many chains, and so many positions of which the plan has a part. */
  constructor(chains: number, positions: number, plan: EliminationPlan) {
    const entries = plan.row.length + 1;
    const wholes = [chains, chains, chains, plan.size + 1, plan.row.length, plan.size + 1, plan.target.length];
    const doubles = (6 + PAST) * chains + 4 * positions + entries + PAST + 4;
    const bytes = 8 * (doubles + SYSTEM_WORDS) + wholes.reduce((sum, length) => sum + 4 * length + 8, 0);
    const block = Block.with(bytes);
    this.kernel = block.kernel;
    this.system = block.integers(SYSTEM_WORDS);
    this.address = this.system.byteOffset;
    const ofChains = () => block.doubles(chains);
    const ofPositions = () => block.doubles(positions);
    const kept = (array: Int32Array) => {
      const copy = block.integers(array.length);
      copy.set(array);
      return copy;
    };
    this.tail = block.integers(chains);
    this.tip = block.integers(chains);
    this.entry = block.integers(chains);
    this.flow = ofChains();
    this.step = ofChains();
    this.loss = ofChains();
    this.conductance = ofChains();
    this.resistance = ofChains();
    this.linearBelow = ofChains();
    this.head = ofPositions();
    this.demand = ofPositions();
    const past = Array.from({ length: PAST }, ofChains);
    this.past = past.map((array) => array.byteOffset);
    this.weight = block.doubles(PAST);
    this.found = block.doubles(4);
    let singles = 0;
    while (singles < plan.size && plan.columnStart[singles + 1] === singles + 1) singles++;
    // In the order of kernel/system.ts.
    this.system.set([0, 0, chains, singles, plan.size, positions, entries]);
    const arrays = [this.tail, this.tip, this.entry, this.flow, this.step, this.loss, this.conductance];
    arrays.push(this.resistance, this.linearBelow, this.head, this.demand, ofPositions(), ofPositions());
    arrays.push(block.doubles(entries), kept(plan.columnStart), kept(plan.row), kept(plan.targetStart));
    arrays.push(kept(plan.target), this.found, this.weight, ...past);
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

  /** Linearises the laws of the plain chains at their flows, and judges them. */
  linearise(): void {
    this.kernel.linearise(this.address);
  }

  /**
   * Solves for all heads, and moves the flows of the plain chains, linearises and judges them (see Equations). Returns the
   * position of a zero pivot, and has done nothing then; or -1.
   */
  advance(): number {
    return this.kernel.advance(this.address);
  }

  /** Keeps the flows in a slot of the solutions kept, and sets them to the sum of all kept, each times its `weight`. */
  guess(slot: number): void {
    this.kernel.guess(this.address, this.past[slot]);
  }
}

const SIZES = 7;
const SYSTEM_WORDS = SIZES + 20 + PAST;
