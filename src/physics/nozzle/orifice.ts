import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.js';
import { GALLON_PER_MINUTE, INCH, PSI } from '../customary.js';
import { requireNotNegative, requirePositive } from '../range.js';
import { boreArea } from '../velocity.js';

/** gpm through a perfect bore of 1 in at 1 psi, water at 60 degF: 29.84. */
export const IDEAL_JET_CONSTANT =
  (boreArea(INCH) * Math.sqrt((2 * PSI) / REFERENCE_WATER_DENSITY)) / GALLON_PER_MINUTE;

/**
 * Discharge coefficient that a customary nozzle constant stands for.
 *
 * Formula: Cd = k / 29.84, where gpm = k d[in]^2 sqrt(P[psi])
 * Range: constant above 0.
 * Errors: RangeError where the constant is not above 0.
 * Source: ideal 29.84 by Torricelli's law with water at 60 degF; from memory in the trade's texts.
 * @param constant k, gpm at 1 psi through a 1-in bore [1]
 * @returns discharge coefficient [1]
 * @example dischargeCoefficientOf(29.7) // => 0.9953
 */
export function dischargeCoefficientOf(constant: number): number {
  requirePositive('nozzle constant', constant, '');
  return constant / IDEAL_JET_CONSTANT;
}

/**
 * Resistance of a bore that discharges to the air: total head behind it over flow squared.
 *
 * Formula: Q = Cd A sqrt(2 g h), so r = 1 / (2 g (Cd A)^2)
 * Range: bore and discharge coefficient above 0; jet runs full, in the open.
 * Errors: RangeError outside the range.
 * Source: Torricelli's law; Hydraulic Institute Engineering Data Library gives it as gpm = 19.636 C d^2 sqrt(h[ft]).
 * @param bore diameter of the bore [m]
 * @param dischargeCoefficient Cd [1]
 * @returns head over flow squared [m/(m3/s)^2]
 * @example jetResistance(0.0254, 1) // => 198580
 */
export function jetResistance(bore: number, dischargeCoefficient: number): number {
  requirePositive('bore', bore, 'm');
  requirePositive('discharge coefficient', dischargeCoefficient, '');
  return 1 / (2 * STANDARD_GRAVITY * (dischargeCoefficient * boreArea(bore)) ** 2);
}

/**
 * Flow of a bore that discharges to the air under a total pressure behind it.
 *
 * Formula: Q = Cd A sqrt(2 P / rho)
 * Range: pressure 0 or above; bore, discharge coefficient and density above 0.
 * Errors: RangeError outside the range.
 * Source: Torricelli's law.
 * @param bore diameter of the bore [m]
 * @param dischargeCoefficient Cd [1]
 * @param pressure total gauge pressure behind the bore [Pa]
 * @param density density of the water [kg/m3]
 * @returns flow [m3/s]
 * @example jetFlow(0.0254, 1, 6894.757, 998.967) // => 0.00188259
 */
export function jetFlow(
  bore: number,
  dischargeCoefficient: number,
  pressure: number,
  density: number,
): number {
  requireNotNegative('pressure', pressure, 'Pa');
  requirePositive('density', density, 'kg/m3');
  return Math.sqrt(pressure / (density * STANDARD_GRAVITY) / jetResistance(bore, dischargeCoefficient));
}
