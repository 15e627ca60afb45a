import { test } from 'vitest';
import { hoseResistance } from '../../src/physics/hose-coefficient.js';
import { expectPrinted, feet, gpm, psi } from './hydraulic-units.js';

test('State forestry hose purchase specification, 2025: 10 psi in 100 ft of 1-1/2 in at 70 gpm is C 20.4, so C 24 fails it', () => {
  expectPrinted(psi(10) / (hoseResistance(1, feet(100)) * gpm(70) ** 2), '20.4');
  expectPrinted((hoseResistance(24, feet(100)) * gpm(70) ** 2) / psi(1), '11.8');
});
