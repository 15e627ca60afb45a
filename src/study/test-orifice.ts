import { flowAtLoss } from '../assembly/laws.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { nozzleLaw } from '../assembly/outlet.js';
import { citation } from '../catalogue/citation.js';
import type { TypingTestOrifice } from '../catalogue/schema/typing.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import type { TestOrifice } from './answer.js';
import type { Delivery, Drawn } from './delivery.js';

/** Squares of flows are found to this part, which leaves the reading within 0.02 Pa. */
const FOUND = 1e-8;
const MOST_TRIES = 50;

/** What the inspector reads, and the state that he reads it in. */
export interface OrificeReading {
  answer: TestOrifice;
  state: OperatingPoint;
}

/**
 * Hangs the agency's test orifice on an end and predicts what the inspector reads there: the gauge in the tee upstream of
 * it, which reads static pressure.
 */
export function readTestOrifice(delivery: Delivery, orifice: TypingTestOrifice): OrificeReading {
  const { bore, tee_bore, discharge_coefficient, passes, grades } = orifice;
  const { site } = delivery.assembly;
  const { flow, state } = flowThrough(delivery, orifice);
  const velocity = tee_bore === undefined ? 0 : velocityHead(flow, tee_bore);
  const reading = state.totalPressure(delivery.end.place) - pressureOfHeight(velocity, site.waterDensity);
  const answer = {
    bore,
    dischargeCoefficient: discharge_coefficient,
    reading,
    flow,
    margin: reading - passes,
    grades: grades ?? [{ grade: 'pass', from: passes }],
    grade: grades?.find(({ from }) => reading >= from)?.grade ?? (reading >= passes ? 'pass' : 'below'),
    source: citation(orifice),
  };
  return { answer, state };
}

/** The flow, m3/s, at which the end gives just what the orifice passes, and the state there. */
function flowThrough(delivery: Delivery, orifice: TypingTestOrifice): Drawn {
  const { bore, tee_bore, discharge_coefficient, kind } = orifice;
  const tee = kind === 'sharp_orifice' ? { tee_bore } : {};
  const law = nozzleLaw({ kind, bore, discharge_coefficient, ...tee }, delivery.assembly.site);
  /** What the orifice would pass over what is drawn, by their squares: it falls nearly straight with the square drawn. */
  const over = ({ flow, state }: Drawn) => {
    const passed = flowAtLoss(law, state.headOver(delivery.end.place));
    if (passed === undefined) throw new TypeError('a test orifice is a plain hole');
    return passed ** 2 - flow ** 2;
  };
  let before = delivery.last ?? { flow: 0, state: delivery.atRest() };
  let overBefore = over(before);
  // Of the pressure that an orifice takes nearly all is its own, so that what it would pass now is a first guess.
  let square = before.flow ** 2 + overBefore / 2;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    const flow = Math.sqrt(Math.max(0, square));
    const drawn = flow === 0 ? { flow, state: delivery.atRest() } : delivery.drawn(flow);
    const overNow = over(drawn);
    if (Math.abs(overNow) <= FOUND * square || (flow === 0 && overNow <= 0)) return drawn;
    const fall = (overBefore - overNow) / (square - before.flow ** 2);
    before = drawn;
    overBefore = overNow;
    square += overNow / (fall > 0 ? Math.max(fall, 1) : 1);
  }
  return before;
}
