// Coefficients of hose that no document at hand prints: recalled, or computed from a rule that is printed.
import { expect, test } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { hazenWilliamsResistance } from '../../src/physics/hazen-williams.js';
import { hoseHeadResistance } from '../../src/physics/hose-coefficient.js';

const catalogue = loadCatalogue();
const coefficient = (id: string): number => catalogue.find('hose', id)?.coefficient ?? Number.NaN;

test.each([
  ['attack-1.25', 80],
  ['supply-3.5', 0.34],
  ['supply-6', 0.05],
])('IFSTA coefficient, from memory: %s has C %f', (id, recalled) => {
  expect(coefficient(id)).toBe(recalled);
});

test.each([
  ['condensed Q, Q^2 / 3', 'supply-3.5-condensed', 1 / 3],
  ['condensed Q, Q^2 / 15', 'supply-5-condensed', 1 / 15],
  ['unlined, twice lined 1 in', 'forestry-1-unlined', 300],
  ['unlined, twice lined 1-1/2 in', 'forestry-1.5-unlined', 48],
])('%s: %s has C %f', (_, id, computed) => {
  expect(Math.abs(coefficient(id) / computed - 1)).toBeLessThan(1e-3);
});

test('1-1/4 in hose of C 80 loses what Hazen-Williams at C 140 gives for 1.26 in, to 3 %', () => {
  const flow = 100 * 6.30902e-5;
  const byCoefficient = hoseHeadResistance(coefficient('attack-1.25'), 1) * flow ** 2;
  const byBore = hazenWilliamsResistance(140, 1.26 * 0.0254, 1) * flow ** 1.852;
  expect(Math.abs(byCoefficient / byBore - 1)).toBeLessThan(0.03);
});

test.each([
  ['b-75', 1],
  ['c-52', 6],
  ['c-42', 20],
])('bar in 100 m = 2 (L/min / 100)^2 / 100, times its factor: %s, %f', (id, times) => {
  // 400 L/min: 0.32 bar in 100 m of B.
  const psi = coefficient(id) * (400 / 3.785411784 / 100) ** 2 * (100 / 0.3048 / 100);
  expect(Math.abs((psi * 0.0689475729) / (0.32 * times) - 1)).toBeLessThan(1e-3);
});
