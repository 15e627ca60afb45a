import type { PrintedUnit } from './problem.js';

/** Decimals that the trade prints of a unit for values of ten and more; smaller ones get one more. */
const DECIMALS: Partial<Record<PrintedUnit, number>> = {
  'ft³': 0,
  'm³': 1,
  min: 1,
  mi: 1,
  km: 1,
  inHg: 1,
  mmHg: 0,
  'lb/gal': 2,
  'kg/L': 2,
  '': 2,
};

/** Shown one decimal further than an answer, so that a step can be followed. */
export function decimalsOf(value: number, unit: PrintedUnit): number {
  const decimals = DECIMALS[unit] ?? 0;
  return Math.abs(value) < 9.95 ? decimals + 1 : decimals;
}

/** A number with thousands apart, rounded half away from zero; no locale has a say in it. */
export function number(value: number, decimals: number): string {
  const rounded = roundTo(value, decimals);
  const [whole, fraction] = Math.abs(rounded).toFixed(decimals).split('.');
  const groups = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${rounded < 0 ? '-' : ''}${groups}${fraction === undefined ? '' : `.${fraction}`}`;
}

export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const size = Math.floor(Math.abs(value) * scale * (1 + 4e-16) + 0.5) / scale;
  return size === 0 ? 0 : Math.sign(value) * size;
}

/** As few decimals as a figure of the trade needs: 300, 0.434, 15.5. */
export function plain(value: number): string {
  const text = number(value, 4);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

export function withUnit(text: string, unit: PrintedUnit): string {
  if (unit === '') return text;
  return unit === '%' ? `${text} %` : `${text} ${unit}`;
}

/** A given as printed: `300 ft`, `1-1/2 in`, `0.716 in`. */
export function figure(value: number, unit: PrintedUnit): string {
  return withUnit(unit === 'in' ? inches(value) : plain(value), unit);
}

/** A bore as the trade writes it, in eighths and sixteenths where it is one. */
export function inches(value: number): string {
  for (const parts of [1, 2, 4, 8, 16]) {
    const count = value * parts;
    if (Math.abs(count - Math.round(count)) > 1e-9) continue;
    const whole = Math.floor(Math.round(count) / parts);
    const rest = Math.round(count) - whole * parts;
    if (rest === 0) return `${whole}`;
    return whole === 0 ? `${rest}/${parts}` : `${whole}-${rest}/${parts}`;
  }
  return plain(value);
}

/** A worked value as the key prints it. */
export function worked(value: number, unit: PrintedUnit, decimals = decimalsOf(value, unit)): string {
  return withUnit(number(value, decimals), unit);
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

export function count(value: number): string {
  return COUNTS[value] ?? `${value}`;
}

export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
