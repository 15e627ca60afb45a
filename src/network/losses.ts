import type { LossAtFlow, LossCurve, NetworkLink, SpeedAtFlow, SpeedLimit } from './network.js';

/**
 * Slope of a shut one-way link, m per m3/s: 1,000 m of head press 1e-10 m3/s (a drop a minute or so) past it. So a shut
 * check valve is a law like any other, rising without a break, and needs no state of its own.
 */
export const SHUT_SLOPE = 1e13;

/** Least slope used in the linearisation, m per m3/s; below it a step is shortened, never the answer changed. */
export const LEAST_SLOPE = 1e-3;

/**
 * What every link loses and how steeply, in arrays grouped by kind of law, so that the common quadratic law runs in a
 * loop of its own. Link numbers here are the grouped ones; `numberOf` and `linkOf` translate.
 */
export class LinkLosses {
  readonly count: number;
  readonly loss: Float64Array;
  readonly slope: Float64Array;
  /** Grouped number by the caller's link index, and back. */
  readonly numberOf: Int32Array;
  readonly linkOf: Int32Array;
  readonly oneWay: Uint8Array;
  readonly speed: Float64Array;
  private readonly opensAt: Float64Array;
  private readonly resistance: Float64Array;
  private readonly linearBelow: Float64Array;
  private readonly exponent: Float64Array;
  private readonly minor: Float64Array;
  private readonly curves: (LossCurve | undefined)[];
  private readonly limits: (SpeedLimit | undefined)[];
  private readonly powerFrom: number;
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
    this.slope = new Float64Array(count);
    this.oneWay = new Uint8Array(count);
    this.speed = new Float64Array(count);
    this.opensAt = new Float64Array(count);
    this.resistance = new Float64Array(count);
    this.linearBelow = new Float64Array(count);
    this.exponent = new Float64Array(count);
    this.minor = new Float64Array(count);
    this.curves = new Array<LossCurve | undefined>(count).fill(undefined);
    this.limits = new Array<SpeedLimit | undefined>(count).fill(undefined);
    let powerFrom = count;
    let curveFrom = count;
    for (let i = count - 1; i >= 0; i--) {
      const { law, oneWay, opensAt } = links[order[i]];
      this.opensAt[i] = opensAt ?? 0;
      this.oneWay[i] = oneWay ? 1 : 0;
      if (law.kind === 'curve') {
        curveFrom = i;
        powerFrom = i;
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
    this.powerFrom = Math.min(powerFrom, curveFrom);
    this.curveFrom = curveFrom;
  }

  isPump(number: number): boolean {
    return this.speed[number] > 0;
  }

  setResistance(number: number, resistance: number): void {
    if (number >= this.powerFrom) throw new TypeError('only a quadratic link has one resistance to set');
    this.resistance[number] = resistance;
  }

  /** Fills `loss` and `slope` at the flows. */
  evaluate(flow: Float64Array): void {
    const { loss, slope, oneWay, opensAt, resistance, linearBelow } = this;
    for (let i = 0; i < this.powerFrom; i++) {
      const q = flow[i];
      const size = q < 0 ? -q : q;
      if (q < 0 && oneWay[i] === 1) {
        loss[i] = opensAt[i] + SHUT_SLOPE * q;
        slope[i] = SHUT_SLOPE;
        continue;
      }
      const linear = linearBelow[i];
      const r = resistance[i] * (size < linear ? linear : size);
      loss[i] = r * q;
      const steep = size < linear ? r : r + r;
      slope[i] = steep < LEAST_SLOPE ? LEAST_SLOPE : steep;
    }
    for (let i = this.powerFrom; i < this.count; i++) {
      if (flow[i] < 0 && oneWay[i] === 1) {
        loss[i] = opensAt[i] + SHUT_SLOPE * flow[i];
        slope[i] = SHUT_SLOPE;
      } else if (i < this.curveFrom) this.evaluatePower(i, flow[i]);
      else this.evaluateCurve(i, flow[i]);
    }
  }

  /** Loss of one link at a flow, with its slope in `slope`; used where a single law is wanted. */
  evaluateOne(number: number, flow: number): number {
    if (flow < 0 && this.oneWay[number] === 1) {
      this.slope[number] = SHUT_SLOPE;
      return this.opensAt[number] + SHUT_SLOPE * flow;
    }
    if (number >= this.curveFrom) this.evaluateCurve(number, flow);
    else this.evaluatePower(number, flow);
    return this.loss[number];
  }

  private evaluatePower(i: number, flow: number): void {
    const size = Math.abs(flow);
    const n = this.exponent[i] || 2;
    const linear = this.linearBelow[i];
    const effective = size < linear ? linear : size;
    const major = this.resistance[i] * (n === 2 ? effective : effective ** (n - 1));
    const minor = this.minor[i] * effective;
    this.loss[i] = (major + minor) * flow;
    const steep = size < linear ? major + minor : n * major + 2 * minor;
    this.slope[i] = steep < LEAST_SLOPE ? LEAST_SLOPE : steep;
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
    this.slope[i] = Math.abs(steep) >= LEAST_SLOPE ? steep : steep < 0 ? -LEAST_SLOPE : LEAST_SLOPE;
  }
}
