import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';

/** A side of a pump, what stands there, Pa, and what its maker allows; undefined where the file does not say. */
export interface PumpSideLoad {
  side: 'casing' | 'inlet';
  pressure: number;
  limit?: number;
}

/** What the casing of a pump and its inlet with the seal stand at, total gauge pressure, against their makers' limits. */
export function pumpLoads(point: OperatingPoint, pump: AssembledPump): PumpSideLoad[] {
  const { limits } = pump.model;
  return [
    { side: 'casing', pressure: point.totalPressure(pump.discharge), limit: limits?.casing },
    { side: 'inlet', pressure: point.totalPressure(pump.inlet), limit: limits?.inlet },
  ];
}

/** Whether a casing or an inlet stands over what its maker allows. */
export function overPumpLimit(point: OperatingPoint, pump: AssembledPump): boolean {
  return pumpLoads(point, pump).some(({ pressure, limit }) => limit !== undefined && pressure > limit);
}
