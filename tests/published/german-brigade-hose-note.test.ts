import { test } from 'vitest';
import { LITRE_PER_MINUTE } from '../../src/physics/customary.js';
import { hoseCoefficientFromMetric, hoseResistance } from '../../src/physics/hose-coefficient.js';
import { expectPrinted } from './hydraulic-units.js';

test('Freiwillige Feuerwehr Pegau, training note on friction loss: 800 L/min in B-75 loses 1.28 bar in 100 m, C 1.27', () => {
  // p[bar/100 m] = 2 (Q/100)^2/100 is c = 2 kPa.
  const coefficient = hoseCoefficientFromMetric(2);
  expectPrinted((hoseResistance(coefficient, 100) * (800 * LITRE_PER_MINUTE) ** 2) / 1e5, '1.28');
  expectPrinted(coefficient, '1.27');
  expectPrinted(hoseCoefficientFromMetric(12), '7.6');
  expectPrinted(hoseCoefficientFromMetric(40), '25.3');
});
