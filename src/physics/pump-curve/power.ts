import { type CurvePoint, ExtendedCurve, type HeadAtFlow, orderedPoints } from './curve.js';

/** Below this part of the last flow a curve with C under 1 runs straight, since its slope at no flow has no bound. */
const STRAIGHT_BELOW = 1e-3;
const GREATEST_EXPONENT = 50;

/**
 * Head curve through exactly three points.
 *
 * Formula: H = A - B Q^C; A, B, C from the three points, C by bisection of (H1-H2)/(H1-H3) = (Q2^C - Q1^C)/(Q3^C - Q1^C)
 * Range: three points whose heads fall as flow grows. Never droops. Where C is below 1 the curve runs straight in the first
 * thousandth of its range.
 * Errors: RangeError where there are not three points, the heads do not fall, or no C from 0 to 50 fits.
 * Source: three-point head curve of EPANET 2.2, from memory.
 */
export class PowerCurve extends ExtendedCurve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly #straightBelow: number;
  readonly #straightSlope: number;

  constructor(points: readonly CurvePoint[]) {
    const [first, middle, last] = threePoints(points);
    super(first.flow, last.flow);
    // Flows as parts of the last one, so that no power of a small flow underflows.
    const x1 = first.flow / last.flow;
    const x2 = middle.flow / last.flow;
    this.c = exponentThrough((first.head - middle.head) / (first.head - last.head), x1, x2);
    const scaled = (first.head - last.head) / (1 - x1 ** this.c);
    this.b = scaled / last.flow ** this.c;
    this.a = last.head + scaled;
    this.#straightBelow = this.c < 1 ? STRAIGHT_BELOW * last.flow : 0;
    this.#straightSlope = this.c < 1 ? -this.b * this.#straightBelow ** (this.c - 1) : 0;
    this.extend();
  }

  protected within(flow: number, out: HeadAtFlow): void {
    if (flow < this.#straightBelow) {
      out.head = this.a + this.#straightSlope * flow;
      out.slope = this.#straightSlope;
      return;
    }
    const fall = flow === 0 ? 0 : this.b * flow ** this.c;
    out.head = this.a - fall;
    out.slope = flow === 0 ? (this.c === 1 ? -this.b : 0) : (-this.c * fall) / flow;
  }
}

/**
 * The three points that one design point stands for.
 *
 * Formula: H = (4/3) H1 - (H1/3) (Q/Q1)^2: shutoff at 4/3 of the head, no head at twice the flow
 * Range: flow and head above 0.
 * Errors: none; `PowerCurve` refuses points that do not fall.
 * Source: one-point head curve of EPANET 2.2, from memory; it gives the heads of its example network Net1.
 * @param point the design point [m3/s, m]
 * @returns three points for `PowerCurve` [m3/s, m]
 * @example onePointCurve({ flow: 3, head: 30 })[0].head // => 40
 */
export function onePointCurve(point: CurvePoint): CurvePoint[] {
  return [{ flow: 0, head: (4 / 3) * point.head }, point, { flow: 2 * point.flow, head: 0 }];
}

function threePoints(points: readonly CurvePoint[]): CurvePoint[] {
  const ordered = orderedPoints(points, 3);
  if (ordered.length !== 3) {
    throw new RangeError(`a power curve goes through exactly 3 points, not ${ordered.length}`);
  }
  if (!(ordered[0].head > ordered[1].head && ordered[1].head > ordered[2].head)) {
    throw new RangeError('the heads of a power curve must fall as flow grows');
  }
  return ordered;
}

function exponentThrough(ratio: number, x1: number, x2: number): number {
  const excess = (c: number) => (x2 ** c - x1 ** c) / (1 - x1 ** c) - ratio;
  let low = 1e-3;
  let high = GREATEST_EXPONENT;
  if (!(excess(low) >= 0 && excess(high) <= 0)) {
    throw new RangeError('no power curve H = A - B Q^C with C from 0 to 50 goes through these three points');
  }
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (excess(middle) >= 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
