import { type CurvePoint, ExtendedCurve, type HeadAtFlow, orderedPoints } from './curve.js';

/**
 * Head curve through every point, piecewise cubic, that never overshoots: between two points it stays between their heads.
 *
 * Formula: cubic Hermite pieces whose slopes at the points are Fritsch and Carlson's: zero where the points turn, else the weighted harmonic
 * mean of the slopes of the two neighbouring chords; at the ends the three-point slope, kept within three times the chord's.
 * Range: two points or more. Before the first point, where it is above no flow, the curve goes on straight with the slope that it has
 * there. It droops only where the points do.
 * Errors: RangeError where points are too few, two flows are the same or a figure is no finite number.
 * Source: Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980); interior slopes by Fritsch and Butland (1984); from memory.
 */
export class MonotoneCurve extends ExtendedCurve {
  readonly #flows: Float64Array;
  readonly #heads: Float64Array;
  readonly #slopes: Float64Array;

  constructor(points: readonly CurvePoint[]) {
    const ordered = orderedPoints(points, 2);
    super(ordered[0].flow, ordered[ordered.length - 1].flow);
    this.#flows = Float64Array.from(ordered, ({ flow }) => flow);
    this.#heads = Float64Array.from(ordered, ({ head }) => head);
    this.#slopes = pointSlopes(this.#flows, this.#heads);
    this.extend();
  }

  protected within(flow: number, out: HeadAtFlow): void {
    const flows = this.#flows;
    if (flow < flows[0]) {
      out.slope = this.#slopes[0];
      out.head = this.#heads[0] + out.slope * (flow - flows[0]);
      return;
    }
    let i = 0;
    while (i < flows.length - 2 && flow > flows[i + 1]) i++;
    const step = flows[i + 1] - flows[i];
    const t = (flow - flows[i]) / step;
    const rise = this.#heads[i + 1] - this.#heads[i];
    const from = this.#slopes[i] * step;
    const to = this.#slopes[i + 1] * step;
    const square = 3 * rise - 2 * from - to;
    const cube = from + to - 2 * rise;
    out.head = this.#heads[i] + t * (from + t * (square + t * cube));
    out.slope = (from + t * (2 * square + 3 * t * cube)) / step;
  }
}

function pointSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const last = x.length - 1;
  const step = Float64Array.from({ length: last }, (_, i) => x[i + 1] - x[i]);
  const chord = Float64Array.from({ length: last }, (_, i) => (y[i + 1] - y[i]) / step[i]);
  const slopes = new Float64Array(last + 1);
  if (last === 1) return slopes.fill(chord[0]);
  for (let i = 1; i < last; i++) {
    if (chord[i - 1] * chord[i] <= 0) continue;
    const before = 2 * step[i] + step[i - 1];
    const after = step[i] + 2 * step[i - 1];
    slopes[i] = (before + after) / (before / chord[i - 1] + after / chord[i]);
  }
  slopes[0] = endSlope(step[0], step[1], chord[0], chord[1]);
  slopes[last] = endSlope(step[last - 1], step[last - 2], chord[last - 1], chord[last - 2]);
  return slopes;
}

function endSlope(step: number, nextStep: number, chord: number, nextChord: number): number {
  const slope = ((2 * step + nextStep) * chord - step * nextChord) / (step + nextStep);
  if (slope * chord <= 0) return 0;
  return Math.abs(slope) > 3 * Math.abs(chord) ? 3 * chord : slope;
}
