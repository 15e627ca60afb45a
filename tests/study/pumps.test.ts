import { expect, test } from 'vitest';
import { readLayout } from '../../src/layout/read-layout.js';
import { operateLayout } from '../../src/study/operation.js';

const { layout } = readLayout('data/examples/lay.yaml');
const PSI = 6894.757293168361;

test('two pumps in parallel share the flow: their parts make a whole', async () => {
  const { pumps } = await operateLayout(layout);
  expect(pumps.map(({ name }) => name)).toEqual(['pump a', 'pump b']);
  expect(pumps.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  for (const { share } of pumps) expect(share).toBeLessThan(0.6);
});

test('in series each carries all of the flow', async () => {
  const { pumps } = await operateLayout({ ...layout, staging: 'series' });
  expect(pumps.map(({ share }) => share > 0.97)).toEqual([true, true]);
});

test('a pressure to hold is held at the discharge of the engine', async () => {
  const { pumps } = await operateLayout({
    ...layout,
    throttle: { by: 'discharge_pressure', discharge_pressure: 180 * PSI },
  });
  expect(Math.max(...pumps.map(({ dischargePressure }) => dischargePressure / PSI))).toBeCloseTo(180, 2);
});
