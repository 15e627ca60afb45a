import { flowAtLoss, lossAtFlow } from '../assembly/laws.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { nozzleLaw } from '../assembly/outlet.js';
import { boilsAtInlet } from '../assembly/suction-head.js';
import { citation } from '../catalogue/citation.js';
import type { TypingTestOrifice } from '../catalogue/schema/typing.js';
import { heightOfPressure } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import type { TestOrifice } from './answer.js';
import type { Delivery, Drawn } from './delivery.js';
import { NoSteadyAnswer } from './no-steady-answer.js';

/** From a square of a flow this near, as a part of it, the last step is straight to a part in a thousand million. */
const NEAR = 1e-5;
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
  const { flow, state, head } = flowThrough(delivery, orifice);
  const velocity = tee_bore === undefined ? 0 : velocityHead(flow, tee_bore);
  const reading = state.pressureOf(head - velocity);
  const boiling = state.assembly.pumps.find((pump) => boilsAtInlet(state, pump));
  const answer = {
    bore,
    dischargeCoefficient: discharge_coefficient,
    reading,
    flow,
    margin: reading - passes,
    grades: grades ?? [{ grade: 'pass', from: passes }],
    grade: grades?.find(({ from }) => reading >= from)?.grade ?? (reading >= passes ? 'pass' : 'below'),
    source: citation(orifice),
    ...(boiling && { boilsAt: boiling.name }),
  };
  return { answer, state };
}

/** Whether an end gives what an orifice passes at the reading that is asked of it, by one state: what it gives falls with what is drawn. */
export function passesTestOrifice(delivery: Delivery, orifice: TypingTestOrifice): boolean {
  const { tee_bore, passes } = orifice;
  const { waterDensity } = delivery.assembly.site;
  const law = lawOf(delivery, orifice);
  const velocity = tee_bore === undefined ? 0 : velocityHead(1, tee_bore);
  // Loss and velocity head both go with the square of the flow.
  const flow = Math.sqrt(heightOfPressure(passes, waterDensity) / (lossAtFlow(law, 1) - velocity));
  return delivery.at(flow).headOver(delivery.end.place) >= lossAtFlow(law, flow);
}

function lawOf(delivery: Delivery, { bore, tee_bore, discharge_coefficient, kind }: TypingTestOrifice) {
  const tee = kind === 'sharp_orifice' ? { tee_bore } : {};
  return nozzleLaw({ kind, bore, discharge_coefficient, ...tee }, delivery.assembly.site);
}

/** The flow, m3/s, at which the end gives just what the orifice passes, its head there, m, and a state next to it. */
function flowThrough(delivery: Delivery, orifice: TypingTestOrifice): Drawn & { head: number } {
  const law = lawOf(delivery, orifice);
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
    if (flow === 0 && overNow <= 0) return { ...drawn, head: drawn.state.headOver(delivery.end.place) };
    const fall = (overBefore - overNow) / (square - before.flow ** 2);
    const next = square + overNow / (fall > 1 ? fall : 1);
    if (Math.abs(overNow) <= NEAR * square) {
      const through = Math.sqrt(next);
      return { state: drawn.state, flow: through, head: lossAtFlow(law, through) };
    }
    before = drawn;
    overBefore = overNow;
    square = next;
  }
  throw new NoSteadyAnswer({
    where: [delivery.end.name],
    message: `what the test orifice passes at ${delivery.end.name} was not found`,
    action: 'Look for a pump curve that rises with flow, or a figure far out of the ordinary.',
    detail: `not found in ${MOST_TRIES} tries`,
  });
}
