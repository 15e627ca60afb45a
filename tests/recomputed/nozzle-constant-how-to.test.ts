import { test } from 'vitest';
import { dischargeCoefficientOf, jetFlow } from '../../src/physics/nozzle/orifice.js';
import { expectPrinted, gpm, inches, psi, WATER } from '../published/hydraulic-units.js';

test('Rule of the trade (common practice, no source): 1-1/2 in tip at 40 psi by the constant 30, 426.6 gpm', () => {
  // The page takes 6.32 for the root of 40, which makes 426.6 of 426.9: 0.07 %.
  const found = jetFlow(inches(1.5), dischargeCoefficientOf(30), psi(40), WATER) / gpm(1);
  expectPrinted((found * 6.32) / Math.sqrt(40), '426.6');
});
