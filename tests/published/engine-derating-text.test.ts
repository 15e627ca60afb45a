import { expect, test } from 'vitest';
import { altitudeDerating, enginePower, temperatureDerating } from '../../src/physics/engine-derating.js';
import { expectPrinted, fahrenheit, feet } from './hydraulic-units.js';

const SOURCE = 'Agricultural Engineering (progressivegardening.com), Altitude and Temperature';

test(`${SOURCE}: 165 hp spark engine at 100 degF, 162.525 hp`, () => {
  expectPrinted(165 * temperatureDerating(fahrenheit(100), 'natural', 'gasoline'), '162.525');
});

test(`${SOURCE}: 225 hp at 4,500 ft, 12 % less, 198.0 hp (answer worked out from the rule)`, () => {
  expectPrinted(enginePower(225, feet(4500), fahrenheit(59), 'natural', 'gasoline'), '198.0');
});

test(`${SOURCE}: 3 % in 1,000 ft above 500 ft`, () => {
  for (const [elevation, printed] of [
    [0, '1.000'],
    [2000, '0.955'],
    [4000, '0.895'],
    [5000, '0.865'],
    [6000, '0.835'],
    [8000, '0.775'],
    [10000, '0.715'],
  ] as const) {
    expectPrinted(altitudeDerating(feet(elevation), 'natural'), printed);
  }
});

test(`${SOURCE}: diesel loses 1 % in 5 degF above 85 degF, a turbocharged engine nothing`, () => {
  expectPrinted(temperatureDerating(fahrenheit(100), 'natural', 'diesel'), '0.970');
  expect(altitudeDerating(feet(8000), 'turbo')).toBe(1);
  expect(temperatureDerating(fahrenheit(100), 'turbo', 'diesel')).toBe(1);
});
