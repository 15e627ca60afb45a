import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Statement } from '../caution/caution.js';
import { type Impossibility, type ImpossibleCode, whyImpossible } from '../limits/impossible.js';
import type { NoSteadyAnswer } from './no-steady-answer.js';

/** Why no figure of a state is told, as a clause with its values. */
export interface Refusal extends Statement {
  code: ImpossibleCode | 'no_steady_state';
  /** The pump that it lies with, where it lies with one. */
  pump?: string;
}

/** What the gate says of a state; undefined where it stands. */
export function refusalOf(state: OperatingPoint): Refusal | undefined {
  const why = whyImpossible(state);
  return why && asRefusal(why, state);
}

function asRefusal({ code, at, value, limit, why, source }: Impossibility, state: OperatingPoint): Refusal {
  const pump = state.assembly.pumps.find(({ name }) => at === name || at === `the inlet of ${name}`)?.name;
  return { code, pump, template: why, values: { at, value, limit }, source };
}

/** What is said where the curves end before a flow. */
export function endOfCurve({ flow, pump }: { flow: number; pump: { name: string } }): Refusal {
  return {
    code: 'past_curve',
    pump: pump.name,
    template: '{pump} reaches the end of its curve when {flow} is drawn; more is not known of it',
    values: { pump: pump.name, flow: { value: flow, dimension: 'flow' } },
    source: 'points of the pump curve',
  };
}

/** What is said where the solver found no state. */
export function unsteady({ message }: NoSteadyAnswer): Refusal {
  return { code: 'no_steady_state', template: '{why}', values: { why: message } };
}
