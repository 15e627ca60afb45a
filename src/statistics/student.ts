import { incompleteBeta } from './beta.js';

/** Halvings of the range in which a quantile lies. */
const HALVINGS = 80;
const FARTHEST = 1e6;

/**
 * Part of Student's distribution that is farther out than t, on both sides together.
 *
 * Formula: I_x(f / 2, 1/2), x = f / (f + t^2)
 * Range: one degree of freedom or more, any t.
 * Errors: RangeError where there is no degree of freedom.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.1 (from memory).
 * @param t deviation over its standard error [1]
 * @param freedom degrees of freedom [1]
 * @returns chance of a deviation as large or larger [1]
 * @example studentTails(2.015, 5) // => 0.1
 */
export function studentTails(t: number, freedom: number): number {
  if (!(freedom > 0))
    throw new RangeError(`Student's distribution needs a degree of freedom, not ${freedom}`);
  return incompleteBeta(freedom / (freedom + t * t), freedom / 2, 0.5);
}

/**
 * How many standard errors either side hold a part of Student's distribution.
 *
 * Formula: t with 1 - studentTails(t, f) = part, by halving
 * Range: part from 0 up to, not including, 1; one degree of freedom or more.
 * Errors: RangeError where there is no degree of freedom, or the part is out of range.
 * Source: as `studentTails`.
 * @param part part within, both sides together [1]
 * @param freedom degrees of freedom [1]
 * @returns standard errors [1]
 * @example studentWithin(0.9, 5) // => 2.01505
 */
export function studentWithin(part: number, freedom: number): number {
  if (!(part >= 0 && part < 1)) throw new RangeError(`a part from 0 to below 1 is wanted, not ${part}`);
  let low = 0;
  let high = FARTHEST;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (studentTails(middle, freedom) > 1 - part) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
