import { PSI } from './customary.js';
import { hoseResistance } from './hose-coefficient.js';
import { requirePositive } from './range.js';

/** Least pressure that is kept at an intake which is fed under pressure [Pa]. */
export const INTAKE_FLOOR = 20 * PSI;
export const INTAKE_FLOOR_SOURCE =
  'trade magazine, relay pumping lesson, and pump-operator cards: 20 psi residual at the intake';

/** What an intake relief is set over the pressure that the pump before it brings [Pa]. */
export const RELAY_RELIEF_OVER = 10 * PSI;
export const RELAY_RELIEF_SOURCE =
  'pump-operator study cards on relay pumping: intake relief 10 psi over the pressure of the pump before';

/**
 * Longest line between two pumpers of a relay.
 *
 * Formula: L = (PDP - residual) 100 / FL, FL the loss of 100 ft
 * Range: level ground; discharge pressure above the residual; flow and coefficient above 0.
 * Errors: RangeError outside the range.
 * Source: trade magazine, relay pumping lesson (20 psi residual; discharge 200 psi, 185 in large hose).
 * @param dischargePressure pump discharge pressure [Pa]
 * @param residualPressure least pressure at the next intake [Pa]
 * @param coefficient C of the hose, psi per (100 gpm)^2 per 100 ft [1]
 * @param flow flow [m3/s]
 * @returns length [m]
 * @example relaySpacing(200 * 6894.757, 20 * 6894.757, 2, 500 * 6.30902e-5) // => 109.728
 */
export function relaySpacing(
  dischargePressure: number,
  residualPressure: number,
  coefficient: number,
  flow: number,
): number {
  requirePositive('pressure to be spent', dischargePressure - residualPressure, 'Pa');
  requirePositive('hose coefficient', coefficient, '');
  requirePositive('flow', flow, 'm3/s');
  return (dischargePressure - residualPressure) / (hoseResistance(coefficient, 1) * flow * flow);
}
