import { REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { pressureOfHeight } from '../../physics/elevation.js';
import { jetResistance } from '../../physics/nozzle/orifice.js';
import type { DrillUnits } from '../problem.js';
import { SI_VALUE } from './si.js';

/** What the gauge before a jet of a bore and coefficient reads at a flow, by the law that the program's own layouts use. */
export function sharpOrificeReading(
  flow: number,
  bore: number,
  coefficient: number,
  units: DrillUnits,
): number {
  const si = SI_VALUE[units];
  const head = jetResistance(bore * si.bore, coefficient) * (flow * si.flow) ** 2;
  return pressureOfHeight(head, REFERENCE_WATER_DENSITY) / si.pressure;
}
