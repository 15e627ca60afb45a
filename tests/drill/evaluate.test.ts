import { all, create } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { formulaUnit, Scope } from '../../src/drill/evaluate.js';
import { makeSheet } from '../../src/drill/generate.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';

describe('formulae with units', () => {
  const scope = new Scope();
  scope.set('C', { value: 24, unit: 'psi' });
  scope.set('Q', { value: 60, unit: 'gpm' });
  scope.set('L', { value: 300, unit: 'ft' });
  scope.set('d', { value: 0.5, unit: 'in' });
  scope.set('n', { value: 3, unit: '' });
  scope.set('e', { value: 0.5, unit: 'psi/ft' });

  test('come out in the unit asked', () => {
    expect(scope.evaluate('C * (Q / (100 gpm))^2 * (L / (100 ft))', 'psi')).toBeCloseTo(25.92, 10);
    expect(scope.evaluate('e * L', 'kPa')).toBeCloseTo(150 * 6.894757, 3);
    expect(scope.evaluate('0.7854 * d^2 * L', 'gal')).toBeCloseTo(3.06, 2);
    expect(scope.evaluate('n * C - C', 'psi')).toBeCloseTo(48, 10);
    expect(scope.evaluate('max(C, n * C)', 'psi')).toBeCloseTo(72, 10);
    expect(scope.evaluate('Q * 2', 'L/min')).toBeCloseTo(454.25, 2);
    expect(scope.evaluate('-C + 2 * C', 'psi')).toBeCloseTo(24, 10);
    expect(scope.evaluate('1 / (1 / C)', 'psi')).toBeCloseTo(24, 10);
  });

  test('of the wrong kind are refused', () => {
    expect(() => scope.evaluate('Q', 'psi')).toThrow();
    expect(() => scope.evaluate('C + Q', 'psi')).toThrow(/two kinds/);
    expect(() => scope.evaluate('C * n', '')).toThrow(/bare number/);
    expect(() => scope.evaluate('n', 'psi')).toThrow(/does not come out/);
    expect(() => scope.evaluate('n / 0', '')).toThrow(/no value/);
    expect(() => scope.evaluate('unknown_thing * 2', 'psi')).toThrow();
  });
});

test('the printed steps mean the same to the whole of mathjs', async () => {
  const math = create(all, {});
  math.createUnit('gpm', '231 inch^3/minute');
  math.createUnit('lpm', '0.001 m^3/minute');
  math.createUnit('gal', '231 inch^3', { override: true });
  const hasMercury = (() => {
    try {
      return math.unit('1 inHg') !== undefined;
    } catch {
      return false;
    }
  })();
  if (!hasMercury) math.createUnit('inHg', '3386.388640341 Pa');
  for (const units of ['us', 'si'] as const) {
    const rules = await loadRuleSet('engineering');
    const { problems } = makeSheet({ topics: [], level: 4, count: 26, seed: 3, rules, units, choices: 0 });
    for (const { id, steps } of problems)
      for (const { substitution, value, unit } of steps) {
        const result = math.evaluate(substitution);
        const redone = unit === '' ? Number(result) : result.toNumber(formulaUnit(unit));
        // Figures in a substitution are rounded to two decimals or more.
        const message = `${id}: ${substitution}`;
        expect(Math.abs(redone - value), message).toBeLessThanOrEqual(0.012 * Math.abs(value) + 0.02);
      }
  }
});
