import { STANDARD_GRAVITY } from './constants.js';
import { requireNotNegative, requirePositive } from './range.js';
import { boreArea } from './velocity.js';

/**
 * Resistance of a fitting by its loss coefficient; loss h = r q^2.
 *
 * Formula: h = K V^2/2g, so r = K / (2 g A^2)
 * Range: K 0 or above; bore above 0, the bore that K is stated on. Turbulent flow. K is uncertain by 25 to 200 % (Hydraulic Institute).
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009), from a public library that solves its examples.
 * @param lossCoefficient K [1]
 * @param bore inside diameter that K is stated on [m]
 * @returns head loss over flow squared [m/(m3/s)^2]
 * @example fittingResistance(3, 0.05248) // => 32690
 */
export function fittingResistance(lossCoefficient: number, bore: number): number {
  requireNotNegative('loss coefficient', lossCoefficient, '');
  requirePositive('bore', bore, 'm');
  return lossCoefficient / (2 * STANDARD_GRAVITY * boreArea(bore) ** 2);
}

/**
 * Loss coefficient of a resistance on a bore: the inverse of `fittingResistance`.
 *
 * Formula: K = r 2 g A^2
 * Range: resistance 0 or above; bore above 0.
 * Errors: RangeError outside the range.
 * Source: as `fittingResistance`.
 * @param resistance head loss over flow squared [m/(m3/s)^2]
 * @param bore inside diameter that K is to be stated on [m]
 * @returns K [1]
 * @example lossCoefficientOf(fittingResistance(3, 0.05), 0.05) // => 3
 */
export function lossCoefficientOf(resistance: number, bore: number): number {
  requireNotNegative('resistance', resistance, 'm/(m3/s)^2');
  requirePositive('bore', bore, 'm');
  return resistance * 2 * STANDARD_GRAVITY * boreArea(bore) ** 2;
}

/**
 * Loss coefficient of the straight pipe that a fitting's equivalent length stands for, and back.
 *
 * Formula: K = f L / D
 * Range: friction factor and length 0 or above; bore above 0.
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009), from a public library that solves its examples.
 * @param frictionFactor Darcy friction factor [1]
 * @param length equivalent length [m]
 * @param bore inside diameter [m]
 * @returns K [1]
 * @example lossCoefficientOfLength(0.015, 36.96, 0.154) // => 3.6
 */
export function lossCoefficientOfLength(frictionFactor: number, length: number, bore: number): number {
  requireNotNegative('friction factor', frictionFactor, '');
  requireNotNegative('length', length, 'm');
  requirePositive('bore', bore, 'm');
  return (frictionFactor * length) / bore;
}
