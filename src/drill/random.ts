/**
 * Random draws that are the same on every machine: 32-bit integer arithmetic and nothing else. Not for secrets.
 *
 * Source: mulberry32 generator and the FNV-1a hash that seeds it, both in the public domain (from memory).
 */
export class Draw {
  #state: number;

  constructor(seed: string) {
    this.#state = hash(seed);
  }

  /** A fraction from 0 up to, not including, 1. */
  fraction(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let t = this.#state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number {
    return least + Math.floor(this.fraction() * (most - least + 1));
  }

  /** One of `least`, `least + step`, ... up to `most`. */
  stepped(least: number, most: number, step: number): number {
    return least + step * this.whole(0, Math.floor((most - least) / step + 1e-9));
  }

  pick<T>(items: readonly T[]): T {
    if (items.length === 0) throw new RangeError('nothing to pick from');
    return items[this.whole(0, items.length - 1)];
  }

  chance(part: number): boolean {
    return this.fraction() < part;
  }

  /** The items in a random order. */
  shuffled<T>(items: readonly T[]): T[] {
    const mixed = [...items];
    for (let i = mixed.length - 1; i > 0; i--) {
      const j = this.whole(0, i);
      [mixed[i], mixed[j]] = [mixed[j], mixed[i]];
    }
    return mixed;
  }
}

/** FNV-1a of a text, 32 bits, stirred so that near texts start far apart. */
export function hash(text: string): number {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    h ^= text.charCodeAt(i);
    h = Math.imul(h, 0x01000193);
  }
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}
