import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from './constants.js';
import { FOOT, GALLON_PER_MINUTE, LITRE_PER_MINUTE, PSI } from './customary.js';
import { requireNotNegative, requirePositive } from './range.js';

/** Pa per (m3/s)^2 per metre of hose whose customary coefficient is 1. */
const CUSTOMARY = PSI / (100 * GALLON_PER_MINUTE) ** 2 / (100 * FOOT);
/** Pa per (m3/s)^2 per metre of hose whose metric coefficient is 1. */
const METRIC = 1000 / (100 * LITRE_PER_MINUTE) ** 2 / 100;

/**
 * Resistance of a length of fire hose by its customary friction coefficient.
 *
 * Formula: FL[psi] = C (Q[gpm]/100)^2 (L[ft]/100), so r = C psi / (100 gpm)^2 L / (100 ft)
 * Range: turbulent flow, as in any hose in use. Published C overstate most modern hose (FPRF study, 2012).
 * Errors: RangeError where the coefficient or the length is below 0.
 * Source: IFSTA pumping-apparatus method, as in a city fire department's slides 3-8 "friction loss in hose lays".
 * @param coefficient C, psi per (100 gpm)^2 per 100 ft [1]
 * @param length length of hose [m]
 * @returns pressure loss over flow squared [Pa/(m3/s)^2]
 * @example hoseResistance(24, 30.48) // => 4.15725e9
 */
export function hoseResistance(coefficient: number, length: number): number {
  requireNotNegative('hose coefficient', coefficient, '');
  requireNotNegative('hose length', length, 'm');
  return coefficient * CUSTOMARY * length;
}

/**
 * The same resistance in head: loss in metres of water over flow squared, at the density at which the coefficient is true.
 *
 * Formula: r = C psi / (100 gpm)^2 L / (100 ft) / (rho g), rho at 60 degF
 * Range: as `hoseResistance`.
 * Errors: RangeError where the coefficient or the length is below 0.
 * Source: as `hoseResistance`; that the head and not the pressure stays when water warms follows from Darcy-Weisbach.
 * @param coefficient C, psi per (100 gpm)^2 per 100 ft [1]
 * @param length length of hose [m]
 * @returns head loss over flow squared [m/(m3/s)^2]
 * @example hoseHeadResistance(24, 30.48) // => 424360
 */
export function hoseHeadResistance(coefficient: number, length: number): number {
  return hoseResistance(coefficient, length) / (REFERENCE_WATER_DENSITY * STANDARD_GRAVITY);
}

/**
 * Customary coefficient of a hose whose metric one is known.
 *
 * Formula: FL[kPa] = c (Q[L/min]/100)^2 (L[m]/100), so C = 0.6335 c
 * Range: coefficient 0 or above.
 * Errors: RangeError where the coefficient is below 0.
 * Source: Ecole nationale des pompiers du Quebec, pump-operator course table, 2012.
 * @param metric c, kPa per (100 L/min)^2 per 100 m [1]
 * @returns C, psi per (100 gpm)^2 per 100 ft [1]
 * @example hoseCoefficientFromMetric(38) // => 24.07
 */
export function hoseCoefficientFromMetric(metric: number): number {
  requireNotNegative('hose coefficient', metric, '');
  return (metric * METRIC) / CUSTOMARY;
}

/**
 * Coefficient that stands for several lines of the same length laid side by side; it goes with the total flow.
 *
 * Formula: C_eq = (sum C_i^(-1/2))^(-2)
 * Range: each coefficient above 0; lines that part and meet at the same two points.
 * Errors: RangeError where there is no line or a coefficient is not above 0.
 * Source: computed from equal loss in each line; gives back every published siamese value (IFSTA, Quebec) to its printed digits.
 * @param coefficients C of each line [1]
 * @returns C of all together [1]
 * @example parallelHoseCoefficient([2, 2]) // => 0.5
 */
export function parallelHoseCoefficient(coefficients: readonly number[]): number {
  return parallelResistance(coefficients);
}

/**
 * Resistance of several quadratic ones side by side; it goes with the total flow.
 *
 * Formula: r_eq = (sum r_i^(-1/2))^(-2)
 * Range: each resistance above 0, all in the same unit.
 * Errors: RangeError where there is none or one is not above 0.
 * Source: equal loss in each line, flows add.
 * @param resistances loss over flow squared of each line [any]
 * @returns loss over total flow squared [any]
 * @example parallelResistance([4, 4]) // => 1
 */
export function parallelResistance(resistances: readonly number[]): number {
  if (resistances.length === 0) throw new RangeError('lines side by side: there is none');
  let sum = 0;
  for (const resistance of resistances) {
    requirePositive('resistance of a line', resistance, '');
    sum += 1 / Math.sqrt(resistance);
  }
  return 1 / (sum * sum);
}
