import type { FrictionLaw } from '../catalogue/schema/friction.js';
import type { LocalLoss } from '../catalogue/schema/local-loss.js';
import type { LinkLaw, LossAtFlow, LossCurve } from '../network/network.js';
import { fullyTurbulentFriction } from '../physics/crane-fitting.js';
import { GALLON_PER_MINUTE } from '../physics/customary.js';
import { DarcyWeisbachLoss } from '../physics/darcy-weisbach.js';
import { heightOfPressure } from '../physics/elevation.js';
import { fittingResistance } from '../physics/fitting.js';
import { flowCoefficientResistance } from '../physics/flow-coefficient.js';
import { LAMINAR_LIMIT } from '../physics/friction-factor.js';
import { HAZEN_WILLIAMS_EXPONENT, hazenWilliamsResistance } from '../physics/hazen-williams.js';
import { hoseHeadResistance } from '../physics/hose-coefficient.js';
import type { Site } from './site.js';

/**
 * A fixed allowance is charged in full from this flow up and in proportion below it, so that nothing is lost where
 * nothing flows and the law has no step in it. 1 gpm; a choice of this program.
 */
const ALLOWANCE_FROM = GALLON_PER_MINUTE;

/** Where no bore tells when flow turns laminar, the quadratic law goes straight below this, m3/s (0.016 gpm). */
const STRAIGHT_BELOW = 1e-6;

/** The flow in a bore at which it is laminar at the latest, m3/s: where a quadratic law must turn into a straight one. */
export function laminarFlow(bore: number, site: Site): number {
  return (LAMINAR_LIMIT * site.waterViscosity * Math.PI * bore) / 4;
}

export function quadratic(resistance: number, linearBelow = STRAIGHT_BELOW): LinkLaw {
  return { kind: 'resistance', resistance, linearBelow };
}

/** Friction along hose or pipe; `lines` alike lie side by side; `minor` (m per (m3/s)^2) is that of fittings in each. */
export function frictionLawOf(
  friction: FrictionLaw,
  run: { bore: number; length: number; lines: number; minor: number },
  site: Site,
): LinkLaw {
  const { bore, length, lines, minor } = run;
  const linearBelow = laminarFlow(bore, site) * lines;
  if (friction.law === 'coefficient') {
    const one = hoseHeadResistance(friction.coefficient, length) + minor;
    return quadratic(one / lines ** 2, linearBelow);
  }
  if (friction.law === 'hazen_williams') {
    return {
      kind: 'power',
      resistance:
        hazenWilliamsResistance(friction.hazenWilliams, bore, length) / lines ** HAZEN_WILLIAMS_EXPONENT,
      exponent: HAZEN_WILLIAMS_EXPONENT,
      minor: minor / lines ** 2,
      linearBelow: Math.min(linearBelow, STRAIGHT_BELOW * lines),
    };
  }
  const darcy = new DarcyWeisbachLoss({
    length,
    bore,
    roughness: friction.roughness,
    viscosity: site.waterViscosity,
  });
  return { kind: 'curve', curve: new PipeLoss(darcy, minor, lines) };
}

/** Darcy-Weisbach friction with the fittings of the run, for `lines` pipes side by side. */
class PipeLoss implements LossCurve {
  private readonly friction: LossCurve;
  private readonly minor: number;
  private readonly lines: number;

  constructor(friction: LossCurve, minor: number, lines: number) {
    this.friction = friction;
    this.minor = minor;
    this.lines = lines;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    const each = flow / this.lines;
    const size = Math.abs(each);
    this.friction.evaluate(each, out);
    out.loss += this.minor * size * each;
    out.slope = (out.slope + 2 * this.minor * size) / this.lines;
  }
}

/** The law of a fitting, valve or appliance in a bore (m); undefined where it loses nothing. */
export function localLossLaw(loss: LocalLoss, bore: number | undefined, site: Site): LinkLaw | undefined {
  switch (loss.law) {
    case 'fixed':
      return loss.loss > 0
        ? {
            kind: 'curve',
            curve: new Allowance([{ from: 0, head: heightOfPressure(loss.loss, site.waterDensity) }]),
          }
        : undefined;
    case 'bands': {
      const bands = loss.bands.map(({ from, loss: p }) => ({
        from,
        head: heightOfPressure(p, site.waterDensity),
      }));
      return bands.some(({ head }) => head > 0) ? { kind: 'curve', curve: new Allowance(bands) } : undefined;
    }
    default: {
      const resistance = localResistance(loss, bore);
      if (resistance === 0) return undefined;
      return quadratic(resistance, bore === undefined ? STRAIGHT_BELOW : laminarFlow(bore, site));
    }
  }
}

/** Resistance of a quadratic fitting, m per (m3/s)^2. */
export function localResistance(
  loss: Exclude<LocalLoss, { law: 'fixed' } | { law: 'bands' }>,
  bore: number | undefined,
): number {
  if (loss.law === 'flow_coefficient') return flowCoefficientResistance(loss.coefficient);
  const own = loss.insideDiameter ?? bore;
  const heads = loss.law === 'k' ? loss.k : loss.multiple;
  if (heads === 0) return 0;
  if (own === undefined) throw new TypeError('velocity heads are lost in a bore, and none is known here');
  return fittingResistance(loss.law === 'k' ? loss.k : loss.multiple * fullyTurbulentFriction(own), own);
}

/** Loss by bands of flow, each from its flow up; the way from one to the next is a ramp of ALLOWANCE_FROM. */
class Allowance implements LossCurve {
  private readonly bands: readonly { from: number; head: number }[];

  constructor(bands: readonly { from: number; head: number }[]) {
    this.bands = bands;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    const size = Math.abs(flow);
    let head = 0;
    let slope = 0;
    let before = 0;
    for (const band of this.bands) {
      if (size <= band.from) break;
      const part = (size - band.from) / ALLOWANCE_FROM;
      const step = band.head - before;
      head = before + step * Math.min(1, part);
      slope = part < 1 ? step / ALLOWANCE_FROM : 0;
      before = band.head;
    }
    out.loss = flow < 0 ? -head : head;
    out.slope = slope;
  }
}

/** Two losses one behind the other. */
export function sumOfLaws(first: LinkLaw | undefined, second: LinkLaw | undefined): LinkLaw | undefined {
  if (first === undefined) return second;
  if (second === undefined) return first;
  if (first.kind === 'resistance' && second.kind === 'resistance') {
    const linearBelow = Math.max(first.linearBelow, second.linearBelow);
    return quadratic(first.resistance + second.resistance, linearBelow);
  }
  return { kind: 'curve', curve: new SumOfLosses(curveOf(first), curveOf(second)) };
}

class SumOfLosses implements LossCurve {
  private readonly first: LossCurve;
  private readonly second: LossCurve;

  constructor(first: LossCurve, second: LossCurve) {
    this.first = first;
    this.second = second;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    this.first.evaluate(flow, out);
    const { loss, slope } = out;
    this.second.evaluate(flow, out);
    out.loss += loss;
    out.slope += slope;
  }
}

function curveOf(law: LinkLaw): LossCurve {
  if (law.kind === 'curve') return law.curve;
  const exponent = law.kind === 'power' ? law.exponent : 2;
  const minor = law.kind === 'power' ? law.minor : 0;
  return {
    evaluate(flow, out) {
      const size = Math.max(Math.abs(flow), law.linearBelow);
      const major = law.resistance * size ** (exponent - 1);
      out.loss = (major + minor * size) * flow;
      out.slope =
        Math.abs(flow) < law.linearBelow ? major + minor * size : exponent * major + 2 * minor * size;
    },
  };
}

/** Head lost by a law at a flow, m. */
export function lossAtFlow(law: LinkLaw, flow: number): number {
  const out = { loss: 0, slope: 0 };
  curveOf(law).evaluate(flow, out);
  return out.loss;
}

/** The flow at which a quadratic law loses a head, m3/s; undefined for any other law. */
export function flowAtLoss(law: LinkLaw, head: number): number | undefined {
  return law.kind === 'resistance' ? Math.sqrt(Math.max(0, head) / law.resistance) : undefined;
}
