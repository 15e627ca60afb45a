import type { Caution } from './caution.js';
import { droopingCurve } from './drooping-curve.js';
import { enginePower } from './engine-power.js';
import { type Hazard, type HazardFacts, ranked } from './hazard.js';
import { hosePressure } from './hose-pressure.js';
import { inletVapour } from './inlet-vapour.js';
import { noCheckValve } from './no-check-valve.js';
import { offCurve } from './off-curve.js';
import { pumpPressure } from './pump-pressure.js';
import { pumpShutOut } from './pump-shut-out.js';
import { thinMargin } from './thin-margin.js';
import { unmeasuredShutoff } from './unmeasured-shutoff.js';

const HAZARDS: readonly Hazard[] = [
  pumpShutOut,
  pumpPressure,
  hosePressure,
  inletVapour,
  noCheckValve,
  droopingCurve,
  offCurve,
  enginePower,
  thinMargin,
  unmeasuredShutoff,
];

/** Every hazard of the facts, most dangerous first. */
export function cautionsOf(facts: HazardFacts): Caution[] {
  return ranked(HAZARDS.flatMap((hazard) => hazard(facts)));
}
