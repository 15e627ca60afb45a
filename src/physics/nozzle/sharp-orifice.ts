import { requirePositive } from '../range.js';
import { velocityHead } from '../velocity.js';
import { dischargeCoefficientOf, jetFlow, jetResistance } from './orifice.js';

/** Constant of the agency's formula, gpm = 29.9 Cd d^2 sqrt(psi). NWCG PMS 447-1, 5th ed., Oct 2003, Appendix C. */
export const AGENCY_JET_CONSTANT = 29.9;
/** Cd of the agency's sharp-edged test orifice on its static gauge: 0.62 with the constant of its formula, 0.6213 with the ideal one. */
export const SHARP_ORIFICE_COEFFICIENT = dischargeCoefficientOf(AGENCY_JET_CONSTANT * 0.62);

/**
 * Flow of a sharp-edged test orifice by the gauge in the tee upstream of it, which reads static pressure.
 *
 * Formula: Q[gpm] = 29.9 x 0.62 d[in]^2 sqrt(P[psi]), from d = sqrt(Q / (29.9 x 0.62 sqrt(P)))
 * Range: in-line tee of the size recommended or larger; a smaller one reads worse.
 * Errors: RangeError where the pressure is below 0 or another figure is not above 0.
 * Source: NWCG Water Handling Equipment Guide, PMS 447-1, 5th ed., Oct 2003, Appendix C. (Water at 60 degF through a perfect bore makes
 * 29.84, so the agency's 29.9 with 0.62 is a coefficient of 0.6212.)
 * @param bore diameter of the orifice [m]
 * @param staticPressure gauge pressure in the tee [Pa]
 * @param density density of the water [kg/m3]
 * @returns flow [m3/s]
 * @example sharpOrificeFlow(0.716 * 0.0254, 250 * 6894.757, 998.967) // => 0.00948
 */
export function sharpOrificeFlow(bore: number, staticPressure: number, density: number): number {
  return jetFlow(bore, SHARP_ORIFICE_COEFFICIENT, staticPressure, density);
}

/**
 * Bore of the sharp-edged orifice that passes a flow at a gauge reading.
 *
 * Formula: d[in] = sqrt(Q[gpm] / (29.9 x 0.62 sqrt(P[psi])))
 * Range: as `sharpOrificeFlow`.
 * Errors: RangeError where a figure is not above 0.
 * Source: as `sharpOrificeFlow`.
 * @param flow flow [m3/s]
 * @param staticPressure gauge pressure in the tee [Pa]
 * @param density density of the water [kg/m3]
 * @returns diameter of the orifice [m]
 * @example sharpOrificeBore(150 * 6.30902e-5, 250 * 6894.757, 998.967) / 0.0254 // => 0.7154
 */
export function sharpOrificeBore(flow: number, staticPressure: number, density: number): number {
  requirePositive('flow', flow, 'm3/s');
  requirePositive('pressure', staticPressure, 'Pa');
  return Math.sqrt(flow / jetFlow(1, SHARP_ORIFICE_COEFFICIENT, staticPressure, density));
}

/**
 * Resistance of a sharp-edged test orifice: total head in its tee over flow squared.
 *
 * Formula: r = 1/(2 g (Cd A)^2) + 1/(2 g A_tee^2): the head of its static gauge and the velocity head in the tee
 * Range: as `sharpOrificeFlow`.
 * Errors: RangeError where a bore is not above 0.
 * Source: as `sharpOrificeFlow`; that a gauge reads total less velocity head is Bernoulli's equation.
 * @param bore diameter of the orifice [m]
 * @param teeBore inside diameter of the tee where the gauge sits [m]
 * @returns total head over flow squared [m/(m3/s)^2]
 * @example sharpOrificeResistance(0.716 * 0.0254, 0.0381) // => 1996923
 */
export function sharpOrificeResistance(bore: number, teeBore: number): number {
  requirePositive('bore of the tee', teeBore, 'm');
  return jetResistance(bore, SHARP_ORIFICE_COEFFICIENT) + velocityHead(1, teeBore);
}
