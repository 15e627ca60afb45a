import { dischargeCoefficientOf, jetFlow, jetResistance } from './orifice.js';

/** Cd of a smooth-bore tip, from the trade's 29.7. Source: a city fire department's slides "friction loss in hose lays". */
export const SMOOTH_BORE_COEFFICIENT = dischargeCoefficientOf(29.7);

/**
 * Flow of a smooth-bore tip at a nozzle pressure.
 *
 * Formula: gpm = 29.7 d[in]^2 sqrt(NP[psi])
 * Range: tips of 1/8 to 2 in; nozzle pressures of 20 psi and above by common practice.
 * Errors: RangeError where the pressure is below 0 or another figure is not above 0.
 * Source: IFSTA; in a city fire department's slides "friction loss in hose lays" and a county driver-certification reference.
 * @param bore diameter of the tip [m]
 * @param pressure nozzle pressure, total gauge pressure behind the tip [Pa]
 * @param density density of the water [kg/m3]
 * @param dischargeCoefficient Cd, 0.995 unless given [1]
 * @returns flow [m3/s]
 * @example smoothBoreFlow(0.0254, 50 * 6894.757, 998.967) // => 0.0132496
 */
export function smoothBoreFlow(
  bore: number,
  pressure: number,
  density: number,
  dischargeCoefficient = SMOOTH_BORE_COEFFICIENT,
): number {
  return jetFlow(bore, dischargeCoefficient, pressure, density);
}

/**
 * Resistance of a smooth-bore tip: total head behind it over flow squared.
 *
 * Formula: r = 1 / (2 g (Cd A)^2), Cd = 29.7 / 29.84 unless given
 * Range: as `smoothBoreFlow`.
 * Errors: RangeError where a figure is not above 0.
 * Source: as `smoothBoreFlow`.
 * @param bore diameter of the tip [m]
 * @param dischargeCoefficient Cd, 0.995 unless given [1]
 * @returns head over flow squared [m/(m3/s)^2]
 * @example smoothBoreResistance(0.0254) // => 200452
 */
export function smoothBoreResistance(bore: number, dischargeCoefficient = SMOOTH_BORE_COEFFICIENT): number {
  return jetResistance(bore, dischargeCoefficient);
}
