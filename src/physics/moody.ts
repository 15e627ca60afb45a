import {
  colebrookLogSlope,
  colebrookTransmission,
  LAMINAR_LIMIT,
  TURBULENT_LIMIT,
} from './friction-factor.js';
import { requirePositive, requireWithin } from './range.js';

/** Relative roughness up to which friction is known. */
export const ROUGHEST_PART = 0.05;

const LAMINAR_SLOPE = 64;
const SPAN = TURBULENT_LIMIT - LAMINAR_LIMIT;

/** What friction comes to at a Reynolds number: f Re^2, to which the loss is proportional, and its slope by Re. */
export interface FrictionAtReynolds {
  value: number;
  slope: number;
}

/**
 * Friction from rest to full turbulence for one relative roughness, as y(Re) = f Re^2. The loss is proportional to y, so y
 * and its slope have to be continuous and to grow with flow if a network is to have one answer and Newton's method is to find it.
 *
 * Formula: laminar to Re 2000: y = 64 Re. Turbulent from Re 4000: y = f Re^2, f by Colebrook. Between, with t = (Re - 2000)/2000,
 * the slope rises from s0 = 64 to s1, that of Colebrook at 4000, as s = s1 - (s1 - s0)(1 - t)^n, with n such that y meets both
 * ends: n + 1 = (s1 - s0)/(s1 - mean slope). Value and slope are continuous and both increase.
 * Range: relative roughness 0 to 0.05; Re 0 or above. Between 2000 and 4000 real flow is unsteady and any law is a convention.
 * Errors: RangeError where the roughness is out of range.
 * Source: laminar and turbulent parts as in EPANET 2.2 and Colebrook (1939); the curve between is this program's own: common
 * practice (a smooth join), no source.
 */
export class MoodyCurve {
  readonly relativeRoughness: number;
  readonly #turbulentSlope: number;
  readonly #power: number;
  /** 1/sqrt(f) where it was evaluated last, from which the next is mostly not far. */
  #transmission = 0;

  /** @param relativeRoughness roughness over diameter [1] */
  constructor(relativeRoughness: number) {
    requireWithin('relative roughness', relativeRoughness, 0, ROUGHEST_PART, '');
    this.relativeRoughness = relativeRoughness;
    const x = colebrookTransmission(TURBULENT_LIMIT, relativeRoughness);
    const y = (TURBULENT_LIMIT / x) ** 2;
    const slope = (y / TURBULENT_LIMIT) * (2 + colebrookLogSlope(TURBULENT_LIMIT, relativeRoughness, x));
    const mean = (y - LAMINAR_SLOPE * LAMINAR_LIMIT) / SPAN;
    this.#turbulentSlope = slope;
    this.#power = (slope - LAMINAR_SLOPE) / (slope - mean);
  }

  /** Writes f Re^2 and its slope by Re at a Reynolds number of 0 or above. */
  evaluate(reynolds: number, out: FrictionAtReynolds): void {
    if (reynolds >= TURBULENT_LIMIT) {
      const x = colebrookTransmission(reynolds, this.relativeRoughness, this.#transmission);
      this.#transmission = x;
      const root = reynolds / x;
      const y = root * root;
      out.value = y;
      out.slope = (y / reynolds) * (2 + colebrookLogSlope(reynolds, this.relativeRoughness, x));
    } else if (reynolds > LAMINAR_LIMIT) {
      const t = (reynolds - LAMINAR_LIMIT) / SPAN;
      const rise = this.#turbulentSlope - LAMINAR_SLOPE;
      const tail = (1 - t) ** (this.#power - 1);
      out.slope = this.#turbulentSlope - rise * tail;
      out.value =
        LAMINAR_SLOPE * LAMINAR_LIMIT +
        SPAN * (this.#turbulentSlope * t - (rise / this.#power) * (1 - tail * (1 - t)));
    } else {
      out.value = LAMINAR_SLOPE * reynolds;
      out.slope = LAMINAR_SLOPE;
    }
  }
}

/**
 * Darcy friction factor in any regime: laminar, transition, turbulent.
 *
 * Formula: y(Re) / Re^2 of `MoodyCurve`
 * Range: Re above 0 and up to 1e9; relative roughness 0 to 0.05.
 * Errors: RangeError outside the range.
 * Source: as `MoodyCurve`.
 * @param reynolds Reynolds number [1]
 * @param relativeRoughness roughness over diameter [1]
 * @returns Darcy friction factor [1]
 * @example frictionFactor(1e5, 1e-4) // => 0.0185139
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  requirePositive('Reynolds number', reynolds, '');
  requireWithin('Reynolds number', reynolds, 0, 1e9, '');
  const out = { value: 0, slope: 0 };
  new MoodyCurve(relativeRoughness).evaluate(reynolds, out);
  return out.value / (reynolds * reynolds);
}
