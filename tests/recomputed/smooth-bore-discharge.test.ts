import { describe, test } from 'vitest';
import { smoothBoreFlow } from '../../src/physics/nozzle/smooth-bore.js';
import { expectPrinted, gpm, inches, psi, WATER } from '../published/hydraulic-units.js';

const SOURCE = 'Tip discharge by 29.7 d2 sqrt(NP), worked out apart from this program';
const PRESSURES = [20, 30, 40, 50, 60, 80, 100];

/** Tip in inches, then gpm at each pressure, rounded as the trade prints them. */
const TABLE: [number, string][] = [
  [1 / 8, '2.1 2.5 2.9 3.3 3.6 4.2 4.6'],
  [3 / 16, '4.7 5.7 6.6 7.4 8.1 9.3 10.4'],
  [1 / 4, '8.3 10.2 11.7 13.1 14.4 16.6 18.6'],
  [5 / 16, '13.0 15.9 18.3 20.5 22.5 25.9 29.0'],
  [3 / 8, '18.7 22.9 26.4 29.5 32.4 37.4 41.8'],
  [7 / 16, '25.4 31.1 36.0 40.2 44.0 50.8 56.8'],
  [1 / 2, '33.2 40.7 47.0 52.5 57.5 66.4 74.2'],
  [3 / 4, '75 92 106 118 129 149 167'],
  [7 / 8, '102 125 144 161 176 203 227'],
  [15 / 16, '117 143 165 185 202 233 261'],
  [1, '133 163 188 210 230 266 297'],
  [1 + 1 / 8, '168 206 238 266 291 336 376'],
  [1 + 1 / 4, '208 254 293 328 359 415 464'],
  [1 + 3 / 8, '251 308 355 397 435 502 562'],
  [1 + 1 / 2, '299 366 423 473 518 598 668'],
  [1 + 3 / 4, '407 498 575 643 705 814 910'],
  [2, '531 651 751 840 920 1063 1188'],
];

describe(SOURCE, () => {
  for (const [tip, row] of TABLE) {
    for (const [i, printed] of row.split(' ').entries()) {
      test(`${SOURCE}: ${tip} in at ${PRESSURES[i]} psi flows ${printed} gpm`, () => {
        expectPrinted(smoothBoreFlow(inches(tip), psi(PRESSURES[i]), WATER) / gpm(1), printed);
      });
    }
  }
});
