export interface Bracket<T> {
  low: number;
  atLow: T;
  high: number;
  atHigh: T;
}

/** The same for what falls nearly straight with the square of `x`, as heads fall with flows, and so is found in fewer steps. */
export function closeInBySquares<T extends { value: number }>(
  evaluate: (x: number) => T,
  { low, atLow, high, atHigh }: Bracket<T>,
  width: number,
  found: (at: T) => boolean,
): Bracket<T> {
  const squares = { low: low * low, atLow, high: high * high, atHigh };
  const end = closeIn((square) => evaluate(Math.sqrt(square)), squares, 2 * high * width, found);
  return { ...end, low: Math.sqrt(end.low), high: Math.sqrt(end.high) };
}

/**
 * Closes in on where a falling function crosses zero, by regula falsi with the Pegasus weight, from a bracket whose low
 * end is not below zero and whose high end is. `found` says when the low end is near enough; else it stops when the ends
 * lie within `width`. The low end of the answer is never past the crossing.
 */
export function closeIn<T extends { value: number }>(
  evaluate: (x: number) => T,
  bracket: Bracket<T>,
  width: number,
  found: (at: T) => boolean,
): Bracket<T> {
  let { low, atLow, high, atHigh } = bracket;
  let weightLow = 1;
  let weightHigh = 1;
  let lastSide = 0;
  for (let tries = 0; tries < 100 && high - low > width && !found(atLow); tries++) {
    const fromLow = atLow.value * weightLow;
    const fromHigh = atHigh.value * weightHigh;
    // A hair short of the crossing, so that the low end closes in too, and never so near an end that nothing is learnt.
    const guess = low + (fromLow * (high - low)) / (fromLow - fromHigh) - width / 4;
    const x = Math.min(Math.max(guess, low + width / 2), high - width / 2);
    const at = evaluate(x);
    // Pegasus: an end that stands still twice counts for less, so that both ends move.
    if (at.value >= 0) {
      weightHigh = lastSide > 0 ? (weightHigh * fromLow) / (fromLow + at.value) : 1;
      weightLow = 1;
      low = x;
      atLow = at;
      lastSide = 1;
    } else {
      weightLow = lastSide < 0 ? (weightLow * fromHigh) / (fromHigh + at.value) : 1;
      weightHigh = 1;
      high = x;
      atHigh = at;
      lastSide = -1;
    }
  }
  return { low, atLow, high, atHigh };
}
