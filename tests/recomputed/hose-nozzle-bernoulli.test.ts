import { test } from 'vitest';
import { jetResistance } from '../../src/physics/nozzle/orifice.js';
import { velocityHead } from '../../src/physics/velocity.js';
import { expectPrinted, gpm, inches, psiOfHead } from '../published/hydraulic-units.js';

test('Mechanics course (answer from memory): 250 gpm from a 1-1/8 in nozzle on 3 in hose needs 43.0 psi at the gauge', () => {
  const head = jetResistance(inches(1.125), 1) * gpm(250) ** 2 - velocityHead(gpm(250), inches(3));
  expectPrinted(psiOfHead(head), '43.0');
});
