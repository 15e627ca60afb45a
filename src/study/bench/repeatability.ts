import type { Repeatability } from './curve-answer.js';

/** Flows this near, as parts of the largest, were meant to be the same. */
const SAME_FLOW = 0.015;
/** Two standard deviations of a difference, 1.96 times the square root of 2, rounded as the standard does. */
const LIMIT = 2.8;

/**
 * How well readings of one flow repeat: what two of them differ by at most, 95 times in 100.
 *
 * Formula: r = 2.8 s, s^2 the variance of the readings about the mean of their flow, pooled
 * Range: undefined where no flow was read twice.
 * Source: repeatability limit, ISO 5725-6 (from memory).
 * @param readings flow, and how far the reading lies over the fitted curve, so that a flow set a little otherwise does not count
 */
export function repeatabilityOf(
  readings: readonly { flow: number; over: number }[],
): Repeatability | undefined {
  const last = Math.max(...readings.map(({ flow }) => flow));
  const ordered = [...readings].sort((one, other) => one.flow - other.flow);
  const groups: { flow: number; over: number }[][] = [];
  for (const one of ordered) {
    const group = groups[groups.length - 1];
    if (group && one.flow - group[0].flow <= SAME_FLOW * last) group.push(one);
    else groups.push([one]);
  }
  const repeated = groups.filter((group) => group.length > 1);
  const freedom = repeated.reduce((sum, group) => sum + group.length - 1, 0);
  if (freedom === 0) return undefined;
  const squares = repeated.reduce((sum, group) => {
    const mean = group.reduce((total, { over }) => total + over, 0) / group.length;
    return sum + group.reduce((total, { over }) => total + (over - mean) ** 2, 0);
  }, 0);
  return { limit: LIMIT * Math.sqrt(squares / freedom), flows: repeated.length };
}
