import type { Aspiration, Fuel } from './engine-derating.js';
import { requirePositive, requireWithin } from './range.js';

/** Reference of the standard: 990 mbar of dry air at 25 degC. */
const REFERENCE_PRESSURE = 99_000;
const REFERENCE_TEMPERATURE = 298;
/** Engine factor of a diesel whose fuel per stroke is not known: the largest, so that the most is taken off. */
const LARGEST_ENGINE_FACTOR = 1.2;

/**
 * Factor by which a spark engine's measured power is corrected to the standard's reference air.
 *
 * Formula: CF = 1.180 (99000/p_d) sqrt(T/298) - 0.18
 * Range: developed for CF from 0.93 to 1.07 (band from memory); beyond it the figure is carried on and is less sure. An engine of 85 %
 * mechanical efficiency (from memory).
 * Errors: RangeError where a figure is not above 0.
 * Source: SAE J1349 (Jun 1990), spark ignition, as quoted second hand; its inch form is misprinted there (505 for 537).
 * @param dryPressure absolute pressure of the air without its moisture [Pa]
 * @param airTemperature air temperature [K]
 * @returns correction factor [1]
 * @example saeSparkCorrection(84307, 298) // => 1.206
 */
export function saeSparkCorrection(dryPressure: number, airTemperature: number): number {
  requirePositive('air pressure', dryPressure, 'Pa');
  requirePositive('air temperature', airTemperature, 'K');
  return 1.18 * (REFERENCE_PRESSURE / dryPressure) * Math.sqrt(airTemperature / REFERENCE_TEMPERATURE) - 0.18;
}

/**
 * Factor by which a diesel's measured power is corrected to the standard's reference air.
 *
 * Formula: CF = f_a^f_m; f_a = (99000/p_d)(T/298)^0.7 natural, (99000/p_d)^0.7 (T/298)^1.5 turbocharged
 * Range: developed for CF from 0.9 to 1.1. Engine factor f_m from 0.3 to 1.2.
 * Errors: RangeError where a figure is not above 0 or the engine factor is out of range.
 * Source: SAE J1349, compression ignition, shape second hand; exponents and bounds from memory.
 * @param dryPressure absolute pressure of the air without its moisture [Pa]
 * @param airTemperature air temperature [K]
 * @param aspiration natural or turbo [name]
 * @param engineFactor f_m [1]
 * @returns correction factor [1]
 * @example saeDieselCorrection(84307, 298, 'natural', 1.2) // => 1.213
 */
export function saeDieselCorrection(
  dryPressure: number,
  airTemperature: number,
  aspiration: Aspiration,
  engineFactor = LARGEST_ENGINE_FACTOR,
): number {
  requirePositive('air pressure', dryPressure, 'Pa');
  requirePositive('air temperature', airTemperature, 'K');
  requireWithin('engine factor', engineFactor, 0.3, LARGEST_ENGINE_FACTOR, '');
  const pressure = REFERENCE_PRESSURE / dryPressure;
  const temperature = airTemperature / REFERENCE_TEMPERATURE;
  const factor =
    aspiration === 'turbo' ? pressure ** 0.7 * temperature ** 1.5 : pressure * temperature ** 0.7;
  return factor ** engineFactor;
}

/**
 * Part of an engine's rated power that the air of a site leaves it, by the same correction read backwards.
 *
 * Formula: 1 / CF
 * Range: as the two corrections; rated power is taken as power in the reference air, so that at sea level it comes out above 1.
 * Errors: RangeError where a figure is not above 0.
 * Source: SAE J1349 as in `saeSparkCorrection` and `saeDieselCorrection`; that spark engines are corrected alike with and without a
 * turbocharger is from memory.
 * @param dryPressure absolute pressure of the air without its moisture [Pa]
 * @param airTemperature air temperature [K]
 * @param aspiration natural or turbo [name]
 * @param fuel gasoline or diesel [name]
 * @returns part of the rated power [1]
 * @example saePowerLeft(84307, 298, 'natural', 'gasoline') // => 0.829
 */
export function saePowerLeft(
  dryPressure: number,
  airTemperature: number,
  aspiration: Aspiration,
  fuel: Fuel,
): number {
  return fuel === 'diesel'
    ? 1 / saeDieselCorrection(dryPressure, airTemperature, aspiration)
    : 1 / saeSparkCorrection(dryPressure, airTemperature);
}
