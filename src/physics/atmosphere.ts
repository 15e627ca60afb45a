import { requireWithin } from './range.js';

const SEA_LEVEL_PRESSURE = 101_325;
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 0.0065;
/** g M / (R lapse rate). */
const PRESSURE_EXPONENT = 5.255876;
const LOWEST = -500;
const TROPOPAUSE = 11_000;

/**
 * Temperature of the standard atmosphere.
 *
 * Formula: T = 288.15 - 0.0065 z
 * Range: elevation -500 to 11,000 m.
 * Errors: RangeError outside the range.
 * Source: U.S. Standard Atmosphere, 1976 (15 degC at sea level, 6.5 K less per km).
 * @param elevation height above sea level [m]
 * @returns air temperature [K]
 * @example standardTemperature(1524) // => 278.244
 */
export function standardTemperature(elevation: number): number {
  requireWithin('elevation', elevation, LOWEST, TROPOPAUSE, 'm');
  return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * elevation;
}

/**
 * Absolute pressure of the standard atmosphere.
 *
 * Formula: p = 101325 (1 - 0.0065 z / 288.15)^5.255876
 * Range: elevation -500 to 11,000 m, taken as geopotential height: at 15,000 ft of true height that is 0.04 % low. Weather moves
 * the real figure by some 3 % either way.
 * Errors: RangeError outside the range.
 * Source: U.S. Standard Atmosphere, 1976: P = P0 (1 - h/145442)^5.255876, h in feet.
 * @param elevation height above sea level [m]
 * @returns absolute pressure [Pa]
 * @example standardPressure(1524) // => 84307
 */
export function standardPressure(elevation: number): number {
  requireWithin('elevation', elevation, LOWEST, TROPOPAUSE, 'm');
  return SEA_LEVEL_PRESSURE * (1 - (LAPSE_RATE * elevation) / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT;
}
