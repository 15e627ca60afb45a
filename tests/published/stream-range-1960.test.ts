import { test } from 'vitest';
import { smoothBoreReach } from '../../src/physics/nozzle/reach.js';
import { expectPrinted, feet, inches, psi } from './hydraulic-units.js';

test('Fire Engineering, Questions and Answers, Aug 1960: 1 in tip at 50 psi reaches 61 ft', () => {
  expectPrinted((smoothBoreReach(inches(1), psi(50)) ?? Number.NaN) / feet(1), '61');
});
