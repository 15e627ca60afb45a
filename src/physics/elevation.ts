import { STANDARD_GRAVITY } from './constants.js';

/**
 * Pressure of a standing column of water.
 *
 * Formula: p = rho g h
 * Range: any height; density above 0.
 * Errors: none.
 * Source: NWCG Firefighter Math 3.4 gives it as 0.434 psi per foot (62.5 lb/ft3); water at 60 degF makes 0.4331.
 * @param height height of the column, up positive [m]
 * @param density density of the water [kg/m3]
 * @returns pressure [Pa]
 * @example pressureOfHeight(30.48, 998.967) // => 298598
 */
export function pressureOfHeight(height: number, density: number): number {
  return density * STANDARD_GRAVITY * height;
}

/**
 * Height of the column of water that a pressure holds up.
 *
 * Formula: h = p / (rho g)
 * Range: any pressure; density above 0.
 * Errors: none.
 * Source: NWCG Firefighter Math 3.4 gives it as 2.304 ft per psi; water at 60 degF makes 2.309.
 * @param pressure gauge pressure [Pa]
 * @param density density of the water [kg/m3]
 * @returns height [m]
 * @example heightOfPressure(101325, 998.967) // => 10.343
 */
export function heightOfPressure(pressure: number, density: number): number {
  return pressure / (density * STANDARD_GRAVITY);
}
