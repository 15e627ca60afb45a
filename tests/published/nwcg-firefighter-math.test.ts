import { describe, expect, test } from 'vitest';
import { FOOT, INCH, INCH_OF_MERCURY, PSI, US_GALLON } from '../../src/physics/customary.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { attainableLift, liftFromVacuum, theoreticalLift } from '../../src/physics/npsh.js';
import { boreArea } from '../../src/physics/velocity.js';
import { expectPrinted, feet, inches, psi, WATER } from './hydraulic-units.js';

const SOURCE = 'NWCG Firefighter Math';

describe(SOURCE, () => {
  test(`${SOURCE} 3.5: 14.7 psi holds up 33.9 ft of water`, () => {
    expectPrinted(theoreticalLift(psi(14.7), WATER) / FOOT, '33.9');
  });

  test(`${SOURCE} 3.5: attainable lift, 2/3 of 33.9 ft, 22.5 ft`, () => {
    // Two thirds of 33.9 is 22.6; the page prints the half foot below.
    expect(Math.floor(attainableLift(33.9) * 2) / 2).toBe(22.5);
  });

  test(`${SOURCE} Table 3.1: 1.13 ft of lift for each inch of mercury, and 1.134`, () => {
    expectPrinted(liftFromVacuum(INCH_OF_MERCURY) / FOOT, '1.13');
    expectPrinted(theoreticalLift(INCH_OF_MERCURY, WATER) / FOOT, '1.134');
  });

  test(`${SOURCE} Table 3.1: 0.434 psi to the foot, 2.304 ft to the psi`, () => {
    // The page weighs water at 62.5 lb/ft3, 0.22 % over that of 60 degF.
    const PAGE_WATER = (62.5 * 0.45359237) / FOOT ** 3;
    expectPrinted(pressureOfHeight(FOOT, PAGE_WATER) / PSI, '0.434');
    expectPrinted(theoreticalLift(PSI, PAGE_WATER) / FOOT, '2.304');
    expect(Math.abs(WATER / PAGE_WATER - 1)).toBeLessThan(0.0025);
  });

  test(`${SOURCE} 3.3: 100 ft of 1 in hose holds 942 cubic inches, 4 gal`, () => {
    const volume = boreArea(inches(1)) * feet(100);
    expectPrinted(volume / INCH ** 3, '942');
    expectPrinted(volume / US_GALLON, '4');
  });

  test(`${SOURCE} Table 3.1: 100 ft of 1-1/2 in hose holds 9.2 gal and of 1 in 4.1 gal`, () => {
    expectPrinted((boreArea(inches(1.5)) * feet(100)) / US_GALLON, '9.2');
    expectPrinted((boreArea(inches(1)) * feet(100)) / US_GALLON, '4.1');
  });
});
