import { describe, expect, test } from 'vitest';
import { PSI } from '../../src/physics/customary.js';
import { vapourPressure, waterDensity } from '../../src/physics/water.js';
import { expectPrinted, fahrenheit } from './hydraulic-units.js';

const CELSIUS = 273.15;
const CRC = 'CRC Handbook of Chemistry and Physics, 1992-93, vapour pressure of water';
const CRC_TABLE: [number, number][] = [
  [0.01, 611.7],
  [5, 872.6],
  [10, 1228.1],
  [15, 1705.6],
  [20, 2338.8],
  [25, 3169.0],
  [30, 4245.5],
  [35, 5626.7],
  [40, 7381.4],
  [50, 12344],
  [60, 19932],
  [70, 31176],
  [80, 47373],
  [90, 70117],
];

describe(CRC, () => {
  for (const [celsius, printed] of CRC_TABLE) {
    test(`${CRC}: ${printed} Pa at ${celsius} degC`, () => {
      // The handbook's equation and that of IAPWS differ by up to 0.1 %.
      expect(Math.abs(vapourPressure(celsius + CELSIUS) / printed - 1)).toBeLessThanOrEqual(0.001);
    });
  }
});

const TRIPLE = 'NBS 1976, triple point of water, 611.657 Pa';
test(TRIPLE, () => {
  expect(Math.abs(vapourPressure(273.16) - 611.657)).toBeLessThan(0.001);
});

const FAHRENHEIT_TABLE = 'Engineering table of vapour pressure by degF, psia';
/**
 * This table follows a steam table older than IAPWS: it lies up to 0.25 % below both IAPWS and the CRC table from 90 degF up (0.24 % at 160),
 * where those two agree within 0.1 %.
 */
const OLD_STEAM_TABLE = 0.0025;
describe(FAHRENHEIT_TABLE, () => {
  for (const [degrees, printed] of [
    [32, '.0885'],
    [40, '.1217'],
    [50, '.1781'],
    [60, '.2563'],
    [70, '.3631'],
    [80, '.5069'],
    [90, '.6979'],
    [100, '.9493'],
    [120, '1.692'],
    [140, '2.888'],
    [160, '4.736'],
    [180, '7.507'],
    [200, '11.52'],
    [212, '14.69'],
  ] as const) {
    test(`${FAHRENHEIT_TABLE}: ${printed} at ${degrees}`, () => {
      const found = vapourPressure(fahrenheit(degrees)) / PSI;
      expectPrinted(found, printed, OLD_STEAM_TABLE * found);
    });
  }
});

const PERRY = "Perry's Chemical Engineers' Handbook, 9th ed., Table 2-135";
const MOLAR_MASS = 18.015268;
describe(PERRY, () => {
  for (const [kelvin, megapascals, moles] of [
    [280, '.000992', '55.501'],
    [290, '.001920', '55.440'],
    [300, '.003537', '55.315'],
    [310, '.006231', '55.139'],
    [320, '.010546', '54.919'],
  ] as const) {
    test(`${PERRY}: ${kelvin} K, ${megapascals} MPa, ${moles} mol/dm3`, () => {
      expectPrinted(vapourPressure(kelvin) / 1e6, megapascals, 1e-6);
      // 0.02 kg/m3, by which the auxiliary equation follows the full one.
      expectPrinted(waterDensity(kelvin) / MOLAR_MASS, moles, 0.02 / MOLAR_MASS);
    });
  }
});

test(`${FAHRENHEIT_TABLE}: 0.2563 at 60, within 0.1 %`, () => {
  expect(Math.abs(vapourPressure(fahrenheit(60)) / PSI / 0.2563 - 1)).toBeLessThan(0.001);
});
