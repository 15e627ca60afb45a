import { heightOfPressure } from '../elevation.js';
import { velocityHead } from '../velocity.js';

/** A gauge on one side of a pump under test. */
export interface BenchGauge {
  /** What it reads, Pa; below 0 for a vacuum. */
  reading: number;
  /** How far its middle stands over the middle of the pump, m. */
  height: number;
  /** Inside diameter where it is tapped, m; undefined where nobody says. */
  bore?: number;
}

/**
 * Total head that a pump adds, from its two gauges.
 *
 * Formula: H = (p_d - p_s) / rho g + (z_d - z_s) + (V_d^2 - V_s^2) / 2g
 * Range: any reading; the velocity heads are left out unless both bores are known, since one alone would be wrong by more.
 * Errors: none.
 * Source: total head by ISO 9906 and ANSI/HI 14.6, definitions (from memory).
 * @param discharge gauge at the outlet [Pa, m, m]
 * @param suction gauge at the inlet [Pa, m, m]
 * @param flow flow through both [m3/s]
 * @param density density of the water [kg/m3]
 * @returns total head [m]
 * @example benchHead({ reading: 298598, height: 0.5 }, { reading: 0, height: 0 }, 0.005, 998.967) // => 30.98
 */
export function benchHead(discharge: BenchGauge, suction: BenchGauge, flow: number, density: number): number {
  const standing =
    heightOfPressure(discharge.reading - suction.reading, density) + discharge.height - suction.height;
  if (discharge.bore === undefined || suction.bore === undefined) return standing;
  return standing + velocityHead(flow, discharge.bore) - velocityHead(flow, suction.bore);
}
