import type { Dimension, Measure } from './dimension.js';
import { toUnit, UNITS, type UnitName } from './units.js';

export { fromUnit, toUnit } from './units.js';

export type UnitSystem = 'us' | 'si';

/** What a quantity is of, where the trade has a unit of its own for that: a bore in inches, fuel by the hour,
 * the running of an engine in hours, a vacuum in inches of mercury. */
export type Role = 'bore' | 'burn' | 'running' | 'vacuum';

const USUAL: Record<UnitSystem, Record<Dimension, UnitName>> = {
  us: {
    length: 'ft',
    pressure: 'psi',
    flow: 'gpm',
    volume: 'gal',
    mass: 'lb',
    power: 'hp',
    force: 'lbf',
    velocity: 'ft/s',
    speed: 'rpm',
    time: 'min',
    temperature: 'degF',
    density: 'lb/ft3',
    ratio: '%',
  },
  si: {
    length: 'm',
    pressure: 'kPa',
    flow: 'L/min',
    volume: 'L',
    mass: 'kg',
    power: 'kW',
    force: 'N',
    velocity: 'm/s',
    speed: 'rpm',
    time: 'min',
    temperature: 'degC',
    density: 'kg/m3',
    ratio: '%',
  },
};

const BY_ROLE: Record<UnitSystem, Record<Role, UnitName>> = {
  us: { bore: 'in', burn: 'gal/h', running: 'h', vacuum: 'inHg' },
  si: { bore: 'mm', burn: 'L/h', running: 'h', vacuum: 'kPa' },
};

/** The unit that a reader of `system` expects. */
export function unitFor(dimension: Dimension, system: UnitSystem, role?: Role): UnitName {
  const special = role && BY_ROLE[system][role];
  return special && UNITS[special].dimension === dimension ? special : USUAL[system][dimension];
}

export interface FormatOptions {
  role?: Role;
  unit?: UnitName;
  /** An SI value that decides something: digits are added until the figure falls on its true side of this. */
  limit?: number;
  /** Decimals instead of the trade's. */
  decimals?: number;
  /** A figure for a sum or a margin, with its plus sign. */
  signed?: boolean;
}

const MOST_DECIMALS = 6;
const SMALL = 10;

function roundTo(value: number, decimals: number): number {
  const rounded = Number(value.toFixed(decimals));
  return rounded === 0 ? 0 : rounded;
}

/** Decimals that the trade prints for `value` in `unit`: whole psi and gpm, one more digit below ten. */
export function decimalsFor(value: number, unit: UnitName): number {
  const { decimals } = UNITS[unit];
  const oneMore = roundTo(Math.abs(value), decimals + 1);
  return oneMore > 0 && oneMore < SMALL ? decimals + 1 : decimals;
}

/** As `decimalsFor`, with more where the rounded figure would fall on the wrong side of `limit` (same unit). */
export function decisiveDecimals(value: number, limit: number, unit: UnitName): number {
  const usual = decimalsFor(value, unit);
  for (let decimals = usual; decimals <= MOST_DECIMALS; decimals++) {
    const shown = Math.sign(roundTo(value, decimals) - roundTo(limit, decimals));
    if (shown === Math.sign(value - limit)) return decimals;
  }
  return usual;
}

/** A figure with its thousands set off; `toLocaleString` would load the languages of the world for it. */
export function grouped(value: number, decimals = 0): string {
  const [whole, fraction] = Math.abs(value).toFixed(decimals).split('.');
  const groups = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${value < 0 ? '-' : ''}${groups}${fraction === undefined ? '' : `.${fraction}`}`;
}

/** A figure that drops the zeros a bore does not need: 1.5 in, 0.716 in, 2 in. */
function trimmed(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** The figure alone, without its unit, of an SI value in `unit`. */
export function formatFigure(si: number, unit: UnitName, options: FormatOptions = {}): string {
  const value = toUnit(si, unit);
  if (!Number.isFinite(value)) throw new RangeError(`no figure for ${si} in ${unit}`);
  const limit = options.limit === undefined ? undefined : toUnit(options.limit, unit);
  const decimals =
    options.decimals ??
    (limit === undefined ? decimalsFor(value, unit) : decisiveDecimals(value, limit, unit));
  const figure = grouped(roundTo(value, decimals), decimals);
  const shown = options.role === 'bore' && options.decimals === undefined ? trimmed(figure) : figure;
  return options.signed && roundTo(value, decimals) > 0 ? `+${shown}` : shown;
}

/** A measure as a reader of `system` writes it: `250 psi`, `4,300 ft`, `1.5 in`. */
export function formatMeasure(measure: Measure, system: UnitSystem, options: FormatOptions = {}): string {
  const unit = options.unit ?? unitFor(measure.dimension, system, options.role);
  return `${formatFigure(measure.value, unit, options)} ${unit}`;
}
