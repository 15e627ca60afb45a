import { test } from 'vitest';
import { fittingResistance } from '../../src/physics/fitting.js';
import { netPositiveSuctionHead } from '../../src/physics/npsh.js';
import { vapourPressure, waterDensity } from '../../src/physics/water.js';
import { expectPrinted, fahrenheit, feet, inches, psi } from './hydraulic-units.js';

test('Textbook companion, Example 12.3: 0.5 cfs through 4 in, loss 20 velocity heads, NPSHr 15 ft, 80 degF: pump at most 7.65 ft up', () => {
  const temperature = fahrenheit(80);
  const flow = 0.5 * 0.3048 ** 3;
  const loss = fittingResistance(20, inches(4)) * flow ** 2;
  const density = waterDensity(temperature);
  const atWaterLevel = netPositiveSuctionHead(psi(14.7), vapourPressure(temperature), density, 0, loss);
  // The example's water weighs 62.22 lb/ft3 and its vapour 0.5069 psia: within 0.01 ft of this.
  expectPrinted((atWaterLevel - feet(15)) / feet(1), '7.65', 0.01);
});
