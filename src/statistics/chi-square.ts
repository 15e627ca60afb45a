import { logGamma } from './beta.js';

const MOST_TERMS = 500;
const ENOUGH = 1e-14;

/**
 * Chance that a sum of squared errors is as large or larger, were each of deviation 1.
 *
 * Formula: 1 - P(f/2, x/2), the regularised incomplete gamma function by its series, or its continued fraction for large x
 * Range: x of 0 or more, one degree of freedom or more.
 * Errors: RangeError where there is no degree of freedom.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.4.19, 6.5.29 and 6.5.31 (from memory).
 * @param x sum of squares [1]
 * @param freedom degrees of freedom [1]
 * @returns chance [1]
 * @example chiSquareTail(3.841, 1) // => 0.05
 */
export function chiSquareTail(x: number, freedom: number): number {
  if (!(freedom > 0)) throw new RangeError(`a sum of squares needs a degree of freedom, not ${freedom}`);
  if (x <= 0) return 1;
  const a = freedom / 2;
  const half = x / 2;
  const scale = Math.exp(a * Math.log(half) - half - logGamma(a));
  if (half < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && term > sum * ENOUGH; n++) {
      term *= half / (a + n);
      sum += term;
    }
    return Math.max(0, 1 - scale * sum);
  }
  let b = half + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let fraction = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const part = -n * (n - a);
    b += 2;
    d = 1 / (part * d + b);
    c = b + part / c;
    fraction *= d * c;
    if (Math.abs(d * c - 1) < ENOUGH) break;
  }
  return scale * fraction;
}
