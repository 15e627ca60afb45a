import { expect, test } from 'vitest';
import { operateLayout } from '../../src/study/operation.js';
import { requireOf } from '../../src/study/require.js';
import { engine, FAR_FOG, lay, layoutOf, PSI } from './support.js';

/** 1,000 ft of 1-1/2 in hose, C 24, five laterals of 20 gpm every 200 ft, the last at the end: summed by hand. */
const FIVE = Array.from({ length: 4 }, () => ({ feet: 200, lateral: { feet: 0, gpm: 20 } }));
const layout = layoutOf(engine() + lay([...FIVE, { feet: 200 }], FAR_FOG));

test('five laterals of 20 gpm on 1,000 ft of trunk: 48.0 + 30.7 + 17.3 + 7.7 + 1.9 = 106 psi, and not 240 psi', async () => {
  const { habits } = await requireOf(layout);
  expect(habits).toHaveLength(1);
  // C (Q/100)^2 (L/100) section by section, as printed to a tenth of a psi each.
  const byHand = [100, 80, 60, 40, 20].map((gpm) => 24 * (gpm / 100) ** 2 * 2);
  expect(byHand.map((psi) => psi.toFixed(1))).toEqual(['48.0', '30.7', '17.3', '7.7', '1.9']);
  expect(habits[0].actual / PSI).toBeCloseTo(
    byHand.reduce((sum, psi) => sum + psi, 0),
    3,
  );
  expect(Math.round(habits[0].actual / PSI)).toBe(106);
  expect(habits[0].endToEnd / PSI).toBeCloseTo(240, 3);
});

test('flow tells both figures of the same trunk at the flows that were solved', async () => {
  const { habits, lines } = await operateLayout(layout);
  const trunk = lines.filter(({ name }) => name.includes('of left') && name.startsWith('hose'));
  const lost = trunk.reduce((sum, { loss }) => sum + loss, 0);
  expect(trunk).toHaveLength(5);
  expect(habits[0].actual).toBeCloseTo(lost, 6);
  // The solver leaves a link up to 1e-6 m out of balance, 0.01 Pa, and five of them are told from one.
  expect(habits[0].endToEnd).toBeCloseTo(5 * trunk[0].loss, 1);
});

test('a line without laterals has no habit to warn of', async () => {
  const { habits } = await operateLayout(layoutOf(engine() + lay([{ feet: 1000 }], FAR_FOG)));
  expect(habits).toEqual([]);
});
