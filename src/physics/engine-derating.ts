import { FOOT } from './customary.js';
import { requireWithin } from './range.js';

export type Aspiration = 'natural' | 'turbo';
export type Fuel = 'gasoline' | 'diesel';

/** Places and air for which engines are derated, m and K: -50 to 60 degC. */
export const LOWEST_PLACE = -500;
export const HIGHEST_PLACE = 6000;
export const COLDEST_AIR = 223.15;
export const HOTTEST_AIR = 333.15;

const ALTITUDE_START = 500 * FOOT;
const ALTITUDE_RATE = 0.03 / (1000 * FOOT);
/** 85 degF, K. */
const TEMPERATURE_START = ((85 + 459.67) * 5) / 9;
/** 1 % for each 10 degF of a spark engine, for each 5 degF of a diesel. */
const TEMPERATURE_RATE = { gasoline: (0.01 / 10) * 1.8, diesel: (0.01 / 5) * 1.8 } as const;

/**
 * Part of an engine's power that altitude leaves.
 *
 * Formula: 1 - 0.03 (z[ft] - 500)/1000 above 500 ft; 1 for a turbocharged engine
 * Range: elevation -500 to 6,000 m.
 * Errors: RangeError outside the range.
 * Source: agricultural engineering text, altitude derating (starts at 500 ft; others start at 0).
 * @param elevation height above sea level [m]
 * @param aspiration natural or turbo [name]
 * @returns part of the power left [1]
 * @example altitudeDerating(1371.6, 'natural') // => 0.88
 */
export function altitudeDerating(elevation: number, aspiration: Aspiration): number {
  requireWithin('elevation', elevation, LOWEST_PLACE, HIGHEST_PLACE, 'm');
  if (aspiration === 'turbo' || elevation <= ALTITUDE_START) return 1;
  return 1 - ALTITUDE_RATE * (elevation - ALTITUDE_START);
}

/**
 * Part of an engine's power that hot air leaves.
 *
 * Formula: spark 1 - 0.01 (T[degF] - 85)/10, diesel 1 - 0.01 (T - 85)/5, above 85 degF; 1 for a turbocharged engine
 * Range: air -50 to 60 degC.
 * Errors: RangeError outside the range.
 * Source: agricultural engineering text, temperature derating (165 hp at 100 degF makes 162.525).
 * @param airTemperature air temperature [K]
 * @param aspiration natural or turbo [name]
 * @param fuel gasoline or diesel [name]
 * @returns part of the power left [1]
 * @example temperatureDerating(310.928, 'natural', 'gasoline') // => 0.985
 */
export function temperatureDerating(airTemperature: number, aspiration: Aspiration, fuel: Fuel): number {
  requireWithin('air temperature', airTemperature, COLDEST_AIR, HOTTEST_AIR, 'K');
  if (aspiration === 'turbo' || airTemperature <= TEMPERATURE_START) return 1;
  return 1 - TEMPERATURE_RATE[fuel] * (airTemperature - TEMPERATURE_START);
}

/**
 * Power of an engine at a site.
 *
 * Formula: P = P_rated (altitude derating) (temperature derating)
 * Range: as the two deratings.
 * Errors: RangeError outside the range.
 * Source: as the two deratings; that they multiply is common practice, no source.
 * @param ratedPower power at sea level in cool air [W]
 * @param elevation height above sea level [m]
 * @param airTemperature air temperature [K]
 * @param aspiration natural or turbo [name]
 * @param fuel gasoline or diesel [name]
 * @returns power [W]
 * @example enginePower(225, 1371.6, 288.15, 'natural', 'gasoline') // => 198.0
 */
export function enginePower(
  ratedPower: number,
  elevation: number,
  airTemperature: number,
  aspiration: Aspiration,
  fuel: Fuel,
): number {
  return (
    ratedPower *
    altitudeDerating(elevation, aspiration) *
    temperatureDerating(airTemperature, aspiration, fuel)
  );
}
