import { SPECIFIC_HEAT_OF_WATER, STANDARD_GRAVITY } from './constants.js';
import { requirePositive, requireWithin } from './range.js';

/**
 * Power that a pump gives to the water.
 *
 * Formula: P = rho g Q H; in customary units gpm psi / 1714 or gpm ft / 3960 horsepower
 * Range: flow and head 0 or above.
 * Errors: none.
 * Source: university course page "Pumps and power requirements" (3960); 1714 from memory.
 * @param flow flow [m3/s]
 * @param head head that the pump adds [m]
 * @param density density of the water [kg/m3]
 * @returns power [W]
 * @example waterPower(0.0441631, 130.454, 998.967) // => 56440
 */
export function waterPower(flow: number, head: number, density: number): number {
  return density * STANDARD_GRAVITY * flow * head;
}

/**
 * Power that a pump takes at its shaft.
 *
 * Formula: P = P_water / efficiency
 * Range: efficiency above 0 and up to 1.
 * Errors: RangeError where the efficiency is out of range.
 * Source: university course page "Pumps and power requirements".
 * @param waterPower power given to the water [W]
 * @param efficiency pump efficiency [1]
 * @returns shaft power [W]
 * @example shaftPower(7000, 0.7) // => 10000
 */
export function shaftPower(waterPower: number, efficiency: number): number {
  requirePositive('efficiency', efficiency, '');
  requireWithin('efficiency', efficiency, 0, 1, '');
  return waterPower / efficiency;
}

/**
 * How much warmer the water leaves a pump, from the power that does not become pressure.
 *
 * Formula: dT = (P_shaft - P_water) / (rho c Q)
 * Range: flow above 0; all the waste is taken to stay in the water.
 * Errors: RangeError where the flow is not above 0.
 * Source: energy balance; specific heat 4186 J/(kg K) from memory.
 * @param shaftPower power taken at the shaft [W]
 * @param waterPower power given to the water [W]
 * @param flow flow [m3/s]
 * @param density density of the water [kg/m3]
 * @returns rise of temperature [K]
 * @example temperatureRise(10000, 7000, 0.001, 998.967) // => 0.7174
 */
export function temperatureRise(
  shaftPower: number,
  waterPower: number,
  flow: number,
  density: number,
): number {
  requirePositive('flow', flow, 'm3/s');
  return (shaftPower - waterPower) / (density * SPECIFIC_HEAT_OF_WATER * flow);
}

/**
 * How fast the water shut in a pump warms.
 *
 * Formula: dT/dt = P_shaft / (m c)
 * Range: mass above 0; no heat lost to the casing or the air, so the true rate is less.
 * Errors: RangeError where the mass is not above 0.
 * Source: energy balance; specific heat 4186 J/(kg K) from memory.
 * @param shaftPower power taken at the shaft [W]
 * @param waterMass mass of the water shut in [kg]
 * @returns rate of temperature rise [K/s]
 * @example churningHeatRate(5000, 4) // => 0.2986
 */
export function churningHeatRate(shaftPower: number, waterMass: number): number {
  requirePositive('mass of water', waterMass, 'kg');
  return shaftPower / (waterMass * SPECIFIC_HEAT_OF_WATER);
}
