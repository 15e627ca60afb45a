import { colebrookTransmission } from './friction-factor.js';
import { requireNotNegative, requireWithin } from './range.js';

/** Bores for which the fittings of the table are known, m. */
export const CRANE_BORES = { from: 0.01, to: 1 } as const;

/**
 * Friction factor of clean commercial steel pipe in full turbulence, f_T, by size.
 *
 * Formula: Colebrook at Re = 7.5e6 D and relative roughness 3.4126825e-5 D^-1.0112, D in m
 * Range: bore 0.01 to 1 m; within 0.0001 of the table of TP-410, which prints three decimals.
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009), by the fit of a public library that solves its examples; the fit from memory, checked against the f_T
 * which that library gives for eleven sizes.
 * @param bore inside diameter of the schedule 40 pipe of the size [m]
 * @returns f_T [1]
 * @example fullyTurbulentFriction(0.1) // => 0.016288
 */
export function fullyTurbulentFriction(bore: number): number {
  requireWithin('bore', bore, CRANE_BORES.from, CRANE_BORES.to, 'm');
  return colebrookTransmission(7.5e6 * bore, 3.4126825352925e-5 * bore ** -1.0112) ** -2;
}

/**
 * Loss coefficient of a fitting by its number of equivalent diameters, N.
 *
 * Formula: K = N f_T
 * Range: N 0 or above; bore 0.01 to 1 m.
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009), from a public library that solves its examples.
 * @param equivalentDiameters N: 30 for a standard 90 degree elbow, 8 for a gate valve [1]
 * @param bore inside diameter that K is stated on [m]
 * @returns K [1]
 * @example craneLossCoefficient(30, 0.1) // => 0.4887
 */
export function craneLossCoefficient(equivalentDiameters: number, bore: number): number {
  requireNotNegative('equivalent diameters', equivalentDiameters, '');
  return equivalentDiameters * fullyTurbulentFriction(bore);
}

/**
 * Loss coefficient of a valve smaller than the pipe it stands in, on the pipe's bore, its seat's ends being abrupt.
 *
 * Formula: K2 = (K1 + b (0.5 (1 - b^2) + (1 - b^2)^2)) / b^4, b = valve bore / pipe bore
 * Range: b above 0 and up to 1; K1 0 or above.
 * Errors: RangeError outside the range.
 * Source: Crane TP-410 (2009), formula 7; from memory, checked against its example 7.5.
 * @param lossCoefficient K1 on the valve's own bore [1]
 * @param boreRatio bore of the valve over that of the pipe [1]
 * @returns K2 on the pipe's bore [1]
 * @example craneReducedBore(10.86, 0.06268 / 0.07792) // => 26.5
 */
export function craneReducedBore(lossCoefficient: number, boreRatio: number): number {
  requireNotNegative('loss coefficient', lossCoefficient, '');
  requireWithin('bore ratio', boreRatio, 1e-3, 1, '');
  const step = 1 - boreRatio ** 2;
  return (lossCoefficient + boreRatio * (0.5 * step + step ** 2)) / boreRatio ** 4;
}

/**
 * Velocity below which a check valve is not held fully open, so that it flutters and loses more than its K.
 *
 * Formula: v = N / sqrt(rho)
 * Range: N and density above 0.
 * Errors: none.
 * Source: Crane TP-410 (2009), SI constants from a public library that solves its examples: swing straight 75, swing angled 45, lift
 * straight 50, lift angled 170, tilting disc 15 degrees 40 and 5 degrees 100, foot poppet 20, foot hinged 45.
 * @param openingConstant N [m/s (kg/m3)^1/2]
 * @param density density of the water [kg/m3]
 * @returns velocity in the pipe [m/s]
 * @example checkOpeningVelocity(75, 998.967) // => 2.373
 */
export function checkOpeningVelocity(openingConstant: number, density: number): number {
  return openingConstant / Math.sqrt(density);
}
