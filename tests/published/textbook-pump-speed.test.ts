import { test } from 'vitest';
import { affinityFlow, affinityHead } from '../../src/physics/pump-curve/affinity.js';
import { expectPrinted } from './hydraulic-units.js';

test('Textbook companion, pump at 1170 and 1750 rpm: 300 gpm, 21.9 ft, shutoff 25 ft make 449, 49.0 and 55.9', () => {
  const ratio = 1750 / 1170;
  expectPrinted(affinityFlow(300, ratio), '449');
  expectPrinted(affinityHead(21.9, ratio), '49.0');
  expectPrinted(affinityHead(25, ratio), '55.9');
});
