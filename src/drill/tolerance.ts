import { decimalsOf, plain, withUnit } from './print.js';
import type { PrintedUnit } from './problem.js';
import type { UnitRules } from './rules/rule-set.js';

/** A band for a small figure stays within this part of it, so that a slip is not marked right. */
const WIDEST = 0.1;
/** Other figures than pressures may be off by this at least: the last digit that is printed. */
const LAST_DIGIT = 1;

/**
 * Half the width of the band that is marked right: for a pressure the rule set's absolute or relative band, whichever is wider, but no
 * wider than a tenth of the answer; for anything else the relative band. Never less than one of the last digit printed.
 */
export function toleranceOf(answer: number, unit: PrintedUnit, rules: UnitRules, relative?: number): number {
  const part = Math.abs(answer) * (relative ?? rules.tolerance.relative);
  const digit = LAST_DIGIT * 10 ** -decimalsOf(answer, unit);
  const pressure = unit === 'psi' || unit === 'kPa';
  const band = pressure
    ? Math.min(Math.max(rules.tolerance.pressure, part), Math.max(part, WIDEST * Math.abs(answer)))
    : part;
  return neat(Math.max(band, digit));
}

export function toleranceText(tolerance: number, unit: PrintedUnit): string {
  return `± ${withUnit(plain(tolerance), unit)}`;
}

/** Two figures, so that the band can be printed as it is used. */
function neat(value: number): number {
  const scale = 10 ** (1 - Math.floor(Math.log10(value)));
  return Math.max(1, Math.floor(value * scale * (1 + 1e-12))) / scale;
}
