import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.js';
import { requireNotNegative, requirePositive } from '../range.js';

/**
 * Flow of a fog nozzle of fixed opening at a nozzle pressure other than its rated one.
 *
 * Formula: Q = Q_r sqrt(NP / NP_r)
 * Range: pressure 0 or above; rated flow and pressure above 0. The nozzle stays at one setting.
 * Errors: RangeError outside the range.
 * Source: orifice law; from memory in the trade's texts.
 * @param ratedFlow flow at the rated pressure [m3/s]
 * @param ratedPressure rated nozzle pressure [Pa]
 * @param pressure nozzle pressure [Pa]
 * @returns flow [m3/s]
 * @example fogFlow(20, 100, 81) // => 18
 */
export function fogFlow(ratedFlow: number, ratedPressure: number, pressure: number): number {
  requirePositive('rated flow', ratedFlow, 'm3/s');
  requirePositive('rated pressure', ratedPressure, 'Pa');
  requireNotNegative('pressure', pressure, 'Pa');
  return ratedFlow * Math.sqrt(pressure / ratedPressure);
}

/**
 * Resistance of a fog nozzle of fixed opening: total head behind it over flow squared.
 *
 * Formula: r = NP_r / (rho g Q_r^2), rho at 60 degF
 * Range: as `fogFlow`.
 * Errors: RangeError where a figure is not above 0.
 * Source: as `fogFlow`.
 * @param ratedFlow flow at the rated pressure [m3/s]
 * @param ratedPressure rated nozzle pressure [Pa]
 * @returns head over flow squared [m/(m3/s)^2]
 * @example fogResistance(0.001261804, 689475.7) // => 4.42042e7
 */
export function fogResistance(ratedFlow: number, ratedPressure: number): number {
  requirePositive('rated flow', ratedFlow, 'm3/s');
  requirePositive('rated pressure', ratedPressure, 'Pa');
  return ratedPressure / (REFERENCE_WATER_DENSITY * STANDARD_GRAVITY * ratedFlow * ratedFlow);
}
