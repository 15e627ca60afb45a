import type { Measure } from '../quantity/dimension.js';
import type { FormatOptions } from '../quantity/format.js';
import type { Caution, Statement } from '../study/answer.js';
import { InternalFault } from './checked-number.js';
import { type Figures, sideOf } from './figures.js';

type Values = Record<string, Measure | string | undefined>;

/** Lengths across a bore are written in inches or millimetres, and only the placeholder's name tells them apart. */
const ACROSS = /bore|diameter/;

function fill(template: string, values: Values, figures: Figures, options: FormatOptions = {}): string {
  return template.replace(/\{\{|\}\}|\{(\w+)\}/g, (found, name: string | undefined) => {
    if (name === undefined) return found[0];
    const value = Object.hasOwn(values, name) ? values[name] : undefined;
    if (value === undefined) throw new InternalFault(`sentence "${template}" has no value for {${name}}`);
    if (typeof value === 'string') return value;
    if (name === 'limit' || name.startsWith('stated_')) return figures.stated(name, value, [options.limit]);
    const decisive = name === 'value' ? options : {};
    return figures.measure(name, value, ACROSS.test(name) ? { role: 'bore', ...decisive } : decisive);
  });
}

export function statementText(statement: Statement, figures: Figures): string {
  return fill(statement.template, statement.values ?? {}, figures);
}

/** A caution's `message` or `action`, with its value on the true side of its limit. */
export function cautionText(caution: Caution, part: 'message' | 'action', figures: Figures): string {
  const { at, value, limit, values } = caution;
  const options = value ? sideOf(value, limit) : {};
  const text = fill(caution[part], { at, value, limit, ...values }, figures, options);
  return text.charAt(0).toUpperCase() + text.slice(1);
}
