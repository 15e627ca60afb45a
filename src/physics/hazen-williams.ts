import { FOOT } from './customary.js';
import { requireNotNegative, requirePositive } from './range.js';

/** Power of the flow in the Hazen-Williams formula. */
export const HAZEN_WILLIAMS_EXPONENT = 1.852;
const DIAMETER_EXPONENT = 4.871;
/** 4.727 of the formula in feet and cubic feet a second, carried to metres: 10.67. */
const CONSTANT = 4.727 * FOOT ** (DIAMETER_EXPONENT - 3 * HAZEN_WILLIAMS_EXPONENT);

/**
 * Resistance of a pipe by Hazen-Williams; loss h = r q^1.852.
 *
 * Formula: h = 4.727 L Q^1.852 / (C^1.852 d^4.871) in ft and cfs; the same as 10.67 in m and m3/s
 * Range: water near 60 degF in turbulent flow, pipes above 2 in by common practice. Not for hose at its nominal bore: hose swells.
 * Errors: RangeError where the length is below 0, or C or the bore is not above 0.
 * Source: EPANET 2.2 source code (constant 4.727, exponents 1.852 and 4.871).
 * @param roughness Hazen-Williams C [1]
 * @param bore inside diameter [m]
 * @param length length of pipe [m]
 * @returns head loss over flow to the power 1.852 [m/(m3/s)^1.852]
 * @example hazenWilliamsResistance(120, 0.07792, 30.48) // => 11486
 */
export function hazenWilliamsResistance(roughness: number, bore: number, length: number): number {
  requirePositive('Hazen-Williams C', roughness, '');
  requirePositive('bore', bore, 'm');
  requireNotNegative('length', length, 'm');
  return (CONSTANT * length) / (roughness ** HAZEN_WILLIAMS_EXPONENT * bore ** DIAMETER_EXPONENT);
}
