import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dimension } from '../../src/quantity/dimension.js';
import { KINDS, parseQuantity } from '../../src/quantity/parse.js';
import { fromUnit, UNIT_NAMES, UNITS, type UnitName } from '../../src/quantity/units.js';

const READ: [text: string, value: number, unit: UnitName][] = [
  ['250 psi', 250, 'psi'],
  ['250 PSI', 250, 'psi'],
  ['250psig', 250, 'psi'],
  ['17.2 bar', 17.2, 'bar'],
  ['1,724 kPa', 1724, 'kPa'],
  ['1.7 MPa', 1.7, 'MPa'],
  ['20 ft of water', 20, 'ft of water'],
  ['6 m of water', 6, 'm of water'],
  ['-10 inHg', -10, 'inHg'],
  ['150 gpm', 150, 'gpm'],
  ['600 l/min', 600, 'L/min'],
  ['600 lpm', 600, 'L/min'],
  ['10 L/s', 10, 'L/s'],
  ['36 m3/h', 36, 'm3/h'],
  ['2.1 gal/h', 2.1, 'gal/h'],
  ['8 L/h', 8, 'L/h'],
  ['1-1/2 in', 1.5, 'in'],
  ['1 1/2 in', 1.5, 'in'],
  ['1½ in', 1.5, 'in'],
  ['½"', 0.5, 'in'],
  ['1 - 1/2 in', 1.5, 'in'],
  ['-1-1/2 in', -1.5, 'in'],
  ['3/8 in', 0.375, 'in'],
  ['3/8"', 0.375, 'in'],
  ["2-1/2''", 2.5, 'in'],
  ["300'", 300, 'ft'],
  ['300 feet', 300, 'ft'],
  ['1 foot', 1, 'ft'],
  ['1.5in', 1.5, 'in'],
  ['1.5 inches', 1.5, 'in'],
  ['.5 in.', 0.5, 'in'],
  ['4,300 ft', 4300, 'ft'],
  ['1,234,567.5 ft', 1234567.5, 'ft'],
  ['1e3 ft', 1000, 'ft'],
  ['1e3ft', 1000, 'ft'],
  ['2.5E-2 m', 0.025, 'm'],
  ['-50 ft', -50, 'ft'],
  ['\u221250 ft', -50, 'ft'],
  ['+50 ft', 50, 'ft'],
  ['  300\u00a0ft ', 300, 'ft'],
  ['2 mi', 2, 'mi'],
  ['500 gal', 500, 'gal'],
  ['400 impgal', 400, 'impgal'],
  ['2,000 litres', 2000, 'L'],
  ['2 m³', 2, 'm3'],
  ['23 hp', 23, 'hp'],
  ['17 kW', 17, 'kW'],
  ['11,900 lbs', 11900, 'lb'],
  ['85 degF', 85, 'degF'],
  ['85°F', 85, 'degF'],
  ['85 F', 85, 'degF'],
  ['-3 °C', -3, 'degC'],
  ['290 K', 290, 'K'],
  ['6,500 rpm', 6500, 'rpm'],
  ['20 min', 20, 'min'],
  ['212 h', 212, 'h'],
  ['212 hours', 212, 'h'],
  ['12 %', 12, '%'],
  ['12%', 12, '%'],
  ['80 lbf', 80, 'lbf'],
  ['15 ft/s', 15, 'ft/s'],
  ['62.4 lb/ft3', 62.4, 'lb/ft3'],
];

describe('quantities that people write', () => {
  for (const [text, value, unit] of READ) {
    it(`${text.trim()}`, () => {
      const parsed = parseQuantity(text, UNITS[unit].dimension);
      expect(parsed).toEqual({ value: expect.closeTo(fromUnit(value, unit), 9), unit });
    });
  }
});

const REFUSED: [input: unknown, dimension: Dimension, problem: string][] = [
  [300, 'length', '300 has no unit: did you mean 300 ft? (in, mi, m, mm, cm, km would do as well)'],
  ['1,000', 'volume', '1,000 has no unit: did you mean 1,000 gal? (impgal, L, m3 would do as well)'],
  [0.97, 'ratio', '0.97 has no unit: did you mean 97 %?'],
  [3, 'ratio', '3 has no unit: did you mean 3 %?'],
  ['250 psi', 'length', '250 psi is a pressure; a length is wanted, for instance 300 ft'],
  ['20 ft', 'pressure', '20 ft is a length; a pressure is wanted, for instance 250 psi or 20 ft of water'],
  ['250 pis', 'pressure', '250 pis: pis is no unit we know: did you mean 250 psi?'],
  ['3 fotos', 'length', '3 fotos: fotos is no unit we know; a length is wanted, for instance 300 ft'],
  ['1,5 in', 'length', '1,5 in: a comma only sets off thousands (4,300 ft); did you mean 1.5 in?'],
  ['1.500,5 ft', 'length', '1.500,5 ft: a comma only sets off thousands (4,300 ft); did you mean 1500.5 ft?'],
  ['0,500 in', 'length', '0,500 in: a comma only sets off thousands (4,300 ft); did you mean 0.500 in?'],
  ['12,50 %', 'ratio', '12,50 %: a comma only sets off thousands (4,300 ft); did you mean 12.50 %?'],
  ['1/0 in', 'length', '1/0 in divides by zero; a length is wanted, for instance 300 ft'],
  [
    '1e999 ft',
    'length',
    '1e999 ft is larger than any number we hold; a length is wanted, for instance 300 ft',
  ],
  [
    '1e308 mi',
    'length',
    '1e308 mi is larger than any number we hold; a length is wanted, for instance 300 ft',
  ],
  ['psi', 'pressure', 'psi does not start with a number; a pressure is wanted, for instance 250 psi'],
  [null, 'flow', 'nothing stands here; a flow is wanted, for instance 150 gpm'],
  ['', 'flow', 'nothing stands here; a flow is wanted, for instance 150 gpm'],
  [[], 'flow', 'a list stands here; a flow is wanted, for instance 150 gpm'],
  [{}, 'flow', 'a mapping stands here; a flow is wanted, for instance 150 gpm'],
  [true, 'time', 'true is no quantity; a time is wanted, for instance 20 min'],
  [
    Number.POSITIVE_INFINITY,
    'length',
    'Infinity is no number with a unit; a length is wanted, for instance 300 ft',
  ],
];

describe('quantities that are refused, and how', () => {
  for (const [input, dimension, problem] of REFUSED) {
    it(`${JSON.stringify(input)} as ${KINDS[dimension].name}`, () => {
      expect(parseQuantity(input, dimension)).toEqual({ problem });
    });
  }

  for (const text of [
    '250-300 psi',
    '1..5 psi',
    '1.2.3 psi',
    '1,2345 psi',
    '1 2 psi',
    '1-3/2 psi',
    '1/2/3 psi',
    '10:30 psi',
  ]) {
    it(`${text} is not read as part of a number`, () => {
      const parsed = parseQuantity(text, 'pressure');
      expect(parsed).toHaveProperty('problem');
    });
  }

  it('a bare bore is offered in inches', () => {
    expect(parseQuantity(1.5, 'length', { unit: 'in' })).toEqual({
      problem: '1.5 has no unit: did you mean 1.5 in? (ft, mi, m, mm, cm, km would do as well)',
    });
  });

  it('a long text is cut before it is repeated', () => {
    const parsed = parseQuantity('x'.repeat(1_000_000), 'length');
    expect('problem' in parsed && parsed.problem.length).toBeLessThan(120);
  });
});

describe('any text at all', () => {
  it('gives a finite number or one sentence, and never throws', () => {
    const pieces = fc.constantFrom(
      '1',
      '25',
      ',',
      '.',
      '/',
      '-',
      ' ',
      'e',
      '½',
      'ft',
      'psi',
      '%',
      '"',
      '°F',
      ' of water',
      '\u0000',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces).map((parts) => parts.join('')),
        ),
        (text) => {
          for (const dimension of ['length', 'ratio', 'temperature'] as const) {
            const parsed = parseQuantity(text, dimension);
            if ('value' in parsed) expect(Number.isFinite(parsed.value)).toBe(true);
            else expect(parsed.problem.length).toBeGreaterThan(10);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('a number printed with its unit reads back the same', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, min: -1e9, max: 1e9 }),
        fc.constantFrom(...UNIT_NAMES),
        (value, unit) => {
          expect(parseQuantity(`${value} ${unit}`, UNITS[unit].dimension)).toEqual({
            value: fromUnit(value, unit),
            unit,
          });
        },
      ),
    );
  });
});
