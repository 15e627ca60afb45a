import type { Dimension, Measure } from '../quantity/dimension.js';
import {
  type FormatOptions,
  formatFigure,
  formatMeasure,
  type UnitSystem,
  unitFor,
} from '../quantity/format.js';
import { checkedNumber } from './checked-number.js';

/** Prints SI values in the reader's units; `field` names the value in the fault that a NaN would be. */
export interface Figures {
  units: UnitSystem;
  measure(field: string, measure: Measure, options?: FormatOptions): string;
  say(field: string, dimension: Dimension, value: number, options?: FormatOptions): string;
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
    margin: (field, dimension, value) =>
      `(${formatFigure(checkedNumber(field, value), unitFor(dimension, units), { signed: true, limit: 0 })})`,
    overOrShort: (field, dimension, margin) =>
      `${say(field, dimension, Math.abs(margin), { limit: 0 })} ${margin < 0 ? 'short' : 'over'}`,
  };
}

/** The limit to print a caution's value against: digits are added until the figure falls on its true side. */
export function sideOf(value: Measure, limit: Measure | undefined): FormatOptions {
  return limit && limit.dimension === value.dimension ? { limit: limit.value } : {};
}
