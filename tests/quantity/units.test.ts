import { createUnit, unit as mathUnit, multiply, type Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { SI_UNITS } from '../../src/quantity/dimension.js';
import { findUnit, fromUnit, toUnit, UNIT_NAMES, UNITS, type UnitName } from '../../src/quantity/units.js';

createUnit('gpm', '1 gal / min');
createUnit('impgallon', '4.54609 L');
createUnit('poundinch', '1 lbf / in^2');
createUnit('footpounds', '550 ft lbf / s');
/** A column of liquid one `length` high at standard gravity. */
const column = (density: number, length: string) =>
  multiply(multiply(mathUnit(density, 'kg/m^3'), mathUnit(9.80665, 'm/s^2')), mathUnit(1, length)) as Unit;
createUnit('ftwater', column(1000, 'ft'));
createUnit('mwater', column(1000, 'm'));
createUnit('inmercury', column(13595.1, 'in'));
createUnit('revolution', '1 cycle');

/** How mathjs writes each of our units; its own psi, hp and mmHg are rounded, so these are built from their definitions. */
const IN_MATHJS: Record<UnitName, [unit: string, si: string]> = {
  ft: ['ft', 'm'],
  in: ['in', 'm'],
  mi: ['mi', 'm'],
  m: ['m', 'm'],
  mm: ['mm', 'm'],
  cm: ['cm', 'm'],
  km: ['km', 'm'],
  psi: ['poundinch', 'Pa'],
  bar: ['bar', 'Pa'],
  kPa: ['kPa', 'Pa'],
  MPa: ['MPa', 'Pa'],
  Pa: ['Pa', 'Pa'],
  'ft of water': ['ftwater', 'Pa'],
  'm of water': ['mwater', 'Pa'],
  inHg: ['inmercury', 'Pa'],
  gpm: ['gpm', 'm^3/s'],
  impgpm: ['impgallon/min', 'm^3/s'],
  'gal/h': ['gal/h', 'm^3/s'],
  'L/min': ['L/min', 'm^3/s'],
  'L/s': ['L/s', 'm^3/s'],
  'L/h': ['L/h', 'm^3/s'],
  'm3/h': ['m^3/h', 'm^3/s'],
  'm3/s': ['m^3/s', 'm^3/s'],
  gal: ['gal', 'm^3'],
  impgal: ['impgallon', 'm^3'],
  L: ['L', 'm^3'],
  m3: ['m^3', 'm^3'],
  lb: ['lbm', 'kg'],
  kg: ['kg', 'kg'],
  hp: ['footpounds', 'W'],
  kW: ['kW', 'W'],
  W: ['W', 'W'],
  lbf: ['lbf', 'N'],
  N: ['N', 'N'],
  'ft/s': ['ft/s', 'm/s'],
  mph: ['mi/h', 'm/s'],
  'km/h': ['km/h', 'm/s'],
  'm/s': ['m/s', 'm/s'],
  rpm: ['revolution/min', 'revolution/min'],
  min: ['min', 's'],
  h: ['h', 's'],
  s: ['s', 's'],
  degF: ['degF', 'K'],
  degC: ['degC', 'K'],
  K: ['K', 'K'],
  'lb/ft3': ['lbm/ft^3', 'kg/m^3'],
  'kg/m3': ['kg/m^3', 'kg/m^3'],
  '%': ['%', '%'],
};

describe('units against those of mathjs', () => {
  for (const name of UNIT_NAMES) {
    it(`${name}`, () => {
      const [theirs, si] = IN_MATHJS[name];
      for (const value of [1, 37.5]) {
        const expected = name === '%' ? value / 100 : mathUnit(value, theirs).toNumber(si);
        expect(Math.abs(fromUnit(value, name) / expected - 1)).toBeLessThan(1e-12);
      }
    });
  }
});

describe('the table of units', () => {
  for (const name of UNIT_NAMES) {
    it(`${name} names its source and comes back from SI`, () => {
      expect(UNITS[name].source.length).toBeGreaterThan(5);
      expect(Object.keys(SI_UNITS)).toContain(UNITS[name].dimension);
      expect(toUnit(fromUnit(-12.25, name), name)).toBeCloseTo(-12.25, 10);
      for (const spelling of [name, name.toUpperCase(), ...UNITS[name].spellings]) {
        expect(findUnit(spelling)).toBe(name);
      }
    });
  }

  it('the psi is a pound-force on a square inch: 6894.757293168 Pa', () => {
    expect(fromUnit(1, 'psi')).toBeCloseTo(6894.757293168361, 9);
  });

  it('231 cubic inches make a US gallon', () => {
    expect(231 * fromUnit(1, 'in') ** 3).toBeCloseTo(fromUnit(1, 'gal'), 15);
  });
});
