import { describe, test } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { PSI } from '../../src/physics/customary.js';
import { requireOf } from '../../src/study/require.js';
import { expectPrinted } from './hydraulic-units.js';

/**
 * Longest line between two pumpers: 200 psi at the first, 20 psi left at the intake of the next. Hose, C of its table, and
 * printed feet by gpm; rows that print a whole multiple of 5 ft exactly.
 */
const TABLE = [
  { hose: '2-1/2 in', bore: 2.5, c: 2, feet: { 250: 1440, 500: 360, 750: 160, 1000: 90 } },
  { hose: '3 in', bore: 3, c: 0.8, feet: { 250: 3600, 500: 900, 750: 400, 1000: 225 } },
];

const RELAY =
  'IFSTA maximum relay spacing (table from memory; rule (PDP - 20) 100 / FL, trade magazine relay pumping lesson)';

describe(RELAY, () => {
  for (const { hose, bore, c, feet } of TABLE) {
    for (const [gpm, length] of Object.entries(feet)) {
      test(`${RELAY}: ${length} ft of ${hose} at ${gpm} gpm take 200 psi, solved and by the sum`, async () => {
        const text = `
engine:
  pumps: {a: {model: {points: [[0 gpm, 400 psi], [800 gpm, 330 psi], [1600 gpm, 150 psi]]}}}
  outlets: {left: []}
supply: {relay: {pressure: 50 psi}}
lay:
  left:
    - {hose: {inside_diameter: ${bore} in, coefficient: ${c}}, length: ${length} ft}
    - {nozzle: {kind: fog, flow: ${gpm} gpm, pressure: 20 psi}, name: the next intake}
`;
        const { outlets, rules } = await requireOf(readLayoutText(text, 'relay.yaml').layout);
        expectPrinted((outlets?.[0].pressure ?? Number.NaN) / PSI, '200');
        expectPrinted(
          (rules.find((rule) => rule.rules === 'engineering')?.pressure ?? Number.NaN) / PSI,
          '200',
        );
      });
    }
  }
});
