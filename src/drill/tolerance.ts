import { plain, withUnit } from './print.js';
import type { PrintedUnit } from './problem.js';
import type { UnitRules } from './rules/rule-set.js';

/** A band for a small figure stays within this part of it, so that a slip is not marked right. */
const WIDEST = 0.1;
/** Lifts and lengths in metres below this are read to a tenth. */
const SMALL_METRES = 20;

/** The whole figure in which a unit is read and a tolerance is stated. */
export function grainOf(answer: number, unit: PrintedUnit): number {
  if (unit === 'm') return Math.abs(answer) < SMALL_METRES ? 0.1 : 1;
  return unit === '' ? 0.01 : 1;
}

/** The least band that takes in the answer as it comes out, rounded to a whole figure, and rounded as the rule set has it. */
export function leastTolerance(answer: number, unit: PrintedUnit, rounding = 0): number {
  const grain = grainOf(answer, unit);
  return grain * Math.max(1, Math.ceil(rounding / 2 / grain - 1e-9));
}

export interface ToleranceFacts {
  /** How far the nearest slip's answer lies away. */
  readonly nearest: number;
  /** What the rule set rounds the answer to; 0 where it does not. */
  readonly rounding?: number;
  /** In place of the rule set's band. */
  readonly relative?: number;
  readonly absolute?: number;
}

/**
 * Half the width of the band that is marked right, a whole figure of the unit: for a pressure the rule set's absolute or
 * relative band, whichever is wider, but no wider than a tenth of the answer; for anything else the relative band. Always
 * less than half the way to the nearest slip; undefined where that leaves no room for a rounded answer.
 */
export function toleranceOf(
  answer: number,
  unit: PrintedUnit,
  rules: UnitRules,
  { nearest, rounding = 0, relative, absolute }: ToleranceFacts,
): number | undefined {
  const grain = grainOf(answer, unit);
  const part = Math.abs(answer) * (relative ?? rules.tolerance.relative);
  const pressure = unit === 'psi' || unit === 'kPa';
  const usual = pressure
    ? Math.min(Math.max(rules.tolerance.pressure, part), Math.max(part, WIDEST * Math.abs(answer)))
    : part;
  const least = leastTolerance(answer, unit, rounding);
  const below = grain * (Math.ceil(nearest / 2 / grain - 1e-6) - 1);
  if (!(below >= least - 1e-9)) return undefined;
  const band = grain * Math.floor((absolute ?? usual) / grain + 1e-9);
  return neat(Math.min(Math.max(band, least), below));
}

export function toleranceText(tolerance: number, unit: PrintedUnit): string {
  return `± ${withUnit(plain(tolerance), unit)}`;
}

/** Without the last digits that tenths leave behind. */
const neat = (value: number): number => Number(value.toPrecision(9));
