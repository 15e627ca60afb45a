import type { BrakePower } from './brake-power.js';

/** A stretch of a pump's flows at rated speed where an engine at the end of its power has no steady hold on it. */
export interface UnsteadyStretch {
  /** m3/s at rated speed */
  from: number;
  to: number;
  /** The most power that the pump takes in it at rated speed, W: an engine that has as much is not at its end there. */
  mostPower: number;
}

export interface UnsteadyStretches {
  /** More opening slows the engine so much that less flows: several speeds balance at one flow. */
  folds: readonly UnsteadyStretch[];
  /** Those, and where more opening speeds the engine up so much that head rises: several flows at one head. */
  all: readonly UnsteadyStretch[];
}

/** Parts of the way from one row of efficiency to the next that are looked at. */
const PARTS = 16;

/**
 * Where on its curve a pump whose engine gives all that it has does not lose head and gain flow as it is opened.
 *
 * Formula: at flow x at rated speed the engine holds s = (P_left / P(x))^(1/n), so that Q = s x and H = s^2 h(x); Q falls as x grows
 * where x P'/P > n, and H rises where h' > (2/n) h P'/P
 * Range: from no flow to the last row of efficiency; beyond it the power is taken as level, and both do as they should.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33; the two conditions follow by differentiation.
 * @param power power of the pump at rated speed [W]
 * @param exponent 3 for an engine of constant power, 2 for one of flat torque [1]
 * @returns the stretches, by rising flow [m3/s]
 * @example unsteadyStretches(new BrakePower(new MonotoneCurve([{ flow: 0, head: 9 }, { flow: 3, head: 4 }]), [[1, 0.6], [2, 0.2]], 1000), 2).folds.length // => 1
 */
export function unsteadyStretches(power: BrakePower, exponent: number): UnsteadyStretches {
  const folds: UnsteadyStretch[] = [];
  const all: UnsteadyStretch[] = [];
  const at = { power: 0, slope: 0 };
  const head = { head: 0, slope: 0 };
  let before = 0;
  for (const row of power.rowFlows) {
    for (let part = 0; part < PARTS; part++) {
      const from = before + ((row - before) * part) / PARTS;
      const to = before + ((row - before) * (part + 1)) / PARTS;
      // Within the part, since the slope of power has a step at each row.
      let folded = false;
      let rising = false;
      let mostPower = 0;
      for (const place of [1e-6, 0.5, 1 - 1e-6]) {
        const x = from + (to - from) * place;
        power.evaluate(x, at);
        power.curve.evaluate(x, head);
        const steep = at.slope / at.power;
        folded ||= x * steep > exponent;
        rising ||= head.head > 0 && head.slope < 0 && head.slope > (2 / exponent) * head.head * steep;
        mostPower = Math.max(mostPower, at.power);
      }
      if (folded) addTo(folds, { from, to, mostPower });
      if (folded || rising) addTo(all, { from, to, mostPower });
    }
    before = row;
  }
  return { folds, all };
}

function addTo(stretches: UnsteadyStretch[], next: UnsteadyStretch): void {
  const last = stretches.at(-1);
  if (last === undefined || last.to < next.from) stretches.push(next);
  else {
    last.to = next.to;
    last.mostPower = Math.max(last.mostPower, next.mostPower);
  }
}
