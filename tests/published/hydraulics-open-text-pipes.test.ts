import { expect, test } from 'vitest';
import { darcyLoss, reynoldsNumber } from '../../src/physics/darcy-weisbach.js';
import { frictionFactor } from '../../src/physics/moody.js';
import { fitQuadratic } from '../../src/physics/pump-curve/quadratic.js';
import { expectPrinted } from './hydraulic-units.js';

const SOURCE = 'Hydraulics and Water Resources, open university text, ch. 4';
const PIPE = { length: 100, bore: 0.5, roughness: 0.046e-3, viscosity: 1.023053e-6 };

test(`${SOURCE}: 0.416 m3/s in 100 m of 0.5 m: Re 1,035,465, f 0.0133, 0.61 m (its prose misprints 0.061)`, () => {
  expectPrinted(reynoldsNumber(0.416, PIPE.bore, PIPE.viscosity), '1035465');
  expectPrinted(frictionFactor(1_035_465, PIPE.roughness / PIPE.bore), '0.0133');
  expectPrinted(darcyLoss(PIPE, 0.416), '0.61');
});

test(`${SOURCE}: 0.6 m of loss in the same pipe passes 0.413 m3/s`, () => {
  expectPrinted(
    root((flow) => darcyLoss(PIPE, flow) - 0.6, 0.1, 1),
    '0.413',
  );
});

test(`${SOURCE}: 0.6 m of loss at 0.416 m3/s takes a bore of 0.501 m`, () => {
  expectPrinted(
    root((bore) => 0.6 - darcyLoss({ ...PIPE, bore }, 0.416), 0.3, 0.8),
    '0.501',
  );
});

const PUMPS = 'Hydraulics and Water Resources, open university text, ch. 7';
test(`${PUMPS}: (0, 81), (5000 gpm, 60), (7850, 20) fitted without a linear part: H = 82.5 - 0.201 Q2 in ft and cfs`, async () => {
  const cfs = (value: number) => value / 448.831;
  const points = [
    { flow: 0, head: 81 },
    { flow: cfs(5000), head: 60 },
    { flow: cfs(7850), head: 20 },
  ];
  const { a, b, c } = await fitQuadratic(points, false);
  expectPrinted(a, '82.5');
  expect(b).toBe(0);
  expectPrinted(c, '-0.201');
});

function root(excess: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let i = 0; i < 100; i++) {
    const middle = (from + to) / 2;
    if (excess(middle) < 0) from = middle;
    else to = middle;
  }
  return from;
}
