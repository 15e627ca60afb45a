import { power } from './link-laws.js';

/** How far from where it was drawn up the series serves, as a part of the number there: its next term is below 3e-13 of the whole. */
const REACH = 0.15;

/**
 * Powers of numbers above 0 that change little from one to the next, as a flow does when a solve closes in or a throttle is
 * moved: by the binomial series, to its eleventh power, about a number raised before. That takes a third of the time of a
 * logarithm and its inverse.
 */
export class PowerSeries {
  private readonly exponent: number;
  /** Its coefficients from the second power on; the first two are 1 and the exponent. */
  private readonly coefficient: readonly number[];
  /** One over the number that the series is about, and that number raised. */
  private inverse = 0;
  private raised = 0;

  constructor(exponent: number) {
    this.exponent = exponent;
    const coefficient = [exponent];
    for (let k = 2; k <= 11; k++) coefficient.push((coefficient[k - 2] * (exponent - k + 1)) / k);
    this.coefficient = coefficient.slice(1);
  }

  raise(base: number): number {
    const off = base * this.inverse - 1;
    if (!(Math.abs(off) < REACH)) {
      this.inverse = 1 / base;
      this.raised = power(base, this.exponent);
      return this.raised;
    }
    const c = this.coefficient;
    const square = off * off;
    // Even and odd powers apart, so that the two chains of products run side by side.
    const even = c[0] + square * (c[2] + square * (c[4] + square * (c[6] + square * c[8])));
    const odd = c[1] + square * (c[3] + square * (c[5] + square * (c[7] + square * c[9])));
    return this.raised * (1 + off * (this.exponent + off * (even + off * odd)));
  }
}
