import { test } from 'vitest';
import { hoseResistance } from '../../src/physics/hose-coefficient.js';
import { smoothBoreFlow } from '../../src/physics/nozzle/smooth-bore.js';
import { expectPrinted, feet, gpm, inches, psi, WATER } from './hydraulic-units.js';

test('Trade magazine, friction loss and flow testing, Sept 2018: 7/8 in tip at 50 psi, 161 gpm; 49 psi in 200 ft of 1-3/4 in is C 9.5', () => {
  expectPrinted(smoothBoreFlow(inches(7 / 8), psi(50), WATER) / gpm(1), '161');
  expectPrinted(psi(49) / (hoseResistance(1, feet(200)) * gpm(161) ** 2), '9.5');
});
