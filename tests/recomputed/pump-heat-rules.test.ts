import { expect, test } from 'vitest';
import { flowForRise, roughLeastFlow, timeToWarm } from '../../src/physics/pump-heat.js';
import { churningHeatRate } from '../../src/physics/pump-power.js';
import { waterDensity } from '../../src/physics/water.js';
import { GPM, HORSEPOWER, kelvin } from '../support/heat.js';

/** Water at 60 degF as general pump texts have it, 8.34 lb a gallon. */
const DENSITY = waterDensity(kelvin(60));
const GALLON = 231 * 0.0254 ** 3;

test('Rule of the trade (common practice, no source), minimum flow for a rise of 15 degF: gpm = bhp / 2.95, 10 hp -> 3.4 gpm', () => {
  const flow = flowForRise(10 * HORSEPOWER, 15 / 1.8, DENSITY) / GPM;
  expect(flow).toBeCloseTo(3.4, 1);
  expect(flow).toBeCloseTo(10 / 2.95, 1);
});

test('Rule of the trade (common practice, no source), rough rule: 300 gpm for each 100 hp at shutoff, 10 hp -> 30 gpm', () => {
  expect(roughLeastFlow(10 * HORSEPOWER) / GPM).toBeCloseTo(30, 9);
});

// 42.4 Btu a minute make a horsepower; 8.34 lb a gallon. 0.5 % for the specific heat, which is from memory.
test('Energy balance, degF a minute = 42.4 hp / (8.34 gal): 10 hp into 1 gal -> 51 degF a minute', () => {
  const rate = churningHeatRate(10 * HORSEPOWER, GALLON * DENSITY) * 60 * 1.8;
  expect(Math.round(rate)).toBe(51);
});

test('Energy balance, 10 hp into 1 gal from 60 degF: 140 degF in 1.6 min, boiling in 3 min', () => {
  const minutes = (to: number) => timeToWarm(10 * HORSEPOWER, GALLON * DENSITY, kelvin(60), kelvin(to)) / 60;
  expect(minutes(140)).toBeCloseTo(1.6, 1);
  expect(Math.round(minutes(212))).toBe(3);
});
