import { test } from 'vitest';
import { headAt } from '../../src/physics/pump-curve/curve.js';
import { onePointCurve, PowerCurve } from '../../src/physics/pump-curve/power.js';
import { expectPrinted } from './hydraulic-units.js';

test('EPANET 2.2 example Net1: one point, 1500 gpm at 250 ft, gives the heads that it reports (curve form from memory)', () => {
  const curve = new PowerCurve(onePointCurve({ flow: 1500, head: 250 }));
  // EPANET takes 1.33334 for 4/3, which is 0.002 ft at shutoff.
  for (const [flow, printed] of [
    [1866.176, '204.347'],
    [1848.581, '206.768'],
    [1837.461, '208.286'],
    [1757.036, '218.993'],
  ] as const) {
    expectPrinted(headAt(curve, flow), printed, 0.0005);
  }
});
