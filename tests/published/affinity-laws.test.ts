import { test } from 'vitest';
import { affinityFlow, affinityHead, affinityPower } from '../../src/physics/pump-curve/affinity.js';
import { expectPrinted } from './hydraulic-units.js';

test('Engineering digest, pumps and affinity laws: 10 % more speed, 1.10, 1.21 and 1.331 times flow, head and power', () => {
  expectPrinted(affinityFlow(1, 1.1), '1.10');
  expectPrinted(affinityHead(1, 1.1), '1.21');
  expectPrinted(affinityPower(1, 1.1), '1.331');
});

test('Affinity laws worked out: 120 m3/h, 40 m, 18 kW at 1,450 rpm make 132.4, 48.7 and 24.2 at 1,600', () => {
  const ratio = 1600 / 1450;
  expectPrinted(affinityFlow(120, ratio), '132.4');
  expectPrinted(affinityHead(40, ratio), '48.7');
  expectPrinted(affinityPower(18, ratio), '24.2');
});
