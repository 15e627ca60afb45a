import type { Dimension, Measure } from '../quantity/dimension.js';
import {
  decisiveDecimals,
  type FormatOptions,
  formatFigure,
  formatMeasure,
  toUnit,
  type UnitSystem,
  unitFor,
} from '../quantity/format.js';
import { checkedNumber } from './checked-number.js';

/** Prints SI values in the reader's units; `field` names the value in the fault that a NaN would be. */
export interface Figures {
  units: UnitSystem;
  measure(field: string, measure: Measure, options?: FormatOptions): string;
  say(field: string, dimension: Dimension, value: number, options?: FormatOptions): string;
  /**
   * A figure that someone laid down, with the digits it was laid down with: 312.5 psi. In other units those never
   * end, so it takes as many as set it apart from the nearest of its rivals (SI values).
   */
  stated(field: string, measure: Measure, rivals?: (number | undefined)[]): string;
  /** `(+21)`: a margin without its unit, beside a figure that has it. */
  margin(field: string, dimension: Dimension, value: number): string;
  /** `21 psi over`, `4 psi short`. */
  overOrShort(field: string, dimension: Dimension, margin: number): string;
}

export function figuresIn(units: UnitSystem): Figures {
  const measure = (field: string, { value, dimension }: Measure, options?: FormatOptions) =>
    formatMeasure({ value: checkedNumber(field, value), dimension }, units, options);
  const say = (field: string, dimension: Dimension, value: number, options?: FormatOptions) =>
    measure(field, { value, dimension }, options);
  return {
    units,
    measure,
    say,
    stated: (field, measured, rivals = []) => {
      const unit = unitFor(measured.dimension, units);
      const value = toUnit(checkedNumber(field, measured.value), unit);
      const rival = nearestTo(measured.value, rivals);
      const apart = () =>
        rival === undefined ? undefined : decisiveDecimals(value, toUnit(rival, unit), unit);
      const decimals = statedDecimals(value) ?? apart();
      return measure(field, measured, decimals === undefined ? {} : { decimals });
    },
    margin: (field, dimension, value) =>
      `(${formatFigure(checkedNumber(field, value), unitFor(dimension, units), { signed: true, limit: 0 })})`,
    overOrShort: (field, dimension, margin) =>
      `${say(field, dimension, Math.abs(margin), { limit: 0 })} ${margin < 0 ? 'short' : 'over'}`,
  };
}

const MOST_STATED_DECIMALS = 2;

/** Decimals that say `value` exactly, but for the dust of a change of units; undefined where few would not do. */
function statedDecimals(value: number): number | undefined {
  for (let decimals = 0; decimals <= MOST_STATED_DECIMALS; decimals++) {
    if (Math.abs(Number(value.toFixed(decimals)) - value) <= 1e-9 * Math.abs(value)) return decimals;
  }
  return undefined;
}

function nearestTo(value: number, rivals: (number | undefined)[]): number | undefined {
  const given = rivals.filter((rival) => rival !== undefined);
  return given.sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0];
}

/** The limit to print a caution's value against: digits are added until the figure falls on its true side. */
export function sideOf(value: Measure, limit: Measure | undefined): FormatOptions {
  return limit && limit.dimension === value.dimension ? { limit: limit.value } : {};
}
