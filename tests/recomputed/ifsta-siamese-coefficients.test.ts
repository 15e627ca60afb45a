import { describe, test } from 'vitest';
import { parallelHoseCoefficient } from '../../src/physics/hose-coefficient.js';
import { expectPrinted } from '../published/hydraulic-units.js';

const SIAMESE = 'IFSTA siamese coefficients';
describe(SIAMESE, () => {
  // From memory, each agreeing with the Quebec table where that has the pair.
  for (const [name, lines, printed] of [
    ['two 2-1/2 in', [2, 2], '0.5'],
    ['three 2-1/2 in', [2, 2, 2], '0.22'],
    ['two 3 in with 2-1/2 in couplings', [0.8, 0.8], '0.2'],
    ['3 in and 2-1/2 in', [0.8, 2], '0.3'],
    ['3 in and two 2-1/2 in', [0.8, 2, 2], '0.16'],
    ['two 3 in and 2-1/2 in', [0.8, 0.8, 2], '0.12'],
  ] as const) {
    test(`${SIAMESE}: ${name}, C ${printed}`, () => expectPrinted(parallelHoseCoefficient(lines), printed));
  }
});
