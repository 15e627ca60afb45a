import { test } from 'vitest';
import { LITRE_PER_MINUTE } from '../../src/physics/customary.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { hoseCoefficientFromMetric, hoseResistance } from '../../src/physics/hose-coefficient.js';
import { expectPrinted, WATER } from './hydraulic-units.js';

test('ideasdebombero.com, note 10877 on friction loss: 45 mm hose, 200 L/min, 30 m, 0.30 bar; 20 m of rise, 2 bar', () => {
  // The note names no coefficient; this is the Quebec one of 45 mm hose.
  const found = hoseResistance(hoseCoefficientFromMetric(24.6), 30) * (200 * LITRE_PER_MINUTE) ** 2;
  expectPrinted(found / 1e5, '0.30');
  expectPrinted(pressureOfHeight(20, WATER) / 1e5, '2');
});
