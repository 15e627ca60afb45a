import { type CurvePoint, ExtendedCurve, type HeadAtFlow, orderedPoints } from './curve.js';

/** Finds the x that makes the squares of (design x - observed) least. */
export type LeastSquares = (design: number[][], observed: number[]) => number[];

/**
 * Head curve of the second degree.
 *
 * Formula: H = a + b Q + c Q^2
 * Range: no flow to the last flow. With b above 0 it droops; with c above 0 it may turn up again: `droops` tells of both.
 * Errors: RangeError where a figure is no finite number or the flows are not 0 <= first < last.
 * Source: common practice, no source.
 */
export class QuadraticCurve extends ExtendedCurve {
  readonly a: number;
  readonly b: number;
  readonly c: number;

  constructor(a: number, b: number, c: number, firstFlow: number, lastFlow: number) {
    if (![a, b, c].every(Number.isFinite))
      throw new RangeError('a quadratic curve needs three finite numbers');
    if (!(firstFlow >= 0 && lastFlow > firstFlow && Number.isFinite(lastFlow))) {
      throw new RangeError(
        `flows of a curve must run from 0 or more upwards, not ${firstFlow} to ${lastFlow}`,
      );
    }
    super(firstFlow, lastFlow);
    this.a = a;
    this.b = b;
    this.c = c;
    this.extend();
  }

  protected within(flow: number, out: HeadAtFlow): void {
    out.head = this.a + flow * (this.b + flow * this.c);
    out.slope = this.b + 2 * this.c * flow;
  }
}

/**
 * The quadratic curve nearest to the points by least squares, with the solver that is handed in. Where the heads of the points fall
 * throughout, so does the curve: the nearest of those that do.
 *
 * Formula: least sum of (a + b Q + c Q^2 - H)^2; b = 0 where `linear` is false, or where points that fall would get a curve that rises
 * from shutoff; b = -2 c Q_last where they would get one that turns up before the last point
 * Range: three points or more (two without the linear part).
 * Errors: RangeError where points are too few or two flows are the same.
 * Source: common practice, no source.
 * @param points measured points [m3/s, m]
 * @param solve least-squares solver [function]
 * @param linear whether the curve has a part in Q [true or false]
 * @returns the curve [QuadraticCurve]
 * @example quadraticThrough([{ flow: 0, head: 9 }, { flow: 1, head: 8 }, { flow: 2, head: 5 }], leastSquares).c // => -1
 */
export function quadraticThrough(
  points: readonly CurvePoint[],
  solve: LeastSquares,
  linear = true,
): QuadraticCurve {
  const ordered = orderedPoints(points, linear ? 3 : 2);
  const last = ordered[ordered.length - 1].flow;
  const heads = ordered.map(({ head }) => head);
  // Flows as parts of the last one keep the columns of like size.
  const fit = (columns: (x: number) => number[]) =>
    solve(
      ordered.map(({ flow }) => columns(flow / last)),
      heads,
    );
  const curve = (a: number, b: number, c: number) =>
    new QuadraticCurve(a, b / last, c / (last * last), ordered[0].flow, last);

  const withoutLinear = () => {
    const [a, c] = fit((x) => [1, x * x]);
    return curve(a, 0, c);
  };
  if (!linear) return withoutLinear();
  const [a, b, c] = fit((x) => [1, x, x * x]);
  const falls = heads.every((head, i) => i === 0 || head < heads[i - 1]);
  if (falls && b > 0) return withoutLinear();
  if (falls && b + 2 * c > 0) {
    const [level, bend] = fit((x) => [1, x * x - 2 * x]);
    return curve(level, -2 * bend, bend);
  }
  return curve(a, b, c);
}

/** `quadraticThrough` with the program's own solver, which is loaded only when this is called. */
export async function fitQuadratic(points: readonly CurvePoint[], linear = true): Promise<QuadraticCurve> {
  const { leastSquares } = await import('./least-squares.js');
  return quadraticThrough(points, leastSquares, linear);
}
