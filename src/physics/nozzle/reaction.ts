import { GALLON_PER_MINUTE, INCH, POUND_FORCE, PSI } from '../customary.js';
import { requireNotNegative, requirePositive } from '../range.js';

const SMOOTH_BORE = (1.57 * POUND_FORCE) / (INCH ** 2 * PSI);
const FOG = (0.0505 * POUND_FORCE) / (GALLON_PER_MINUTE * Math.sqrt(PSI));

/**
 * Force with which a smooth-bore tip pushes back.
 *
 * Formula: R[lbf] = 1.57 d[in]^2 NP[psi]
 * Range: bore above 0; pressure 0 or above.
 * Errors: RangeError outside the range.
 * Source: county driver-certification hydraulics reference, 2019; IFSTA study cards on nozzles.
 * @param bore diameter of the tip [m]
 * @param pressure nozzle pressure [Pa]
 * @returns force [N]
 * @example smoothBoreReaction(0.0254, 50 * 6894.757) // => 349.2
 */
export function smoothBoreReaction(bore: number, pressure: number): number {
  requirePositive('bore', bore, 'm');
  requireNotNegative('pressure', pressure, 'Pa');
  return SMOOTH_BORE * bore * bore * pressure;
}

/**
 * Force with which a fog nozzle pushes back on a straight stream.
 *
 * Formula: R[lbf] = 0.0505 Q[gpm] sqrt(NP[psi])
 * Range: flow and pressure 0 or above.
 * Errors: RangeError outside the range.
 * Source: county driver-certification hydraulics reference, 2019; IFSTA study cards on nozzles.
 * @param flow flow [m3/s]
 * @param pressure nozzle pressure [Pa]
 * @returns force [N]
 * @example fogReaction(0.00630902, 689475.7) // => 224.6
 */
export function fogReaction(flow: number, pressure: number): number {
  requireNotNegative('flow', flow, 'm3/s');
  requireNotNegative('pressure', pressure, 'Pa');
  return FOG * flow * Math.sqrt(pressure);
}
