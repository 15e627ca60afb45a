import { expect, test } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';

test('what does not balance is no answer, however loosely it was asked for: no number is given, and the worst place is named', () => {
  const solver = new NetworkSolver({
    nodes: [
      { name: 'lake', elevation: 0, head: 100 },
      { name: 'junction', elevation: 0 },
      { name: 'air', elevation: 0, head: 0 },
      { name: 'other air', elevation: 0, head: 0 },
    ],
    links: [
      {
        name: 'main',
        from: 0,
        to: 1,
        law: { kind: 'power', resistance: 5e6, exponent: 1.852, minor: 0, linearBelow: 1e-6 },
      },
      { name: 'jet', from: 1, to: 2, law: { kind: 'resistance', resistance: 4e7, linearBelow: 1e-6 } },
      { name: 'other jet', from: 1, to: 3, law: { kind: 'resistance', resistance: 9e7, linearBelow: 1e-6 } },
    ],
  });
  const loose = solver.solve({ headTolerance: 1e9, flowTolerance: 1e9 });
  expect(loose.status).toBe('failed');
  expect(loose.failure?.where[0]).toMatch(/main|jet|junction/);
  expect([...loose.flows, ...loose.heads].every(Number.isNaN)).toBe(true);
  const { status, headResidual, flowResidual } = solver.solve();
  expect(status).toBe('solved');
  expect(headResidual).toBeLessThan(1e-6);
  expect(flowResidual).toBeLessThan(1e-8);
});
