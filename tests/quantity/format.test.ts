import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatMeasure, fromUnit, toUnit, unitFor } from '../../src/quantity/format.js';
import { parseQuantity } from '../../src/quantity/parse.js';
import { UNIT_NAMES, UNITS } from '../../src/quantity/units.js';

const psi = (value: number) => ({ value: fromUnit(value, 'psi'), dimension: 'pressure' as const });
const gpm = (value: number) => ({ value: fromUnit(value, 'gpm'), dimension: 'flow' as const });
const inch = (value: number) => ({ value: fromUnit(value, 'in'), dimension: 'length' as const });

describe('rounding as the trade rounds', () => {
  it('whole psi and whole gpm', () => {
    expect(formatMeasure(psi(271.34), 'us')).toBe('271 psi');
    expect(formatMeasure(gpm(149.5), 'us')).toBe('150 gpm');
    expect(formatMeasure(gpm(1000), 'us')).toBe('1,000 gpm');
  });

  it('one more digit below ten', () => {
    expect(formatMeasure(psi(9.94), 'us')).toBe('9.9 psi');
    expect(formatMeasure(psi(9.96), 'us')).toBe('10 psi');
    expect(formatMeasure(gpm(-4.25), 'us')).toBe('-4.3 gpm');
  });

  it('nothing is zero, and never minus zero', () => {
    expect(formatMeasure(psi(0), 'us')).toBe('0 psi');
    expect(formatMeasure(psi(-0.01), 'us')).toBe('0 psi');
  });

  it('bores in inches or millimetres, distances in feet or metres', () => {
    expect(formatMeasure(inch(0.716), 'us', { role: 'bore' })).toBe('0.716 in');
    expect(formatMeasure(inch(1.5), 'us', { role: 'bore' })).toBe('1.5 in');
    expect(formatMeasure(inch(2), 'us', { role: 'bore' })).toBe('2 in');
    expect(formatMeasure(inch(10), 'us', { role: 'bore' })).toBe('10 in');
    expect(formatMeasure(inch(1.5), 'si', { role: 'bore' })).toBe('38.1 mm');
    expect(formatMeasure(inch(51600), 'us')).toBe('4,300 ft');
    expect(formatMeasure(inch(51600), 'si')).toBe('1,311 m');
  });

  it('a margin carries its sign', () => {
    expect(formatMeasure(psi(21.4), 'us', { signed: true })).toBe('+21 psi');
    expect(formatMeasure(psi(-21.4), 'us', { signed: true })).toBe('-21 psi');
    expect(formatMeasure(psi(0), 'us', { signed: true })).toBe('0 psi');
  });

  it('a figure that is none is refused', () => {
    expect(() => formatMeasure(psi(Number.NaN), 'us')).toThrow(RangeError);
  });
});

describe('a figure that decides', () => {
  const limit = fromUnit(250, 'psi');

  it('shows what rounding would hide', () => {
    expect(formatMeasure(psi(249.6), 'us', { limit })).toBe('249.6 psi');
    expect(formatMeasure(psi(249.96), 'us', { limit })).toBe('249.96 psi');
    expect(formatMeasure(psi(250.4), 'us', { limit })).toBe('250.4 psi');
    expect(formatMeasure(psi(250), 'us', { limit })).toBe('250 psi');
    expect(formatMeasure(psi(249.4), 'us', { limit })).toBe('249 psi');
  });

  it('never lands on the wrong side of its limit', () => {
    fc.assert(
      fc.property(fc.double({ min: 249, max: 251, noNaN: true }), (value) => {
        fc.pre(Math.abs(value - 250) > 1e-5 || value === 250);
        const shown = Number.parseFloat(formatMeasure(psi(value), 'us', { limit }));
        const exact = toUnit(fromUnit(value, 'psi'), 'psi');
        expect(Math.sign(shown - 250)).toBe(Math.sign(exact - 250));
      }),
    );
  });
});

describe('the unit that a reader expects', () => {
  it('by system and role', () => {
    expect(unitFor('pressure', 'us')).toBe('psi');
    expect(unitFor('pressure', 'si')).toBe('kPa');
    expect(unitFor('length', 'us', 'bore')).toBe('in');
    expect(unitFor('flow', 'si', 'burn')).toBe('L/h');
    expect(unitFor('pressure', 'us', 'bore')).toBe('psi');
  });

  it('is always of the same kind, and what is printed reads back', () => {
    for (const unit of UNIT_NAMES) {
      const measure = { value: fromUnit(1234.5, unit), dimension: UNITS[unit].dimension };
      for (const system of ['us', 'si'] as const) {
        const text = formatMeasure(measure, system);
        const back = parseQuantity(text, measure.dimension);
        const step = 0.5000001 * UNITS[unitFor(measure.dimension, system)].factor;
        expect('value' in back && Math.abs(back.value - measure.value)).toBeLessThanOrEqual(step);
      }
    }
  });
});
