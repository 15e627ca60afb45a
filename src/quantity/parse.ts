import type { Dimension } from './dimension.js';
import { nearest } from './nearest.js';
import { readNumber } from './number.js';
import { findUnit, fromUnit, UNITS, type UnitName, unitSpellings, unitsOf } from './units.js';

interface Kind {
  /** With its article, as a sentence needs it. */
  name: string;
  example: string;
  /** What a bare number most likely meant. */
  unit: UnitName;
}

export const KINDS: Record<Dimension, Kind> = {
  length: { name: 'a length', example: '300 ft', unit: 'ft' },
  pressure: { name: 'a pressure', example: '250 psi', unit: 'psi' },
  flow: { name: 'a flow', example: '150 gpm', unit: 'gpm' },
  volume: { name: 'a volume', example: '500 gal', unit: 'gal' },
  mass: { name: 'a weight', example: '165 lb', unit: 'lb' },
  power: { name: 'a power', example: '23 hp', unit: 'hp' },
  force: { name: 'a force', example: '80 lbf', unit: 'lbf' },
  velocity: { name: 'a velocity', example: '15 ft/s', unit: 'ft/s' },
  speed: { name: 'a speed', example: '3,600 rpm', unit: 'rpm' },
  time: { name: 'a time', example: '20 min', unit: 'min' },
  temperature: { name: 'a temperature', example: '60 degF', unit: 'degF' },
  density: { name: 'a density', example: '62.4 lb/ft3', unit: 'lb/ft3' },
  ratio: { name: 'a percentage', example: '80 %', unit: '%' },
};

export interface ParseOptions {
  /** The unit that a bare number most likely meant, where it is not the usual one: `in` for a bore. */
  unit?: UnitName;
  /** A text to hold up as a model instead of the usual one. */
  example?: string;
}

/** The text to hold up as a model. */
export function exampleOf(dimension: Dimension, options: ParseOptions = {}): string {
  const { example } = KINDS[dimension];
  if (options.example !== undefined || options.unit === undefined) return options.example ?? example;
  return options.unit === 'in' ? '1.5 in' : `${example.split(' ')[0]} ${options.unit}`;
}

/** The unit in which a field's own example stands: hours of running, not minutes. */
function unitOfExample(example: string | undefined, dimension: Dimension): UnitName | undefined {
  const number = example === undefined ? undefined : readNumber(example);
  const unit = number && 'rest' in number ? findUnit(number.rest) : undefined;
  return unit !== undefined && UNITS[unit].dimension === dimension ? unit : undefined;
}

export type Parsed = { value: number; unit: UnitName } | { problem: string };

const LONGEST_QUOTE = 40;

function quote(text: string): string {
  const flat = text.replace(/\s+/g, ' ');
  return flat.length > LONGEST_QUOTE ? `${flat.slice(0, LONGEST_QUOTE - 3)}...` : flat;
}

function describe(input: unknown): string {
  if (input === null || input === undefined || input === '') return 'nothing stands here';
  if (Array.isArray(input)) return 'a list stands here';
  if (typeof input === 'object') return 'a mapping stands here';
  return `${quote(String(input))} is no quantity`;
}

/**
 * A reader's text as an SI value of the wanted kind, or one sentence that says what is wrong and what would do.
 * Never throws, whatever it is given.
 */
export function parseQuantity(input: unknown, dimension: Dimension, options: ParseOptions = {}): Parsed {
  const kind = KINDS[dimension];
  const unit = options.unit ?? unitOfExample(options.example, dimension) ?? kind.unit;
  const example = exampleOf(dimension, options);
  const wanted = `${kind.name} is wanted, for instance ${example}`;

  if (typeof input === 'number' || typeof input === 'bigint') {
    return { problem: noUnit(String(input), Number(input), dimension, unit) };
  }
  if (typeof input !== 'string' || input.trim() === '') return { problem: `${describe(input)}; ${wanted}` };

  const shown = quote(input.trim());
  const number = readNumber(input.trim());
  if ('fault' in number) {
    if (number.fault === 'none') return { problem: `${shown} does not start with a number; ${wanted}` };
    if (number.fault === 'comma') {
      const meant = `${number.decimal} ${number.rest || unit}`;
      return {
        problem: `${shown}: a comma only sets off thousands (4,300 ft); did you mean ${quote(meant)}?`,
      };
    }
    if (number.fault === 'zero_denominator') return { problem: `${shown} divides by zero; ${wanted}` };
    if (number.fault === 'too_large')
      return { problem: `${shown} is larger than any number we hold; ${wanted}` };
    return { problem: `${shown} is no number that we can read with certainty; ${wanted}` };
  }
  if (number.rest === '') return { problem: noUnit(number.text, number.value, dimension, unit) };

  const name = findUnit(number.rest);
  if (name === undefined) return { problem: unknownUnit(number.text, number.rest, dimension, wanted) };
  if (UNITS[name].dimension !== dimension) {
    return {
      problem: `${shown} is ${KINDS[UNITS[name].dimension].name}; ${wanted}${columnHint(number.text, name, dimension)}`,
    };
  }
  const value = fromUnit(number.value, name);
  if (!Number.isFinite(value)) return { problem: `${shown} is larger than any number we hold; ${wanted}` };
  return { value, unit: name };
}

function noUnit(text: string, value: number, dimension: Dimension, unit: UnitName): string {
  if (!Number.isFinite(value)) {
    return `${quote(text)} is no number with a unit; ${KINDS[dimension].name} is wanted, for instance ${KINDS[dimension].example}`;
  }
  const meant =
    dimension === 'ratio' && Math.abs(value) < 1 && value !== 0
      ? `${Number((value * 100).toPrecision(12))} %`
      : `${quote(text)} ${unit}`;
  const others = unitsOf(dimension).filter((name) => name !== unit);
  const also = others.length > 0 ? ` (${others.join(', ')} would do as well)` : '';
  return `${quote(text)} has no unit: did you mean ${meant}?${also}`;
}

function unknownUnit(number: string, rest: string, dimension: Dimension, wanted: string): string {
  const sameKind = unitsOf(dimension).flatMap((name) => [name as string, ...UNITS[name].spellings]);
  const close = nearest(rest, sameKind) ?? nearest(rest, unitSpellings());
  const unit = close === undefined ? undefined : findUnit(close);
  const fault = `${quote(`${number} ${rest}`)}: ${quote(rest)} is no unit we know`;
  return unit === undefined ? `${fault}; ${wanted}` : `${fault}: did you mean ${quote(number)} ${unit}?`;
}

/** A height of water is written like a length, and people mean it as a pressure. */
function columnHint(number: string, name: UnitName, dimension: Dimension): string {
  return dimension === 'pressure' && (name === 'ft' || name === 'm') ? ` or ${number} ${name} of water` : '';
}
