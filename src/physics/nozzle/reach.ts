import { FOOT, INCH, PSI } from '../customary.js';

/** Least nozzle pressure for which the rule is stated, psi, and the tip it starts from, in. */
const LEAST_PRESSURE = 30;
const BASE_TIP = 0.75;

/**
 * Greatest horizontal reach of a smooth-bore stream.
 *
 * Formula: S[ft] = NP[psi]/2 + 26 + 5 for each 1/8 in of tip above 3/4 in
 * Range: nozzle pressure above 30 psi, tips of 3/4 in and larger; no wind.
 * Errors: none; undefined where the rule does not hold.
 * Source: trade magazine, questions and answers, August 1960.
 * @param bore diameter of the tip [m]
 * @param pressure nozzle pressure [Pa]
 * @returns reach, or undefined out of range [m]
 * @example smoothBoreReach(0.0254, 50 * 6894.757) // => 18.59
 */
export function smoothBoreReach(bore: number, pressure: number): number | undefined {
  const inches = bore / INCH;
  const psi = pressure / PSI;
  // A tip given in millimetres or through arithmetic may fall short of 3/4 in by rounding alone.
  if (!(psi > LEAST_PRESSURE) || !(inches > BASE_TIP - 1e-9)) return undefined;
  return (psi / 2 + 26 + (5 * (inches - BASE_TIP)) / 0.125) * FOOT;
}
