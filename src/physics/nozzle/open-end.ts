import { dischargeCoefficientOf, jetFlow, jetResistance } from './orifice.js';

/**
 * Resistance of a line that runs free to the air: all that is left at its end is velocity head.
 *
 * Formula: r = 1 / (2 g A^2)
 * Range: bore above 0; the end runs full.
 * Errors: RangeError where the bore is not above 0.
 * Source: exit coefficient 1.0, Crane TP-410 (2009), from a public library that solves its examples.
 * @param bore inside diameter of the end [m]
 * @returns total head over flow squared [m/(m3/s)^2]
 * @example openEndResistance(0.0381) // => 39226
 */
export function openEndResistance(bore: number): number {
  return jetResistance(bore, 1);
}

/** Coefficient of an open butt read with a pitot gauge. Source: fire-department formula cards (29.7 d2 sqrt(P) 0.9). */
const OPEN_BUTT_COEFFICIENT = dischargeCoefficientOf(29.7 * 0.9);

/**
 * Flow of an open butt by a pitot gauge held in its stream.
 *
 * Formula: gpm = 29.7 x 0.9 d[in]^2 sqrt(P[psi])
 * Range: round, smooth outlet that runs full; pressure 0 or above.
 * Errors: RangeError outside the range.
 * Source: fire-department formula cards.
 * @param bore inside diameter of the butt [m]
 * @param pitotPressure pitot reading [Pa]
 * @param density density of the water [kg/m3]
 * @returns flow [m3/s]
 * @example openButtFlow(2.5 * 0.0254, 20 * 6894.757, 998.967) // => 0.047136
 */
export function openButtFlow(bore: number, pitotPressure: number, density: number): number {
  return jetFlow(bore, OPEN_BUTT_COEFFICIENT, pitotPressure, density);
}
