/** A small seeded generator (mulberry32, public domain, from memory), so that a failing network can be made again from its seed. */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** Evenly spread over [0, 1). */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.next();
  }

  /** Evenly spread in the logarithm, for figures that span decades. */
  logBetween(low: number, high: number): number {
    return Math.exp(this.between(Math.log(low), Math.log(high)));
  }

  /** A whole number from `low` to `high`, both included. */
  integer(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  pick<T>(choices: readonly T[]): T {
    return choices[this.integer(0, choices.length - 1)] as T;
  }
}
