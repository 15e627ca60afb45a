import type { Dimension } from './dimension.js';

/** Standard gravity, m/s2, exact (3rd CGPM, 1901; from memory). */
export const STANDARD_GRAVITY = 9.80665;

const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const US_GALLON = 3.785411784e-3;
const IMPERIAL_GALLON = 4.54609e-3;
const POUND_FORCE = POUND * STANDARD_GRAVITY;
const WATER_AT_4_DEGC = 1000;
const MERCURY_AT_0_DEGC = 13595.1;

const YARD_AND_POUND = 'international yard and pound agreement, 1959, exact (from memory)';
const US_GALLON_SOURCE = '231 cubic inches, NWCG Firefighter Math ch. 3; exact';
const IMPERIAL_SOURCE = '4.54609 litres, UK Weights and Measures Act 1985, exact (from memory)';
const SI_SOURCE = 'SI Brochure, exact (from memory)';
const CONVENTIONAL_WATER =
  'conventional column: 1000 kg/m3 at standard gravity, NIST SP 811 App. B (from memory)';

export interface Unit {
  dimension: Dimension;
  /** SI value of one unit; the SI value of x units is `x * factor + offset`. */
  factor: number;
  offset: number;
  /** Decimals that the trade prints for values of ten and more; smaller values get one more. */
  decimals: number;
  /** Where the factor comes from. */
  source: string;
  /** Other ways to write it, in lower case. */
  spellings: readonly string[];
}

function unit(
  dimension: Dimension,
  factor: number,
  decimals: number,
  source: string,
  spellings: readonly string[] = [],
  offset = 0,
): Unit {
  return { dimension, factor, offset, decimals, source, spellings };
}

/** Every unit that the program reads or prints, under the name that it prints. */
export const UNITS = {
  ft: unit('length', FOOT, 0, YARD_AND_POUND, ['foot', 'feet', "'", '′', '’']),
  in: unit('length', INCH, 2, YARD_AND_POUND, ['inch', 'inches', '"', '″', '”', "''", '’’', '′′']),
  mi: unit('length', 5280 * FOOT, 1, YARD_AND_POUND, ['mile', 'miles']),
  m: unit('length', 1, 0, SI_SOURCE, ['metre', 'metres', 'meter', 'meters']),
  mm: unit('length', 1e-3, 1, SI_SOURCE, ['millimetre', 'millimetres', 'millimeter', 'millimeters']),
  cm: unit('length', 1e-2, 1, SI_SOURCE, ['centimetre', 'centimetres', 'centimeter', 'centimeters']),
  km: unit('length', 1e3, 1, SI_SOURCE, ['kilometre', 'kilometres', 'kilometer', 'kilometers']),

  psi: unit('pressure', POUND_FORCE / INCH ** 2, 0, `pound-force per square inch, ${YARD_AND_POUND}`, [
    'psig',
    'lb/in2',
    'lbf/in2',
  ]),
  bar: unit('pressure', 1e5, 1, SI_SOURCE, ['bars', 'barg']),
  kPa: unit('pressure', 1e3, 0, SI_SOURCE),
  MPa: unit('pressure', 1e6, 2, SI_SOURCE),
  Pa: unit('pressure', 1, 0, SI_SOURCE),
  'ft of water': unit('pressure', WATER_AT_4_DEGC * STANDARD_GRAVITY * FOOT, 0, CONVENTIONAL_WATER, [
    'feet of water',
    'foot of water',
    'fth2o',
    'ft h2o',
    'ft water',
    'ft of head',
    'feet of head',
  ]),
  'm of water': unit('pressure', WATER_AT_4_DEGC * STANDARD_GRAVITY, 1, CONVENTIONAL_WATER, [
    'metres of water',
    'meters of water',
    'metre of water',
    'meter of water',
    'mh2o',
    'm h2o',
    'm water',
  ]),
  inHg: unit(
    'pressure',
    MERCURY_AT_0_DEGC * STANDARD_GRAVITY * INCH,
    1,
    'conventional column: mercury of 13595.1 kg/m3 at standard gravity, NIST SP 811 App. B (from memory)',
    ['in hg', 'in of mercury', 'inches of mercury', 'inch of mercury'],
  ),

  gpm: unit('flow', US_GALLON / 60, 0, US_GALLON_SOURCE, [
    'gal/min',
    'usgpm',
    'us gpm',
    'gallons per minute',
  ]),
  impgpm: unit('flow', IMPERIAL_GALLON / 60, 0, IMPERIAL_SOURCE, ['igpm', 'imp gpm', 'impgal/min']),
  'gal/h': unit('flow', US_GALLON / 3600, 0, US_GALLON_SOURCE, ['gph', 'gal/hr', 'gallons per hour']),
  'L/min': unit('flow', 1e-3 / 60, 0, SI_SOURCE, ['lpm', 'litres per minute', 'liters per minute']),
  'L/s': unit('flow', 1e-3, 1, SI_SOURCE, ['lps', 'litres per second', 'liters per second']),
  'L/h': unit('flow', 1e-3 / 3600, 0, SI_SOURCE, ['lph', 'l/hr', 'litres per hour', 'liters per hour']),
  'm3/h': unit('flow', 1 / 3600, 1, SI_SOURCE, ['m³/h', 'm3/hr', 'm^3/h']),
  'm3/s': unit('flow', 1, 4, SI_SOURCE, ['m³/s', 'm^3/s']),

  gal: unit('volume', US_GALLON, 0, US_GALLON_SOURCE, ['gallon', 'gallons', 'us gal', 'usgal', 'gals']),
  impgal: unit('volume', IMPERIAL_GALLON, 0, IMPERIAL_SOURCE, [
    'imp gal',
    'imperial gallon',
    'imperial gallons',
  ]),
  L: unit('volume', 1e-3, 0, SI_SOURCE, ['litre', 'litres', 'liter', 'liters']),
  m3: unit('volume', 1, 1, SI_SOURCE, ['m³', 'm^3']),

  lb: unit('mass', POUND, 0, YARD_AND_POUND, ['lbs', 'pound', 'pounds']),
  kg: unit('mass', 1, 0, SI_SOURCE, ['kilogram', 'kilograms']),

  hp: unit('power', 550 * FOOT * POUND_FORCE, 0, `550 ft lbf/s, NIST SP 811 App. B (from memory)`, [
    'bhp',
    'horsepower',
  ]),
  kW: unit('power', 1e3, 0, SI_SOURCE, ['kilowatt', 'kilowatts']),
  W: unit('power', 1, 0, SI_SOURCE, ['watt', 'watts']),

  lbf: unit('force', POUND_FORCE, 0, `pound at standard gravity, ${YARD_AND_POUND}`),
  N: unit('force', 1, 0, SI_SOURCE, ['newton', 'newtons']),

  'ft/s': unit('velocity', FOOT, 1, YARD_AND_POUND, ['fps', 'ft/sec', 'feet per second']),
  mph: unit('velocity', (5280 * FOOT) / 3600, 0, YARD_AND_POUND, ['mi/h', 'miles per hour']),
  'km/h': unit('velocity', 1 / 3.6, 0, SI_SOURCE, [
    'kph',
    'kmh',
    'kilometres per hour',
    'kilometers per hour',
  ]),
  'm/s': unit('velocity', 1, 1, SI_SOURCE, ['m/sec', 'metres per second', 'meters per second']),

  rpm: unit('speed', 1, 0, 'revolutions per minute, held as such', ['r/min', 'rev/min']),

  min: unit('time', 60, 0, SI_SOURCE, ['minute', 'minutes', 'mins']),
  h: unit('time', 3600, 0, SI_SOURCE, ['hr', 'hrs', 'hour', 'hours']),
  s: unit('time', 1, 0, SI_SOURCE, ['sec', 'secs', 'second', 'seconds']),

  degF: unit(
    'temperature',
    5 / 9,
    0,
    '32 degF is 0 degC, 180 degrees to 100 (NIST SP 811 App. B, from memory)',
    ['°f', 'f', 'deg f', 'º f', '° f', 'ºf', 'degrees f', 'fahrenheit'],
    273.15 - (32 * 5) / 9,
  ),
  degC: unit(
    'temperature',
    1,
    0,
    SI_SOURCE,
    ['°c', 'c', 'deg c', 'º c', '° c', 'ºc', 'degrees c', 'celsius'],
    273.15,
  ),
  K: unit('temperature', 1, 0, SI_SOURCE, ['kelvin']),

  'lb/ft3': unit('density', POUND / FOOT ** 3, 1, YARD_AND_POUND, ['lb/ft³', 'lb/cu ft', 'pcf', 'lb/ft^3']),
  'kg/m3': unit('density', 1, 0, SI_SOURCE, ['kg/m³', 'kg/m^3']),

  '%': unit('ratio', 1e-2, 0, 'hundredth', ['percent', 'per cent', 'pct']),
} as const satisfies Record<string, Unit>;

export type UnitName = keyof typeof UNITS;

export const UNIT_NAMES = Object.keys(UNITS) as UnitName[];

let bySpelling: Map<string, UnitName> | undefined;

function spellings(): Map<string, UnitName> {
  if (!bySpelling) {
    bySpelling = new Map();
    for (const name of UNIT_NAMES) {
      for (const spelling of [name.toLowerCase(), ...UNITS[name].spellings]) bySpelling.set(spelling, name);
    }
  }
  return bySpelling;
}

/** The unit that a reader's text means, whatever its case and spacing; undefined where none does. */
export function findUnit(text: string): UnitName | undefined {
  const known = spellings();
  const plain = text.toLowerCase().replace(/\s+/g, ' ').replace(/\.$/, '');
  return known.get(plain) ?? known.get(plain.replace(/ ?\/ ?/g, '/'));
}

/** All the ways to write a unit, for finding the nearest one to a misspelling. */
export function unitSpellings(): string[] {
  return [...UNIT_NAMES, ...spellings().keys()];
}

export function unitsOf(dimension: Dimension): UnitName[] {
  return UNIT_NAMES.filter((name) => UNITS[name].dimension === dimension);
}

/** `value` in `name` units, as SI. */
export function fromUnit(value: number, name: UnitName): number {
  const { factor, offset } = UNITS[name];
  return value * factor + offset;
}

/** An SI value in `name` units. */
export function toUnit(si: number, name: UnitName): number {
  const { factor, offset } = UNITS[name];
  return (si - offset) / factor;
}
