import { describe, test } from 'vitest';
import { hoseResistance } from '../../src/physics/hose-coefficient.js';
import { expectPrinted, feet, gpm, psi } from './hydraulic-units.js';

const loss = (coefficient: number, length: number, flow: number) =>
  (hoseResistance(coefficient, feet(length)) * gpm(flow) ** 2) / psi(1);

const SUPPLY = 'FireRescue1, Which Supply Line: loss in 100 ft';
describe(SUPPLY, () => {
  const SIZES: [string, number][] = [
    ['2-1/2 in', 2],
    ['3 in', 0.8],
    ['4 in', 0.2],
    ['5 in', 0.08],
  ];
  const TABLE: [number, string][] = [
    [500, '50 20 5 2'],
    [750, '113 45 11 5'],
    [1000, '200 80 20 8'],
  ];
  for (const [flow, row] of TABLE) {
    for (const [i, printed] of row.split(' ').entries()) {
      const [size, coefficient] = SIZES[i];
      test(`${SUPPLY}: ${size} at ${flow} gpm, ${printed} psi`, () =>
        expectPrinted(loss(coefficient, 100, flow), printed));
    }
  }
});
