import { describe, expect, test } from 'vitest';
import { standardPressure, standardTemperature } from '../../src/physics/atmosphere.js';
import { PSI } from '../../src/physics/customary.js';
import { expectPrinted, fahrenheit, feet } from './hydraulic-units.js';

const TABLE = 'U.S. Standard Atmosphere, printed table';
/** psia. 4,000 ft is left out: the table prints 12.682 for 12.692, out of step with its own neighbours. */
const PRINTED: [number, number][] = [
  [0, 14.696],
  [1000, 14.175],
  [2000, 13.664],
  [3000, 13.173],
  [5000, 12.23],
  [6000, 11.778],
  [7000, 11.341],
  [8000, 10.914],
  [9000, 10.506],
  [10000, 10.108],
];
/** psia by the formula 14.696 (1 - 6.8754e-6 Z)^5.2559, seen in print. */
const FORMULA: [number, string][] = [
  [0, '14.696'],
  [1000, '14.173'],
  [2000, '13.664'],
  [3000, '13.171'],
  [4000, '12.692'],
  [5000, '12.228'],
  [6000, '11.777'],
  [7000, '11.340'],
  [8000, '10.916'],
  [9000, '10.505'],
  [10000, '10.106'],
];

describe(TABLE, () => {
  for (const [elevation, printed] of PRINTED) {
    test(`${TABLE}: ${elevation} ft, ${printed} psia`, () => {
      // The table steps unevenly by up to 0.003 psi: it counts heights a little otherwise than the formula.
      expect(Math.abs(standardPressure(feet(elevation)) / PSI - printed)).toBeLessThanOrEqual(0.003);
    });
  }
});

const ENGINEERING = 'Engineering table of standard atmosphere by elevation, 0 to 15,000 ft';
/** That table counts true height; the formula wants height under a gravity that does not weaken. Earth's radius of the 1976 standard. */
const geopotential = (metres: number) => metres / (1 + metres / 6_356_766);
describe(ENGINEERING, () => {
  for (const [elevation, printed] of [
    [0, '14.696'],
    [5000, '12.228'],
    [10000, '10.108'],
    [15000, '8.297'],
  ] as const) {
    test(`${ENGINEERING}: ${elevation} ft, ${printed} psia`, () => {
      expectPrinted(standardPressure(geopotential(feet(elevation))) / PSI, printed);
    });
  }
});

const BY_FORMULA = 'U.S. Standard Atmosphere, 14.696 (1 - 6.8754e-6 Z)^5.2559 psia and 59 - 0.0035662 Z degF';
describe(BY_FORMULA, () => {
  for (const [elevation, printed] of FORMULA) {
    test(`${BY_FORMULA}: ${elevation} ft, ${printed} psia`, () => {
      expectPrinted(standardPressure(feet(elevation)) / PSI, printed);
    });
  }
  test(`${BY_FORMULA}: 41.2 degF at 5,000 ft`, () => {
    const found = (standardTemperature(feet(5000)) - fahrenheit(0)) * 1.8;
    expectPrinted(found, '41.2');
  });
});
