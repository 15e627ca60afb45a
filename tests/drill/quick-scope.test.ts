import { expect, test } from 'vitest';
import { Scope } from '../../src/drill/evaluate.js';
import type { PrintedUnit } from '../../src/drill/problem.js';
import { QuickScope } from '../../src/drill/quick-scope.js';

type Figures = Record<string, [number, PrintedUnit]>;

const figures: Figures = {
  Q: [87.5, 'gpm'],
  L: [350, 'ft'],
  d: [0.716, 'in'],
  NP: [100, 'psi'],
  V: [12, 'inHg'],
  T: [500, 'gal'],
  q: [330, 'L/min'],
  r: [10, '%'],
  n: [3, ''],
  G: [0.5, 'psi/ft'],
};

function filled<S extends Scope | QuickScope>(scope: S): S {
  for (const [symbol, [value, unit]] of Object.entries(figures)) scope.set(symbol, { value, unit });
  return scope;
}

const FORMULAE: [string, PrintedUnit][] = [
  ['24 * (Q / (100 gpm))^2 * (L / (100 ft)) * 1 psi', 'psi'],
  ['NP + G * L - 2 psi', 'psi'],
  ['G * L - NP', 'kPa'],
  ['29.7 * (d / (1 inch))^2 * sqrt(NP / (1 psi)) * 1 gpm', 'gpm'],
  ['T * (1 - n / 10) / (Q + q)', 'min'],
  ['V * 1.13 ft/inHg', 'ft'],
  ['max(NP, V) + NP', 'psi'],
  ['-NP + 2 * NP', 'psi'],
  ['n^2 + n / 2', ''],
  ['d^2 * 3.14159 / 4', 'in²'],
  ['T * (8.35 lb/gal)', 'kg'],
];

for (const [formula, unit] of FORMULAE) {
  test(`${formula} is in ${unit || 'bare numbers'} what mathjs makes of it`, () => {
    const exact = filled(new Scope()).evaluate(formula, unit);
    expect(filled(new QuickScope()).evaluate(formula, unit)).toBeCloseTo(exact, 9);
  });
}

for (const [formula, unit] of [
  ['Q + NP', 'psi'],
  ['max(L, NP)', 'psi'],
  ['Q * 1', 'psi'],
  ['n', 'psi'],
  ['NP', ''],
  ['n^Q', ''],
  ['sqrt(n - 4)', ''],
  ['n / 0', ''],
  ['(Q / (100 gpm))^2', 'psi'],
] as [string, PrintedUnit][]) {
  test(`${formula} is not ${unit || 'a bare number'}, and neither says it is`, () => {
    expect(() => filled(new Scope()).evaluate(formula, unit)).toThrow();
    expect(() => filled(new QuickScope()).evaluate(formula, unit)).toThrow(TypeError);
  });
}
