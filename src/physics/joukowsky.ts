import { requireNotNegative, requirePositive } from './range.js';

/** Bulk modulus of water, Pa. Source: a textbook companion's solved surge examples (2.2e9). */
export const BULK_MODULUS_OF_WATER = 2.2e9;

/**
 * Speed of a pressure wave in a filled pipe.
 *
 * Formula: c = sqrt(K/rho) / sqrt(1 + (D/t)(K/E)); sqrt(K/rho) in a rigid pipe (E infinite)
 * Range: thin wall, free of air. Hose: some 100 to 400 m/s from memory, no published figure; give it as a measured wave speed.
 * Errors: RangeError where a figure is not above 0.
 * Source: textbook companion's solved surge examples.
 * @param density density of the water [kg/m3]
 * @param bore inside diameter [m]
 * @param wall thickness of the wall [m]
 * @param elasticity Young's modulus of the wall, Infinity if rigid [Pa]
 * @param bulkModulus bulk modulus of the water [Pa]
 * @returns wave speed [m/s]
 * @example waveSpeed(998, 0.6, 0.012, 2.1e11) // => 1202.8
 */
export function waveSpeed(
  density: number,
  bore: number,
  wall: number,
  elasticity: number,
  bulkModulus = BULK_MODULUS_OF_WATER,
): number {
  requirePositive('density', density, 'kg/m3');
  requirePositive('bore', bore, 'm');
  requirePositive('wall', wall, 'm');
  if (!(elasticity > 0)) throw new RangeError(`elasticity must be above 0 Pa, not ${elasticity}`);
  requirePositive('bulk modulus', bulkModulus, 'Pa');
  return Math.sqrt(bulkModulus / density / (1 + ((bore / wall) * bulkModulus) / elasticity));
}

/**
 * Rise of pressure when flow is stopped faster than a wave runs out and back.
 *
 * Formula: dp = rho c dV
 * Range: closing time below 2 L / c.
 * Errors: RangeError where the wave speed is not above 0 or another figure is below 0.
 * Source: Joukowsky, as in a textbook companion's solved surge examples.
 * @param density density of the water [kg/m3]
 * @param speed wave speed [m/s]
 * @param velocityChange velocity lost [m/s]
 * @returns pressure rise [Pa]
 * @example surgePressure(998, 1484.74, 3) // => 4445312
 */
export function surgePressure(density: number, speed: number, velocityChange: number): number {
  requireNotNegative('density', density, 'kg/m3');
  requirePositive('wave speed', speed, 'm/s');
  requireNotNegative('velocity change', velocityChange, 'm/s');
  return density * speed * velocityChange;
}

/**
 * Longest closing time that still makes the whole surge.
 *
 * Formula: t = 2 L / c
 * Range: length 0 or above; wave speed above 0.
 * Errors: RangeError outside the range.
 * Source: textbook companion's solved surge examples.
 * @param length length of the line [m]
 * @param speed wave speed [m/s]
 * @returns time [s]
 * @example criticalClosingTime(800, 1200) // => 1.3333
 */
export function criticalClosingTime(length: number, speed: number): number {
  requireNotNegative('length', length, 'm');
  requirePositive('wave speed', speed, 'm/s');
  return (2 * length) / speed;
}

/**
 * Rise of pressure when flow is stopped in a given time.
 *
 * Formula: rho c dV where T <= 2 L / c, else rho c dV (2 L / c) / T
 * Range: flow stopped evenly; one line of one bore, friction left out.
 * Errors: RangeError where the wave speed is not above 0 or another figure is below 0.
 * Source: textbook companion's solved surge examples (800 m, 2 s: 3.235 MPa falls to 2.394 MPa).
 * @param density density of the water [kg/m3]
 * @param speed wave speed [m/s]
 * @param velocityChange velocity lost [m/s]
 * @param length length of the line [m]
 * @param closingTime time in which it is lost [s]
 * @returns pressure rise [Pa]
 * @example surgeOfClosure(998, 1081, 3, 800, 2) // => 2395200
 */
export function surgeOfClosure(
  density: number,
  speed: number,
  velocityChange: number,
  length: number,
  closingTime: number,
): number {
  requireNotNegative('closing time', closingTime, 's');
  const whole = surgePressure(density, speed, velocityChange);
  const critical = criticalClosingTime(length, speed);
  return closingTime <= critical ? whole : (whole * critical) / closingTime;
}
