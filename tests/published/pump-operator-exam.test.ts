import { describe, test } from 'vitest';
import { hoseResistance } from '../../src/physics/hose-coefficient.js';
import { expectPrinted, feet, gpm, psi } from './hydraulic-units.js';

const loss = (coefficient: number, length: number, flow: number) =>
  (hoseResistance(coefficient, feet(length)) * gpm(flow) ** 2) / psi(1);

const EXAM = 'pump-operator examination of a state course (study document 11036619)';
describe(EXAM, () => {
  test(`${EXAM}: 100 ft of 1-3/4 in at 100 gpm, 15.5 psi`, () => expectPrinted(loss(15.5, 100, 100), '15.5'));
  test(`${EXAM}: 200 ft of 1-3/4 in at 150 gpm, 69.75 psi`, () =>
    expectPrinted(loss(15.5, 200, 150), '69.75'));
  test(`${EXAM}: 300 ft of 2-1/2 in at 200 gpm, 24 psi`, () => expectPrinted(loss(2, 300, 200), '24'));
});
