import { STANDARD_GRAVITY } from './constants.js';

/**
 * Area of a round bore.
 *
 * Formula: A = pi d^2 / 4
 * Range: bore above 0.
 * Errors: none.
 * Source: geometry.
 * @param bore inside diameter [m]
 * @returns area [m2]
 * @example boreArea(0.0254) // => 5.06707e-4
 */
export function boreArea(bore: number): number {
  return (Math.PI / 4) * bore * bore;
}

/**
 * Mean velocity in a round bore.
 *
 * Formula: V = Q / A; in customary units 0.4085 gpm / in^2 ft/s
 * Range: any flow; bore above 0.
 * Errors: none.
 * Source: continuity; the customary constant from memory.
 * @param flow flow [m3/s]
 * @param bore inside diameter [m]
 * @returns velocity [m/s]
 * @example flowVelocity(0.00630902, 0.0627) // => 2.0433
 */
export function flowVelocity(flow: number, bore: number): number {
  return flow / boreArea(bore);
}

/**
 * Head that the motion of the water stands for: what a total head has over a static gauge.
 *
 * Formula: h = V^2 / 2g
 * Range: any flow; bore above 0.
 * Errors: none.
 * Source: Bernoulli's equation, with a flat velocity profile.
 * @param flow flow [m3/s]
 * @param bore inside diameter [m]
 * @returns velocity head [m]
 * @example velocityHead(0.00630902, 0.0627) // => 0.21287
 */
export function velocityHead(flow: number, bore: number): number {
  const velocity = flowVelocity(flow, bore);
  return (velocity * velocity) / (2 * STANDARD_GRAVITY);
}
