import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Caution } from '../caution/caution.js';
import { cautionsOf } from '../caution/cautions.js';
import { type HazardFacts, ranked } from '../caution/hazard.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
import { ifSteady } from './if-steady.js';

/** Hazards that say of a state why it cannot be; of such a state nothing else is told, as no figure of it holds. */
const SAYS_SO: ReadonlySet<string> = new Set([
  'pump_off_curve',
  'suction_short',
  'inlet_below_vapour',
  'hose_below_air',
  'intake_below_floor',
]);

/** Cautions of the states that pass the gate, and of those that do not only what says why. */
export function gatedCautions(facts: HazardFacts): Caution[] {
  const { layout, cases } = facts;
  const stands = (one: HazardFacts['cases'][number]) => whyImpossible(one.point) === undefined;
  const possible = cases.filter(stands);
  if (possible.length === cases.length) return cautionsOf(facts);
  // What rests on the lay as it stands is not told where that cannot be.
  const laid = cases.find(({ kind }) => kind === 'laid');
  const without = laid && !stands(laid) ? { heat: undefined, control: undefined, tank: undefined } : {};
  const told = cautionsOf({ ...facts, ...without, cases: possible });
  const why = cautionsOf({ layout, cases: cases.filter((one) => !stands(one)) });
  return ranked([...told, ...why.filter(({ code }) => SAYS_SO.has(code))]);
}

/** A state that was looked for: found and able to be, found and not, or none at all. */
export interface Gated {
  point: OperatingPoint;
  why?: Impossibility;
}

/** A solved state with why it cannot be, if it cannot; undefined where nothing flows steadily. */
export function gated(solve: () => OperatingPoint): Gated | undefined {
  const point = ifSteady(solve);
  return point && { point, why: whyImpossible(point) };
}
