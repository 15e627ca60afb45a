/** Of each engine the speed that it has the power for, over the speed that it has; undefined where the network has no state. */
export type Imbalance = readonly number[] | undefined;

/** Speeds are found to this part; where the network's own tolerance leaves no more, to the second. */
const FOUND = 1e-9;
const FOUND_NEARLY = 1e-6;
/** Steps at the most: those that come to an end take a dozen or two. */
const STEPS = 250;
/** The most that a step moves a speed, as a part. */
const LONGEST = 0.05;
/** Time that the first step covers, its longest, and how much longer or shorter each is than the one before. */
const FIRST_TIME = 4;
const LONGEST_TIME = 1e9;
const LENGTHENED = 4;
const SHORTENED = 0.5;
/** How far aside slopes are measured, as a part of a speed. */
const ASIDE = 1e-5;

/**
 * Engines that start at their governed speeds and are pulled down by what they lack of power, each up to its governed speed, until none
 * lacks or has to spare: d(ln s)/dt = ln(asked / s), followed by the implicit Euler rule in steps of time that grow as the
 * engines come to rest, so that the last are Newton's (pseudo-transient continuation; Kelley and Keyes, SIAM J. Numer. Anal. 35
 * (1998), from memory). So it ends where engines would, and not where the slightest change would make them run away.
 *
 * @param governed speeds that the governors hold where there is power
 * @param lacks what the engines lack at given speeds; called last with the speeds that are returned
 * @returns the speeds; undefined where `lacks` is once undefined or the speeds do not settle
 */
export function runDown(
  governed: readonly number[],
  lacks: (speeds: readonly number[]) => Imbalance,
): readonly number[] | undefined {
  /** What each engine is pulled by, in the logarithm of its speed; nothing where its governor holds it. */
  const pullAt = (speeds: readonly number[]): number[] | undefined =>
    lacks(speeds)?.map((ratio, i) => (speeds[i] >= governed[i] && ratio > 1 ? 0 : Math.log(ratio)));
  let speeds: readonly number[] = governed;
  let pull = pullAt(speeds);
  let time = FIRST_TIME;
  for (let step = 0; step < STEPS && pull !== undefined; step++) {
    const before = greatest(pull);
    const slopes = slopesOf(speeds, pull, pullAt);
    if (slopes === undefined) return undefined;
    if (before <= FOUND) return settles(slopes) ? lacks(speeds) && speeds : undefined;
    let by = implicitStep(pull, slopes, time);
    while (!leadsOn(by, pull)) {
      time *= SHORTENED;
      by = implicitStep(pull, slopes, time);
    }
    const next = speeds.map((speed, i) => Math.min(governed[i], speed * Math.exp(by[i])));
    const after = pullAt(next);
    if (after === undefined) return undefined;
    if (before <= FOUND_NEARLY && greatest(after) > before / 2)
      return settles(slopes) ? lacks(speeds) && speeds : undefined;
    // Where they are pulled back they went too far; where ever harder, they run away from a balance that they would not keep.
    if (dot(by, after) < 0) time *= SHORTENED;
    else time = Math.min(LONGEST_TIME, LENGTHENED * time);
    speeds = next;
    pull = after;
  }
  return undefined;
}

/** Whether a step is short and goes the way that the engines are pulled on the whole. */
function leadsOn(by: readonly number[], pull: readonly number[]): boolean {
  return greatest(by) <= LONGEST && dot(by, pull) > 0;
}

/** d(pull)/d(ln speed), a row for each pull, measured a little to the slower side. */
function slopesOf(
  speeds: readonly number[],
  pull: readonly number[],
  pullAt: (speeds: readonly number[]) => number[] | undefined,
): number[][] | undefined {
  const slopes = pull.map(() => pull.map(() => 0));
  for (let j = 0; j < pull.length; j++) {
    if (pull[j] === 0) continue;
    const aside = pullAt(speeds.map((speed, i) => (i === j ? speed * (1 - ASIDE) : speed)));
    if (aside === undefined) return undefined;
    for (let i = 0; i < pull.length; i++) if (pull[i] !== 0) slopes[i][j] = (aside[i] - pull[i]) / -ASIDE;
  }
  return slopes;
}

/** Solves (1/time - slopes) step = pull, by elimination with the largest pivot. */
function implicitStep(pull: readonly number[], slopes: readonly number[][], time: number): number[] {
  const rows = pull.map((one, i) => [...slopes[i].map((slope, j) => (i === j ? 1 / time : 0) - slope), one]);
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    for (let i = k + 1; i < size; i++)
      if (Math.abs(rows[i][k]) > Math.abs(rows[k][k])) [rows[k], rows[i]] = [rows[i], rows[k]];
    for (let i = 0; i < size; i++) {
      if (i === k) continue;
      const part = rows[i][k] / rows[k][k];
      for (let j = k; j <= size; j++) rows[i][j] -= part * rows[k][j];
    }
  }
  return rows.map((row, i) => row[size] / row[i]);
}

/** Whether engines that are a little off come back, whatever they weigh: of two that push each other, only if they do so weakly. */
function settles(slopes: readonly number[][]): boolean {
  const moving = slopes.flatMap((row, i) => (row[i] === 0 ? [] : [i]));
  if (moving.some((i) => slopes[i][i] > 0)) return false;
  if (moving.length !== 2) return true;
  const [i, j] = moving;
  return slopes[i][i] * slopes[j][j] > slopes[i][j] * slopes[j][i];
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, one, i) => sum + one * b[i], 0);

const greatest = (values: readonly number[]): number =>
  values.reduce((most, one) => Math.max(most, Math.abs(one)), 0);
