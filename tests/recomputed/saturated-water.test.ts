import { describe, test } from 'vitest';
import { FOOT, PSI } from '../../src/physics/customary.js';
import { heightOfPressure, pressureOfHeight } from '../../src/physics/elevation.js';
import { vapourPressure, waterDensity } from '../../src/physics/water.js';
import { expectPrinted } from '../published/hydraulic-units.js';

const CELSIUS = 273.15;
const WEIGHT = 'Saturated liquid by IAPWS auxiliary equations, worked out apart from this program';
describe(WEIGHT, () => {
  for (const [celsius, density, vapourHead, perFoot] of [
    [5, '999.91', '0.292', '0.4335'],
    [10, '999.65', '0.411', '0.4334'],
    [15, '999.05', '0.571', '0.4331'],
    [20, '998.16', '0.784', '0.4327'],
    [25, '997.00', '1.064', '0.4322'],
    [30, '995.60', '1.427', '0.4316'],
    [40, '992.17', '2.490', '0.4301'],
    [50, '987.99', '4.183', '0.4283'],
    [60, '983.15', '6.788', '0.4262'],
    [70, '977.73', '10.677', '0.4239'],
    [80, '971.76', '16.324', '0.4213'],
    [90, '965.29', '24.324', '0.4185'],
  ] as const) {
    test(`${WEIGHT}: ${celsius} degC, ${density} kg/m3, vapour head ${vapourHead} ft, ${perFoot} psi/ft`, () => {
      const temperature = celsius + CELSIUS;
      const found = waterDensity(temperature);
      expectPrinted(found, density);
      expectPrinted(heightOfPressure(vapourPressure(temperature), found) / FOOT, vapourHead);
      expectPrinted(pressureOfHeight(FOOT, found) / PSI, perFoot);
    });
  }
});
