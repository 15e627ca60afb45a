import { citation } from '../catalogue/citation.js';
import { PSI } from '../physics/customary.js';
import { heightOfPressure } from '../physics/elevation.js';
import type { AssembledNozzle } from './assembly.js';
import { flowAtLoss } from './laws.js';
import { nozzleLaw } from './outlet.js';
import type { Site } from './site.js';

/** Nozzle pressure of a smooth bore on a hand line. */
const HAND_LINE = 50 * PSI;
const HAND_LINE_SOURCE =
  'smooth bore on a hand line 50 psi, county driver-certification hydraulics reference, 2019, and IFSTA fireground cards';

export interface Need {
  pressure: number;
  source: string;
}

/**
 * The pressure that a nozzle is laid for: what the layout states, else its rating, else that of a hand line. Undefined
 * where no pressure is asked of it: an open end, a test orifice.
 */
export function needOf({ model, step }: AssembledNozzle): Need | undefined {
  const stated = step.kind === 'nozzle' ? step.pressure : undefined;
  if (stated !== undefined) return { pressure: stated, source: 'stated in the layout' };
  if (model.kind === 'fog' || model.kind === 'automatic')
    return { pressure: model.pressure, source: citation(model, 'pressure') };
  if (model.kind !== 'smooth_bore') return undefined;
  const { working } = model;
  const pressure = Math.min(Math.max(HAND_LINE, working?.from ?? 0), working?.to ?? Number.POSITIVE_INFINITY);
  return { pressure, source: pressure === HAND_LINE ? HAND_LINE_SOURCE : citation(model, 'working') };
}

/** The least pressure at which a nozzle still works: the foot of its working range, else what it is laid for. */
export function leastPressure(nozzle: AssembledNozzle): number | undefined {
  const { model } = nozzle;
  const from = model.kind === 'open_end' ? undefined : model.working?.from;
  return from ?? needOf(nozzle)?.pressure;
}

/** What a nozzle passes at a pressure, m3/s; undefined for one that holds its pressure over a range of flow. */
export function flowAtPressure(nozzle: AssembledNozzle, pressure: number, site: Site): number | undefined {
  const { model } = nozzle;
  if (model.kind === 'open_end' || model.kind === 'automatic') return undefined;
  return flowAtLoss(nozzleLaw(model, site), heightOfPressure(pressure, site.waterDensity));
}
