import { SPECIFIC_HEAT_OF_WATER } from './constants.js';
import { GALLON_PER_MINUTE, HORSEPOWER } from './customary.js';
import { requireNotNegative, requirePositive } from './range.js';
import { vapourPressure } from './water.js';

/**
 * Least flow that carries a pump's power away with no more than a rise of temperature.
 *
 * Formula: Q = P / (rho c dT); for a rise of 15 degF, gpm = bhp / 2.95
 * Range: power 0 or above, rise above 0; all the power is taken to stay in the water.
 * Errors: RangeError outside the range.
 * Source: pump operators' rule gpm = bhp / 2.95 for 15 degF (general pump texts); energy balance, specific heat from memory.
 * @param power power taken at the shaft [W]
 * @param rise rise of temperature allowed [K]
 * @param density density of the water [kg/m3]
 * @returns flow [m3/s]
 * @example flowForRise(7456.999, 8.3333, 998.967) // => 0.00021399
 */
export function flowForRise(power: number, rise: number, density: number): number {
  requireNotNegative('power', power, 'W');
  requirePositive('rise of temperature', rise, 'K');
  return power / (density * SPECIFIC_HEAT_OF_WATER * rise);
}

/**
 * Least flow by the rough rule, far stricter than the energy balance.
 *
 * Formula: 300 gpm for each 100 hp at shutoff
 * Range: power 0 or above.
 * Errors: RangeError outside the range.
 * Source: rough rule of general pump texts, 300 gpm per 100 hp at shut-off.
 * @param power power taken at the shaft at shutoff [W]
 * @returns flow [m3/s]
 * @example roughLeastFlow(7456.999) // => 0.0018927
 */
export function roughLeastFlow(power: number): number {
  requireNotNegative('power', power, 'W');
  return ((3 * GALLON_PER_MINUTE) / HORSEPOWER) * power;
}

/**
 * Time in which a power warms shut-in water, at the soonest.
 *
 * Formula: t = m c (T2 - T1) / P
 * Range: power above 0; no heat lost to metal or air, so that the true time is longer. 0 where it is as warm already.
 * Errors: RangeError where the power is not above 0.
 * Source: energy balance; specific heat 4186 J/(kg K) from memory.
 * @param power power taken at the shaft [W]
 * @param mass mass of the water shut in [kg]
 * @param from temperature of the water [K]
 * @param to temperature that it reaches [K]
 * @returns time [s]
 * @example timeToWarm(7456.999, 3.7816, 288.706, 333.15) // => 94.35
 */
export function timeToWarm(power: number, mass: number, from: number, to: number): number {
  requirePositive('power', power, 'W');
  return (mass * SPECIFIC_HEAT_OF_WATER * Math.max(0, to - from)) / power;
}

/**
 * Temperature at which water boils under a pressure.
 *
 * Formula: the T at which the vapour pressure is p, by halving
 * Range: pressures from that of ice to 101.4 kPa, the range of the vapour pressure; above it, its end.
 * Errors: none.
 * Source: IAPWS SR1-86(1992), by `vapourPressure`.
 * @param pressure absolute pressure [Pa]
 * @returns temperature [K]
 * @example boilingTemperature(84310) // => 368.05
 */
export function boilingTemperature(pressure: number): number {
  let low = 273.15;
  let high = 373.15;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (vapourPressure(middle) > pressure) high = middle;
    else low = middle;
  }
  return high;
}
