import type { LossAtFlow, LossCurve, NetworkLink, SpeedAtFlow, SpeedLimit } from './network.js';

/**
 * Slope of a shut one-way link, m per m3/s: 1,000 m of head press 1e-9 m3/s (a drop every few seconds) past it. So a shut
 * check valve is a law like any other, rising without a break, and needs no state of its own.
 */
export const SHUT_SLOPE = 1e12;

/** A one-way link counts as shut from this far backwards, m3/s, so that rounding about nothing does not shut and open it. */
export const DEAD = 3e-10;

/** Least slope used in the linearisation, m per m3/s; below it a step is shortened, never the answer changed. */
export const LEAST_SLOPE = 1e-3;

/**
 * The same for a pump, whose curve may lie level at no flow and falls steeply behind it: with a slope much nearer nothing the
 * rounding of a head throws the flow of a dead-headed pump to and fro across that kink without end.
 */
const LEAST_PUMP_SLOPE = 1;

/**
 * What every link loses and how steeply, in arrays grouped by kind of law, so that the common quadratic law runs in a
 * loop of its own. Link numbers here are the grouped ones; `numberOf` and `linkOf` translate.
 */
export class LinkLosses {
  readonly count: number;
  /** m */
  readonly loss: Float64Array;
  /** One over d(loss)/d(flow), m3/s per m. */
  readonly conductance: Float64Array;
  /** Grouped number by the caller's link index, and back. */
  readonly numberOf: Int32Array;
  readonly linkOf: Int32Array;
  readonly oneWay: Uint8Array;
  /** Numbers of the one-way links. */
  readonly oneWays: readonly number[];
  readonly speed: Float64Array;
  readonly resistance: Float64Array;
  readonly linearBelow: Float64Array;
  private readonly exponent: Float64Array;
  private readonly minor: Float64Array;
  private readonly curves: (LossCurve | undefined)[];
  private readonly limits: (SpeedLimit | undefined)[];
  /** Numbers below this are quadratic; from `curveFrom` they are curves. */
  readonly powerFrom: number;
  readonly curveFrom: number;
  private readonly at: LossAtFlow = { loss: 0, slope: 0 };
  private readonly held: SpeedAtFlow = { speed: 0, slope: 0 };

  /** `rank` orders links of one kind, so that those near each other in the elimination lie near in memory. */
  constructor(links: readonly NetworkLink[], rank: (link: NetworkLink) => number) {
    const kinds = { resistance: 0, power: 1, curve: 2 };
    const ranks = links.map(rank);
    const order = links
      .map((_, index) => index)
      .sort((a, b) => kinds[links[a].law.kind] - kinds[links[b].law.kind] || ranks[a] - ranks[b] || a - b);
    const count = links.length;
    this.count = count;
    this.linkOf = Int32Array.from(order);
    this.numberOf = new Int32Array(count);
    for (let i = 0; i < count; i++) this.numberOf[order[i]] = i;
    this.loss = new Float64Array(count);
    this.conductance = new Float64Array(count);
    this.oneWay = new Uint8Array(count);
    this.speed = new Float64Array(count);
    this.resistance = new Float64Array(count);
    this.linearBelow = new Float64Array(count);
    this.exponent = new Float64Array(count);
    this.minor = new Float64Array(count);
    this.curves = new Array<LossCurve | undefined>(count).fill(undefined);
    this.limits = new Array<SpeedLimit | undefined>(count).fill(undefined);
    let powerFrom = count;
    let curveFrom = count;
    for (let i = count - 1; i >= 0; i--) {
      const { law, oneWay } = links[order[i]];
      this.oneWay[i] = oneWay ? 1 : 0;
      if (law.kind === 'curve') {
        curveFrom = i;
        this.curves[i] = law.curve;
        this.speed[i] = law.speed ?? 0;
        this.limits[i] = law.limit;
      } else {
        this.resistance[i] = law.resistance;
        this.linearBelow[i] = law.linearBelow;
        if (law.kind === 'power') {
          powerFrom = i;
          this.exponent[i] = law.exponent;
          this.minor[i] = law.minor;
        }
      }
    }
    this.oneWays = order.flatMap((link, number) => (links[link].oneWay ? [number] : []));
    this.powerFrom = Math.min(powerFrom, curveFrom);
    this.curveFrom = curveFrom;
  }

  /**
   * Whether a stretch of falling loss is taken as if it rose as steeply: every step then goes downhill on the content, and ends
   * where the pumps run stably, more slowly than by the slope that it has.
   */
  upright = false;

  isPump(number: number): boolean {
    return this.speed[number] > 0;
  }

  setResistance(number: number, resistance: number): void {
    if (number >= this.powerFrom) throw new TypeError('only a quadratic link has one resistance to set');
    this.resistance[number] = resistance;
  }

  /** Fills `loss` and `conductance` at the flows. */
  evaluate(flow: Float64Array): void {
    for (let i = 0; i < this.count; i++) this.evaluateAt(i, flow[i]);
  }

  /** Fills the loss and the conductance of one link at a flow. */
  evaluateAt(number: number, flow: number): void {
    if (this.oneWay[number] === 1 && flow < -DEAD) {
      // What the law loses at no flow holds it shut: a pump's head, or the spring of a relief valve.
      this.evaluateOpen(number, 0);
      this.loss[number] += SHUT_SLOPE * (flow + DEAD);
      this.conductance[number] = 1 / SHUT_SLOPE;
    } else this.evaluateOpen(number, flow);
  }

  private evaluateOpen(number: number, flow: number): void {
    if (number >= this.curveFrom) this.evaluateCurve(number, flow);
    else if (number >= this.powerFrom) this.evaluatePower(number, flow);
    else {
      const size = Math.abs(flow);
      const linear = this.linearBelow[number];
      const r = this.resistance[number] * Math.max(size, linear);
      this.loss[number] = r * flow;
      this.conductance[number] = 1 / Math.max(size < linear ? r : r + r, LEAST_SLOPE);
    }
  }

  private evaluatePower(i: number, flow: number): void {
    const size = Math.abs(flow);
    const n = this.exponent[i];
    const linear = this.linearBelow[i];
    const effective = Math.max(size, linear);
    const major = this.resistance[i] * effective ** (n - 1);
    const minor = this.minor[i] * effective;
    this.loss[i] = (major + minor) * flow;
    this.conductance[i] = 1 / Math.max(size < linear ? major + minor : n * major + 2 * minor, LEAST_SLOPE);
  }

  private evaluateCurve(i: number, flow: number): void {
    const { at, held } = this;
    held.speed = this.speed[i] || 1;
    held.slope = 0;
    this.limits[i]?.evaluate(flow, held.speed, held);
    const { speed } = held;
    (this.curves[i] as LossCurve).evaluate(flow / speed, at);
    this.loss[i] = speed * speed * at.loss;
    const steep = speed * at.slope + held.slope * (2 * speed * at.loss - flow * at.slope);
    // A drooping pump curve has a stretch of falling loss: the slope keeps its sign there and stays off zero.
    const least = this.isPump(i) ? LEAST_PUMP_SLOPE : LEAST_SLOPE;
    const size = Math.max(Math.abs(steep), least);
    const kept = steep < 0 && !this.upright ? -size : size;
    this.conductance[i] = 1 / kept;
  }
}
