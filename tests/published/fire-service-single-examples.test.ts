import { expect, test } from 'vitest';
import { INCH_OF_MERCURY, LITRE_PER_MINUTE } from '../../src/physics/customary.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { hoseCoefficientFromMetric, hoseResistance } from '../../src/physics/hose-coefficient.js';
import { dischargeCoefficientOf, jetFlow, jetResistance } from '../../src/physics/nozzle/orifice.js';
import { smoothBoreReaction } from '../../src/physics/nozzle/reaction.js';
import { smoothBoreFlow } from '../../src/physics/nozzle/smooth-bore.js';
import { liftFromVacuum } from '../../src/physics/npsh.js';
import { velocityHead } from '../../src/physics/velocity.js';
import { expectPrinted, feet, gpm, inches, psi, psiOfHead, WATER } from './hydraulic-units.js';

/** Sources of which one figure only is a law's: each stands alone. */

test('Trade magazine, friction loss and flow testing, Sept 2018: 7/8 in tip at 50 psi, 161 gpm; 49 psi in 200 ft of 1-3/4 in is C 9.5', () => {
  expectPrinted(smoothBoreFlow(inches(7 / 8), psi(50), WATER) / gpm(1), '161');
  expectPrinted(psi(49) / (hoseResistance(1, feet(200)) * gpm(161) ** 2), '9.5');
});

test('Fire-service study cards, static water supply: vacuum of 22 inHg lifts about 25 ft', () => {
  expectPrinted(liftFromVacuum(22 * INCH_OF_MERCURY) / feet(1), '25');
});

test('German volunteer brigade training note: 800 L/min in B-75 loses 1.28 bar in 100 m, C 1.27', () => {
  // p[bar/100 m] = 2 (Q/100)^2/100 is c = 2 kPa.
  const coefficient = hoseCoefficientFromMetric(2);
  expectPrinted((hoseResistance(coefficient, 100) * (800 * LITRE_PER_MINUTE) ** 2) / 1e5, '1.28');
  expectPrinted(coefficient, '1.27');
  expectPrinted(hoseCoefficientFromMetric(12), '7.6');
  expectPrinted(hoseCoefficientFromMetric(40), '25.3');
});

test('Spanish firefighter note: 45 mm hose, 200 L/min, 30 m, 0.30 bar; 20 m of rise, 2 bar', () => {
  // The note names no coefficient; this is the Quebec one of 45 mm hose.
  const found = hoseResistance(hoseCoefficientFromMetric(24.6), 30) * (200 * LITRE_PER_MINUTE) ** 2;
  expectPrinted(found / 1e5, '0.30');
  expectPrinted(pressureOfHeight(20, WATER) / 1e5, '2');
});

test('Web how-to: 1-1/2 in tip at 40 psi by the constant 30, 426.6 gpm', () => {
  // The page takes 6.32 for the root of 40, which makes 426.6 of 426.9: 0.07 %.
  const found = jetFlow(inches(1.5), dischargeCoefficientOf(30), psi(40), WATER) / gpm(1);
  expectPrinted((found * 6.32) / Math.sqrt(40), '426.6');
});

test('Mechanics course (answer from memory): 250 gpm from a 1-1/8 in nozzle on 3 in hose needs 43.0 psi at the gauge', () => {
  const head = jetResistance(inches(1.125), 1) * gpm(250) ** 2 - velocityHead(gpm(250), inches(3));
  expectPrinted(psiOfHead(head), '43.0');
});

test('State forestry hose purchase specification, 2025: 10 psi in 100 ft of 1-1/2 in at 70 gpm is C 20.4, so C 24 fails it', () => {
  expectPrinted(psi(10) / (hoseResistance(1, feet(100)) * gpm(70) ** 2), '20.4');
  expectPrinted((hoseResistance(24, feet(100)) * gpm(70) ** 2) / psi(1), '11.8');
});

test('University extension irrigation sheet, Table 3: 3/16 in nozzle at 40 psi, 6.41 gpm, is a coefficient of 0.966', () => {
  expectPrinted((6.41 * gpm(1)) / jetFlow(inches(3 / 16), 1, psi(40), WATER), '0.966');
});

test('Fire-department formula cards: smooth-bore reaction 1.57 d2 NP is about a third of the flow at 50 psi', () => {
  // 1 in at 50 psi: 78.5 lbf, and 210 gpm / 3 = 70: the cards' "about" is 12 %.
  const pounds = smoothBoreReaction(inches(1), psi(50)) / 4.4482216;
  expectPrinted(pounds, '78.5');
  expect(Math.abs(pounds / (210 / 3) - 1)).toBeLessThan(0.13);
});
