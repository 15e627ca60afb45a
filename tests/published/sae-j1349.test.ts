import { expect, test } from 'vitest';
import { standardPressure, standardTemperature } from '../../src/physics/atmosphere.js';
import { saePowerLeft, saeSparkCorrection } from '../../src/physics/sae-j1349.js';
import { expectPrinted, fahrenheit, feet } from './hydraulic-units.js';

const SOURCE = 'SAE J1349 (Jun 1990), spark ignition, quoted second hand';

/** ft, then what is left of the power at 77 degF and in the standard atmosphere, from the quoted formula by hand. */
const LEFT = [
  [0, '1.028', '1.049'],
  [2000, '0.943', '0.970'],
  [4000, '0.866', '0.897'],
  [5000, '0.829', '0.863'],
  [6000, '0.794', '0.830'],
  [8000, '0.729', '0.767'],
  [10000, '0.668', '0.709'],
] as const;

for (const [height, warm, standard] of LEFT) {
  test(`${SOURCE}: 1/CF at ${height} ft, ${warm} at 77 degF and ${standard} in the standard atmosphere`, () => {
    const pressure = standardPressure(feet(height));
    // The air pressure is rounded in the table's working, so that its last digit may differ by one.
    expectPrinted(saePowerLeft(pressure, fahrenheit(77), 'natural', 'gasoline'), warm, 0.001);
    const temperature = standardTemperature(feet(height));
    expectPrinted(saePowerLeft(pressure, temperature, 'natural', 'gasoline'), standard, 0.001);
  });
}

test(`${SOURCE}: 1 in the reference air, 990 mbar dry at 25 degC`, () => {
  expect(saeSparkCorrection(99_000, 298)).toBe(1);
});

test(`${SOURCE}: the quoted inch form is right with 537 degR and wrong with the 505 that is printed`, () => {
  const inch = (rankine: number) => 1.18 * ((29.23 / 25) * Math.sqrt((rankine + 20) / rankine)) - 0.18;
  const ours = saeSparkCorrection((25 / 29.23) * 99_000, (298 * (537 + 20)) / 537);
  expect(ours).toBeCloseTo(inch(537), 6);
  expect(Math.abs(ours - inch(505))).toBeGreaterThan(0.001);
});
