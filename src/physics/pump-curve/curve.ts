/** Head and its slope by flow of a pump at rated speed. */
export interface HeadAtFlow {
  /** m of the water pumped */
  head: number;
  /** d(head)/d(flow), m/(m3/s); below 0 wherever head falls as flow grows. */
  slope: number;
}

/** A measured point of a pump at rated speed. */
export interface CurvePoint {
  /** m3/s */
  flow: number;
  /** m */
  head: number;
}

/**
 * A pump's head against flow at rated speed, continuous for every flow.
 *
 * Between no flow and the last point it is the curve itself. Two extensions are there for a solver to pass through and are no pump: beyond the
 * last point it falls along a straight line several times steeper (`isOffCurve` tells), and for flow backwards the
 * head rises above shutoff along a straight line. An answer found on either has to be named as such.
 */
export interface PumpCurve {
  /** Writes head and slope at a flow (m3/s) into `out`; allocates nothing. */
  evaluate(flow: number, out: HeadAtFlow): void;
  /** Flow of the first and of the last point that was measured, m3/s. */
  readonly firstFlow: number;
  readonly lastFlow: number;
  /** Head at no flow, m. */
  readonly shutoffHead: number;
  /** Whether a flow at rated speed lies beyond the last point. */
  isOffCurve(flow: number): boolean;
  /** Whether head rises with flow anywhere between no flow and the last point: two flows at one head. */
  droops(): boolean;
}

/** How many times steeper than the curve at its last point the line beyond it is. A numerical choice, no property of a pump. */
const OFF_CURVE_STEEPNESS = 4;
/** Parts of the range looked at for a rise of head. */
const DROOP_SAMPLES = 400;

/** What every shape of curve shares: the two straight extensions, and the test for droop. */
export abstract class ExtendedCurve implements PumpCurve {
  readonly firstFlow: number;
  readonly lastFlow: number;
  #shutoffHead = 0;
  #lastHead = 0;
  #beyondSlope = 0;
  #backwardSlope = 0;

  protected constructor(firstFlow: number, lastFlow: number) {
    this.firstFlow = firstFlow;
    this.lastFlow = lastFlow;
  }

  /** Writes head and slope for a flow from 0 to `lastFlow`. */
  protected abstract within(flow: number, out: HeadAtFlow): void;

  get shutoffHead(): number {
    return this.#shutoffHead;
  }

  /** To be called once, when `within` works: measures the ends that the straight lines start from. */
  protected extend(): void {
    const out = { head: 0, slope: 0 };
    this.within(0, out);
    this.#shutoffHead = out.head;
    this.within(this.lastFlow, out);
    this.#lastHead = out.head;
    const meanSlope = -Math.abs(this.#shutoffHead - out.head) / this.lastFlow;
    const floor = -Math.abs(this.#shutoffHead) / this.lastFlow / 100;
    this.#beyondSlope = OFF_CURVE_STEEPNESS * Math.min(out.slope, meanSlope, floor);
    this.#backwardSlope = Math.min(meanSlope, floor);
  }

  evaluate(flow: number, out: HeadAtFlow): void {
    if (flow <= 0) {
      out.head = this.#shutoffHead + this.#backwardSlope * flow;
      out.slope = this.#backwardSlope;
    } else if (flow > this.lastFlow) {
      out.head = this.#lastHead + this.#beyondSlope * (flow - this.lastFlow);
      out.slope = this.#beyondSlope;
    } else {
      this.within(flow, out);
    }
  }

  isOffCurve(flow: number): boolean {
    return flow > this.lastFlow * (1 + 1e-9);
  }

  droops(): boolean {
    const out = { head: 0, slope: 0 };
    const tolerance = 1e-9 * Math.abs(this.#shutoffHead);
    let before = this.#shutoffHead;
    for (let i = 1; i <= DROOP_SAMPLES; i++) {
      this.within((this.lastFlow * i) / DROOP_SAMPLES, out);
      if (out.head > before + tolerance) return true;
      before = out.head;
    }
    return false;
  }
}

/** Head (m) of a curve at one flow (m3/s), for reports and tests; a solver calls `evaluate` itself. */
export function headAt(curve: PumpCurve, flow: number): number {
  const out = { head: 0, slope: 0 };
  curve.evaluate(flow, out);
  return out.head;
}

/**
 * The points in order of flow, checked.
 *
 * Errors: RangeError where there are fewer than `least`, a figure is no finite number, a flow is below 0 or two flows are the same.
 */
export function orderedPoints(points: readonly CurvePoint[], least: number): CurvePoint[] {
  if (points.length < least) {
    throw new RangeError(`a curve of this shape needs at least ${least} points, not ${points.length}`);
  }
  const ordered = [...points].sort((a, b) => a.flow - b.flow);
  for (let i = 0; i < ordered.length; i++) {
    const { flow, head } = ordered[i];
    if (!Number.isFinite(flow) || !Number.isFinite(head) || flow < 0) {
      throw new RangeError(
        `a point of a pump curve must have a flow of 0 m3/s or more and a head, not ${flow}, ${head}`,
      );
    }
    if (i > 0 && flow === ordered[i - 1].flow) {
      throw new RangeError(`two points of a pump curve have the same flow, ${flow} m3/s`);
    }
  }
  return ordered;
}
