import { describe, test } from 'vitest';
import { hoseResistance } from '../../src/physics/hose-coefficient.js';
import { smoothBoreFlow } from '../../src/physics/nozzle/smooth-bore.js';
import { expectPrinted, feet, gpm, inches, psi, WATER } from './hydraulic-units.js';

const loss = (coefficient: number, length: number, flow: number) =>
  (hoseResistance(coefficient, feet(length)) * gpm(flow) ** 2) / psi(1);

const SLIDES = 'City of Rohnert Park fire training slides 3-8, Friction Loss in Hose Lays';
describe(SLIDES, () => {
  test(`${SLIDES}: 100 ft of 2-1/2 in at 200 gpm, 8 psi`, () => expectPrinted(loss(2, 100, 200), '8'));
  test(`${SLIDES}: 300 ft of 2-1/2 in at 100 gpm, 6 psi`, () => expectPrinted(loss(2, 300, 100), '6'));
  test(`${SLIDES}: 400 ft of 2-1/2 in at 200 gpm, 32 psi`, () => expectPrinted(loss(2, 400, 200), '32'));
  test(`${SLIDES}: 1 in tip at 50 psi, 210 gpm`, () =>
    expectPrinted(smoothBoreFlow(inches(1), psi(50), WATER) / gpm(1), '210'));
  test(`${SLIDES}: wye, 200 ft of 2-1/2 in at 300 gpm and 150 ft of 1-3/4 in (C 10) at 150 gpm, 36 and 34 psi`, () => {
    expectPrinted(loss(2, 200, 300), '36');
    expectPrinted(loss(10, 150, 150), '34');
  });
});
