import { test } from 'vitest';
import { INCH_OF_MERCURY } from '../../src/physics/customary.js';
import { liftFromVacuum } from '../../src/physics/npsh.js';
import { expectPrinted, feet } from './hydraulic-units.js';

test('Fire-service study cards, static water supply: vacuum of 22 inHg lifts about 25 ft', () => {
  expectPrinted(liftFromVacuum(22 * INCH_OF_MERCURY) / feet(1), '25');
});
