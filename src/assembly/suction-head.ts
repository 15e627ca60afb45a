import { heightOfPressure } from '../physics/elevation.js';
import type { AssembledPump } from './assembly.js';
import type { OperatingPoint } from './operating-point.js';

/** Net positive suction head that there is at a pump's inlet, m. */
export function npshAvailable(state: OperatingPoint, pump: AssembledPump): number {
  const { site } = state.assembly;
  const absolute = state.totalPressure(pump.inlet) + site.atmosphericPressure - site.vapourPressure;
  return heightOfPressure(absolute, site.waterDensity);
}
