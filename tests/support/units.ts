/** US customary units in SI (NIST Special Publication 811, appendix B.8, from memory). */
export const FOOT = 0.3048;
export const INCH = 0.0254;
export const GALLON = 231 * INCH ** 3;
export const GPM = GALLON / 60;
export const CUBIC_FOOT = FOOT ** 3;
/** lbf/in2 in Pa: 0.45359237 kg x 9.80665 m/s2 on a square inch. */
export const PSI = (0.45359237 * 9.80665) / INCH ** 2;
/** Density of water at 60 degF, kg/m3, from memory; the tests need one figure and no more of it. */
export const WATER_DENSITY = 999.0;
export const GRAVITY = 9.80665;
/** Metres of that water that stand for one psi. */
export const HEAD_PER_PSI = PSI / (WATER_DENSITY * GRAVITY);
