import type { LinkLaw, LossAtFlow, LossCurve, NetworkLink, SpeedAtFlow, SpeedLimit } from './network.js';

/** A power of a number above 0: a third of what V8 takes for `**`, and as exact to a few units in the last place. */
export function power(base: number, exponent: number): number {
  return Math.exp(exponent * Math.log(base));
}

/** The laws of a network's links, evaluated one link at a time, with what may be set between solves: speeds and resistances. */
export class LinkLaws {
  readonly links: readonly NetworkLink[];
  /** By link: of a pump, as a fraction of the speed of its curve; 0 for all else. */
  readonly speed: Float64Array;
  /** By link: m per (m3/s)^2 of a quadratic law, m per (m3/s)^n of a power law. */
  readonly resistance: Float64Array;
  /** What the last evaluation found: m, and m per m3/s as the law has it, which may be 0 and, where a pump's curve droops, less. */
  loss = 0;
  slope = 0;
  // Looked up by number, as links come in many shapes and a look at the law of each costs more than to evaluate it.
  private readonly curves: (LossCurve | undefined)[];
  private readonly limits: (SpeedLimit | undefined)[];
  private readonly at: LossAtFlow = { loss: 0, slope: 0 };
  private readonly held: SpeedAtFlow = { speed: 0, slope: 0 };

  constructor(links: readonly NetworkLink[]) {
    this.links = links;
    this.speed = new Float64Array(links.length);
    this.resistance = new Float64Array(links.length);
    this.curves = new Array<LossCurve | undefined>(links.length).fill(undefined);
    this.limits = new Array<SpeedLimit | undefined>(links.length).fill(undefined);
    for (let l = 0; l < links.length; l++) {
      const { law } = links[l];
      if (law.kind === 'curve') {
        this.speed[l] = law.speed ?? 0;
        this.curves[l] = law.curve;
        this.limits[l] = law.limit;
      } else this.resistance[l] = law.resistance;
    }
  }

  isPump(link: number): boolean {
    return this.speed[link] > 0;
  }

  /** Finds the loss and slope of a link at a flow, m3/s; of a one-way link as if it stood open. */
  evaluate(link: number, flow: number): void {
    const curve = this.curves[link];
    if (curve !== undefined) {
      this.evaluateCurve(link, curve, flow);
      return;
    }
    const law = this.links[link].law as Exclude<LinkLaw, { kind: 'curve' }>;
    const size = Math.abs(flow);
    const linear = law.linearBelow;
    const effective = size > linear ? size : linear;
    if (law.kind === 'resistance') {
      const r = this.resistance[link] * effective;
      this.loss = r * flow;
      this.slope = size < linear ? r : r + r;
    } else {
      const n = law.exponent;
      const major = this.resistance[link] * power(effective, n - 1);
      const minor = law.minor * effective;
      this.loss = (major + minor) * flow;
      this.slope = size < linear ? major + minor : n * major + 2 * minor;
    }
  }

  /** A pump's curve is carried to its speed by the affinity laws, whether that is set or held lower by its limit. */
  private evaluateCurve(link: number, curve: LossCurve, flow: number): void {
    const { at, held } = this;
    const set = this.speed[link] || 1;
    const limit = this.limits[link];
    if (limit === undefined) {
      curve.evaluate(flow / set, at);
      this.loss = set * set * at.loss;
      this.slope = set * at.slope;
      return;
    }
    held.speed = set;
    held.slope = 0;
    limit.evaluate(flow, set, held);
    const { speed } = held;
    curve.evaluate(flow / speed, at);
    this.loss = speed * speed * at.loss;
    this.slope = speed * at.slope + held.slope * (2 * speed * at.loss - flow * at.slope);
  }
}
