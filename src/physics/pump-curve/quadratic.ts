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
 * The quadratic curve nearest to the points by least squares, with the solver that is handed in.
 *
 * Formula: least sum of (a + b Q + c Q^2 - H)^2; b = 0 where `linear` is false
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
  // Flows as parts of the last one keep the columns of like size.
  const design = ordered.map(({ flow }) => {
    const x = flow / last;
    return linear ? [1, x, x * x] : [1, x * x];
  });
  const found = solve(
    design,
    ordered.map(({ head }) => head),
  );
  const [a, b, c] = linear ? found : [found[0], 0, found[1]];
  return new QuadraticCurve(a, b / last, c / (last * last), ordered[0].flow, last);
}

/** `quadraticThrough` with the program's own solver, which is loaded only when this is called. */
export async function fitQuadratic(points: readonly CurvePoint[], linear = true): Promise<QuadraticCurve> {
  const { leastSquares } = await import('./least-squares.js');
  return quadraticThrough(points, leastSquares, linear);
}
