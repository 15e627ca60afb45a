import { KERNEL } from './kernel-code.js';

/**
 * The loops in which a large network spends its time, compiled to WebAssembly from `kernel/`: there they take half as long.
 * `system` and `fold` are addresses (see `kernel/system.ts`); each function is described where it is written.
 */
export interface Kernel {
  solveHeads(system: number): number;
  linearise(system: number): void;
  advance(system: number): number;
  guess(system: number, into: number): void;
  unfold(system: number, fold: number): void;
}

// What is used of it, as the types of Node leave it out and those of browsers bring all that a page has.
interface Memory {
  readonly buffer: ArrayBuffer;
}
declare const WebAssembly: {
  Module: new (code: Uint8Array) => object;
  Memory: new (pages: { initial: number; maximum: number }) => Memory;
  Instance: new (module: object, imports: { env: { memory: Memory } }) => { exports: unknown };
};

const PAGE = 65_536;
/** Networks share blocks of memory of this size, bytes. */
const BLOCK = 16 * PAGE;
/** A larger one has a block of its own. */
const LARGE = BLOCK / 4;

let compiled: object | undefined;
let current: Block | undefined;

/** A block of memory with a kernel that works in it. It is filled once, and goes when none of its networks is left. */
class Block {
  readonly size: number;
  readonly kernel: Kernel;
  readonly memory: Memory;
  used = 0;

  constructor(bytes: number) {
    const pages = Math.ceil(bytes / PAGE);
    compiled ??= new WebAssembly.Module(Buffer.from(KERNEL, 'base64'));
    this.size = pages * PAGE;
    this.memory = new WebAssembly.Memory({ initial: pages, maximum: pages });
    this.kernel = new WebAssembly.Instance(compiled, { env: { memory: this.memory } }).exports as Kernel;
  }
}

/** A block with so much room left. */
function blockWith(bytes: number): Block {
  if (bytes > LARGE) return new Block(bytes);
  if (!current || current.used + bytes > current.size) current = new Block(BLOCK);
  return current;
}

/** Memory for the arrays of one network, all zero, and the kernel that works in it. */
export class Region {
  readonly kernel: Kernel;
  private readonly memory: Memory;
  private next: number;
  private readonly end: number;

  /** With room for so many bytes. */
  constructor(bytes: number) {
    const block = blockWith(bytes);
    this.kernel = block.kernel;
    this.memory = block.memory;
    this.next = block.used;
    block.used += 8 * Math.ceil(bytes / 8);
    this.end = block.used;
  }

  doubles(length: number): Float64Array {
    return new Float64Array(this.memory.buffer, this.take(8 * length), length);
  }

  integers(length: number): Int32Array {
    return new Int32Array(this.memory.buffer, this.take(4 * length), length);
  }

  private take(bytes: number): number {
    const address = this.next;
    this.next += 8 * Math.ceil(bytes / 8);
    if (this.next > this.end) throw new RangeError('a network takes more memory than it asked for');
    return address;
  }
}
