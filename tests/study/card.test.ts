import { expect, test } from 'vitest';
import type { GaugePoint } from '../../src/study/answer.js';
import { cardOf } from '../../src/study/card.js';
import { operateLayout } from '../../src/study/operation.js';
import { engine, layoutOf, PARABOLA, PSI } from './support.js';

const HOSE = '{hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 200 ft, rise: 10 ft}';

/** Gauges where the line starts, before and behind lines that part and meet again, and on both sides of a booster. */
const layout = layoutOf(`${engine()}lay:
  left:
    - gauge: at the outlet
    - ${HOSE}
    - gauge: before the two lines
    - siamese: [[${HOSE}], [${HOSE}]]
    - gauge: where they meet
    - {pump: {name: light, points: ${PARABOLA}}, name: booster}
    - gauge: behind the booster
    - ${HOSE}
    - gauge: at the end
    - {nozzle: {kind: fog, flow: 40 gpm, pressure: 100 psi}, name: far}
`);

const GAUGES = [
  'at the outlet',
  'before the two lines',
  'where they meet',
  'behind the booster',
  'at the end',
];

for (const state of ['flowing', 'shut'] as const) {
  test(`the card tells at each gauge of the line what the report tells, ${state}`, async () => {
    const { lines } = await cardOf(layout);
    const { points } = await operateLayout(layout, state === 'shut' ? { nozzleState: () => 'shut' } : {});
    const told = GAUGES.map((gauge) => lines[0].points.find(({ name }) => name === gauge)?.[state]);
    const read = GAUGES.map((gauge) => points.find(({ name }: GaugePoint) => name === gauge)?.pressure);
    const psi = (pressures: (number | undefined)[]) => pressures.map((one) => ((one ?? 0) / PSI).toFixed(3));
    expect(psi(told)).toEqual(psi(read));
    expect(Math.min(...read.map((one) => one ?? 0)) / PSI).toBeGreaterThan(100);
  });
}

test('the card tells a nozzle by the pressure that its table has, and a booster by its inlet', async () => {
  const { lines, flow } = await cardOf(layout);
  const at = (name: string) => lines[0].points.find((point) => point.name === name)?.flowing ?? 0;
  const inlet = flow.points.find(({ name }) => name === 'booster, inlet');
  expect(at('far') / PSI).toBeCloseTo(flow.nozzles[0].pressure / PSI, 6);
  expect(at('booster') / PSI).toBeCloseTo((inlet?.pressure ?? 0) / PSI, 6);
  expect(at('booster') / PSI).toBeGreaterThan(100);
});
