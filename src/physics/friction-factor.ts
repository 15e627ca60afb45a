import { requirePositive, requireWithin } from './range.js';

const TWO_OVER_LN10 = 2 / Math.LN10;
/** Reynolds number up to which flow is laminar, and from which it is turbulent. Source: EPANET 2.2 (2000 and 4000). */
export const LAMINAR_LIMIT = 2000;
export const TURBULENT_LIMIT = 4000;

/** A step of Newton's method below this part of the whole leaves it right to the last digit or two. */
const SETTLED = 1e-6;

/**
 * 1/sqrt(f) by Colebrook, by Newton's method until it stops moving: two or three rounds. No checks; the hot path.
 *
 * Formula: x = -2 log10(e/3.7 + 2.51 x / Re), x = 1/sqrt(f), e = roughness / diameter
 * Range: Re above 1000, e from 0 to 0.1.
 * Errors: none are thrown; out of range the figure means nothing.
 * Source: Colebrook (1939), J. Inst. Civ. Eng. 11, from memory; form as in a university hydraulics text, ch. 4.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @param near 1/sqrt(f) at a Reynolds number nearby, to begin from; without it, or at 0, Haaland's explicit formula is [1]
 * @returns 1/sqrt(f) [1]
 * @example colebrookTransmission(1e5, 1e-4) // => 7.34939
 */
export function colebrookTransmission(reynolds: number, relativeRoughness: number, near = 0): number {
  const a = relativeRoughness / 3.7;
  const b = 2.51 / reynolds;
  let x = near > 0 ? near : -1.8 * Math.log10(a ** 1.11 + 6.9 / reynolds);
  for (let round = 0; round < 12; round++) {
    const inner = a + b * x;
    const change = (x + TWO_OVER_LN10 * Math.log(inner)) / (1 + (TWO_OVER_LN10 * b) / inner);
    x -= change;
    if (change < SETTLED * x && change > -SETTLED * x) break;
  }
  return x;
}

/**
 * d ln f / d ln Re along Colebrook's curve, from the same 1/sqrt(f). No checks; the hot path.
 *
 * Formula: -2 u / (x (1 + u/x)), u = (2/ln 10) b x / (e/3.7 + b x), b = 2.51/Re
 * Range: as `colebrookTransmission`.
 * Errors: none.
 * Source: derivative of Colebrook's equation.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @param transmission 1/sqrt(f) at that point [1]
 * @returns slope of ln f against ln Re, 0 or below [1]
 * @example colebrookLogSlope(1e5, 0, colebrookTransmission(1e5, 0)) // => -0.2087
 */
export function colebrookLogSlope(reynolds: number, relativeRoughness: number, transmission: number): number {
  const b = 2.51 / reynolds;
  const u = (TWO_OVER_LN10 * b * transmission) / (relativeRoughness / 3.7 + b * transmission);
  return (-2 * u) / (transmission + u);
}

/**
 * Darcy friction factor of turbulent flow by Colebrook, to machine precision.
 *
 * Formula: 1/sqrt(f) = -2 log10(e/3.7 + 2.51/(Re sqrt f))
 * Range: Re 2000 to 1e9 (the law itself from 4000), e from 0 to 0.1.
 * Errors: RangeError outside the range.
 * Source: Colebrook (1939), from memory; form as in a university hydraulics text, ch. 4.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @returns Darcy friction factor [1]
 * @example colebrook(1e5, 1e-4) // => 0.01851386607747
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  requireWithin('Reynolds number', reynolds, LAMINAR_LIMIT, 1e9, '');
  requireWithin('relative roughness', relativeRoughness, 0, 0.1, '');
  return colebrookTransmission(reynolds, relativeRoughness) ** -2;
}

/**
 * Darcy friction factor of turbulent flow by Swamee and Jain's explicit formula, for checks.
 *
 * Formula: 1/sqrt(f) = -2 log10(e/3.7 + 5.74/Re^0.9)
 * Range: Re 5e3 to 1e8, e 1e-6 to 0.05, within 3 % of Colebrook; from memory.
 * Errors: none.
 * Source: form as in EPANET 2.2 source code and a university hydraulics text, ch. 4.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @returns Darcy friction factor [1]
 * @example swameeJain(1e5, 1e-4) // => 0.018452445
 */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  return (-2 * Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9)) ** -2;
}

/**
 * Darcy friction factor of turbulent flow by Haaland's explicit formula, for checks.
 *
 * Formula: 1/sqrt(f) = -1.8 log10((e/3.7)^1.11 + 6.9/Re)
 * Range: Re 4e3 to 1e8, e 1e-6 to 0.05, within 2 % of Colebrook; from memory.
 * Errors: none.
 * Source: form as in a university hydraulics text, ch. 4.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @returns Darcy friction factor [1]
 * @example haaland(1e5, 1e-4) // => 0.018265053
 */
export function haaland(reynolds: number, relativeRoughness: number): number {
  return (-1.8 * Math.log10((relativeRoughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
}

/**
 * Darcy friction factor of laminar flow.
 *
 * Formula: f = 64 / Re
 * Range: Re above 0 and up to 2000.
 * Errors: RangeError outside the range.
 * Source: Hagen-Poiseuille; limit as in EPANET 2.2.
 * @param reynolds Reynolds number [1]
 * @returns Darcy friction factor [1]
 * @example laminarFriction(1600) // => 0.04
 */
export function laminarFriction(reynolds: number): number {
  requirePositive('Reynolds number', reynolds, '');
  requireWithin('Reynolds number', reynolds, 0, LAMINAR_LIMIT, '');
  return 64 / reynolds;
}
