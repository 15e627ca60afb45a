import { flowAtLoss, lossAtFlow } from '../assembly/laws.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { nozzleLaw } from '../assembly/outlet.js';
import { citation } from '../catalogue/citation.js';
import type { TypingTestOrifice } from '../catalogue/schema/typing.js';
import type { LinkLaw } from '../network/network.js';
import { velocityHead } from '../physics/velocity.js';
import type { TestOrifice } from './answer.js';
import type { Delivery, Drawn } from './delivery.js';
import { closeInBySquares } from './falling-root.js';
import { NoSteadyAnswer } from './no-steady-answer.js';
import { type Refusal, refusalOf, unsteady } from './refusal.js';

/** The search by what is drawn stops within this of the flow, m3/s, or this part of its square. */
const FLOW_FOUND = 1e-9;
const NEAR = 1e-9;

/** What the inspector reads, and the state that he reads it in; no state and no figures where there can be none. */
export interface OrificeReading {
  state?: OperatingPoint;
  /** What the gauge reads, Pa, and what flows, m3/s. */
  reading?: number;
  flow?: number;
  /** Over what the agency asks there, Pa. */
  margin?: number;
  refusal?: Refusal;
}

/**
 * Hangs the agency's test orifice on an end and predicts what the inspector reads there: the gauge in the tee upstream of
 * it, which reads static pressure.
 */
export function readTestOrifice(delivery: Delivery, orifice: TypingTestOrifice): OrificeReading {
  try {
    const { flow, state } = flowThrough(delivery, orifice);
    const refusal = refusalOf(state);
    if (refusal) return { state, refusal };
    const { tee_bore, passes } = orifice;
    const velocity = tee_bore === undefined ? 0 : velocityHead(flow, tee_bore);
    const reading = state.pressureOf(state.headOver(delivery.end.place) - velocity);
    return { state, reading, flow, margin: reading - passes };
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return { refusal: unsteady(error) };
    throw error;
  }
}

/** The reading as an answer tells it. */
export function orificeAnswer(orifice: TypingTestOrifice, read: OrificeReading): TestOrifice {
  const { bore, discharge_coefficient, passes, grades } = orifice;
  const { reading, flow, margin, refusal } = read;
  return {
    bore,
    dischargeCoefficient: discharge_coefficient,
    reading,
    flow,
    margin,
    grades: grades ?? [{ grade: 'pass', from: passes }],
    grade: reading === undefined ? undefined : gradeOf(orifice, reading),
    refusal,
    source: citation(orifice),
  };
}

/** The grade that a reading at a test orifice earns, predicted or read on the day. */
export function gradeOf({ grades, passes }: TypingTestOrifice, reading: number): string {
  return grades?.find(({ from }) => reading >= from)?.grade ?? (reading >= passes ? 'pass' : 'below');
}

function lawOf(delivery: Delivery, { bore, tee_bore, discharge_coefficient, kind }: TypingTestOrifice) {
  const tee = kind === 'sharp_orifice' ? { tee_bore } : {};
  return nozzleLaw({ kind, bore, discharge_coefficient, ...tee }, delivery.assembly.site);
}

/** What flows through the orifice, m3/s, and the state: with the orifice a part of the network, or if no way leads there, by what is drawn. */
function flowThrough(delivery: Delivery, orifice: TypingTestOrifice): Drawn {
  const law = lawOf(delivery, orifice);
  try {
    return delivery.through(law);
  } catch (error) {
    if (!(error instanceof NoSteadyAnswer)) throw error;
    return drawnThrough(delivery, law);
  }
}

/** The flow at which the end gives just what the orifice passes, closed in on from both sides: what it would pass falls with what is drawn. */
function drawnThrough(delivery: Delivery, law: LinkLaw): Drawn {
  const passedAt = (state: OperatingPoint) => {
    const passed = flowAtLoss(law, state.headOver(delivery.end.place));
    if (passed === undefined) throw new TypeError('a test orifice is a plain hole');
    return passed;
  };
  const at = (flow: number) => {
    const state = flow === 0 ? delivery.atRest() : delivery.at(flow);
    return { value: passedAt(state) ** 2 - flow ** 2, state };
  };
  const atLow = at(0);
  const high = passedAt(atLow.state);
  if (high <= 0) return { flow: 0, state: atLow.state };
  // Nothing passes more than what it would under the pressure of no flow.
  const atHigh = at(high);
  if (atHigh.value >= 0) return { flow: high, state: atHigh.state };
  const end = closeInBySquares(
    at,
    { low: 0, atLow, high, atHigh },
    FLOW_FOUND,
    ({ value }) => value < NEAR * high ** 2,
  );
  const { state } = end.atLow;
  if (
    state.headOver(delivery.end.place) - lossAtFlow(law, end.low) >
    state.headOver(delivery.end.place) / 100
  )
    throw new NoSteadyAnswer({
      where: [delivery.end.name],
      message: `at ${delivery.end.name} no flow through the test orifice is steady: the pressure there jumps past what it passes`,
      action: 'Look for a pump curve that rises with flow, or efficiencies that fall steeply.',
    });
  return { flow: end.low, state };
}
