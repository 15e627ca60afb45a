import { citation } from '../catalogue/citation.js';
import { boreOf } from '../catalogue/schema/nozzle.js';
import { INCH, PSI } from '../physics/customary.js';
import { heightOfPressure } from '../physics/elevation.js';
import { leastRegulated } from '../physics/nozzle/automatic.js';
import type { AssembledNozzle } from './assembly.js';
import { flowAtLoss } from './laws.js';
import type { OperatingPoint } from './operating-point.js';
import { nozzleLaw } from './outlet.js';
import type { Site } from './site.js';

/** Nozzle pressure of a smooth bore on a hand line. */
const HAND_LINE = 50 * PSI;
const HAND_LINE_SOURCE =
  'smooth bore on a hand line 50 psi, county driver-certification hydraulics reference, 2019, and IFSTA fireground cards';
/** Nozzle pressure of a smooth bore that is a master stream. */
const MASTER_STREAM = 80 * PSI;
const MASTER_STREAM_SOURCE =
  'smooth bore of a master stream 80 psi, county driver-certification hydraulics reference, 2019, and IFSTA fireground cards';
/**
 * Smallest bore that is a master stream's: "80 psi for tips of 1-3/8 in and more, 50 for 1-1/4 in and less" of one department,
 * flash-card deck "Hydraulics" of a fire department's hand method. A bore of it read through millimetres is one too.
 */
const MASTER_BORE = (1.375 - 0.01) * INCH;

export interface Need {
  pressure: number;
  source: string;
}

/**
 * The pressure that a nozzle is laid for: what the layout states, else its rating, else that of a hand line or, of a large
 * bore, of a master stream. An automatic nozzle has what it is laid for as long as it regulates: its need is the pressure at
 * the low end of its range. Undefined where no pressure is asked of it: an open end, a test orifice.
 */
export function needOf({ model, step }: AssembledNozzle): Need | undefined {
  const stated = step.kind === 'nozzle' ? step.pressure : undefined;
  // What a layout states of an automatic nozzle is the pressure that it holds, and `model` has it.
  if (model.kind === 'automatic')
    return {
      pressure: leastRegulated(model.pressure),
      source: `${stated === undefined ? citation(model, 'pressure') : 'stated in the layout'}; from where it regulates`,
    };
  if (stated !== undefined) return { pressure: stated, source: 'stated in the layout' };
  if (model.kind === 'fog') return { pressure: model.pressure, source: citation(model, 'pressure') };
  if (model.kind !== 'smooth_bore') return undefined;
  const { working } = model;
  const usual = usualOf(boreOf(model));
  const pressure = Math.min(
    Math.max(usual.pressure, working?.from ?? 0),
    working?.to ?? Number.POSITIVE_INFINITY,
  );
  return pressure === usual.pressure ? usual : { pressure, source: citation(model, 'working') };
}

function usualOf(bore: number): Need {
  return bore >= MASTER_BORE
    ? { pressure: MASTER_STREAM, source: MASTER_STREAM_SOURCE }
    : { pressure: HAND_LINE, source: HAND_LINE_SOURCE };
}

/** Pressures this little under a need are the rounding of a solve, Pa. */
const ROUNDING = 1;

/** The least pressure at which a nozzle still works: the foot of its working range, else what it is laid for. */
export function leastPressure(nozzle: AssembledNozzle): number | undefined {
  return leastOf(nozzle)?.pressure;
}

/** The same with where it is from. */
export function leastOf(nozzle: AssembledNozzle): Need | undefined {
  const { model } = nozzle;
  const from = model.kind === 'open_end' ? undefined : model.working?.from;
  if (from === undefined || model.kind === 'open_end') return needOf(nozzle);
  return { pressure: from, source: citation(model, 'working') };
}

/** What an open nozzle stands at and needs at least, where it has less: the one rule by which a nozzle is short. */
export function shortOfLeast(
  point: OperatingPoint,
  nozzle: AssembledNozzle,
): { pressure: number; least: Need } | undefined {
  if (nozzle.state !== 'open') return undefined;
  const least = leastOf(nozzle);
  const pressure = point.totalPressure(nozzle.inlet);
  return least === undefined || pressure >= least.pressure - ROUNDING ? undefined : { pressure, least };
}

/** What a nozzle passes at a pressure, m3/s; undefined for one that holds its pressure over a range of flow. */
export function flowAtPressure(nozzle: AssembledNozzle, pressure: number, site: Site): number | undefined {
  const { model } = nozzle;
  if (model.kind === 'open_end' || model.kind === 'automatic') return undefined;
  return flowAtLoss(nozzleLaw(model, site), heightOfPressure(pressure, site.waterDensity));
}
