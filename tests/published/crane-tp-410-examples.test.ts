import { describe, expect, test } from 'vitest';
import {
  checkOpeningVelocity,
  craneReducedBore,
  fullyTurbulentFriction,
} from '../../src/physics/crane-fitting.js';
import { convergingTee, divergingTee } from '../../src/physics/crane-tee.js';
import { FOOT, HORSEPOWER, LITRE_PER_MINUTE } from '../../src/physics/customary.js';
import { reynoldsNumber } from '../../src/physics/darcy-weisbach.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { fittingResistance, lossCoefficientOf } from '../../src/physics/fitting.js';
import { metricFlowCoefficientResistance } from '../../src/physics/flow-coefficient.js';
import { frictionFactor } from '../../src/physics/moody.js';
import { netPositiveSuctionHead } from '../../src/physics/npsh.js';
import { affinityFlow, affinityHead, affinityPower } from '../../src/physics/pump-curve/affinity.js';
import { shaftPower, waterPower } from '../../src/physics/pump-power.js';
import { flowVelocity, velocityHead } from '../../src/physics/velocity.js';
import { kinematicViscosity, vapourPressure, waterDensity } from '../../src/physics/water.js';
import { expectPrinted, fahrenheit, feet, gpm, inches, psi, WATER } from './hydraulic-units.js';

const SOURCE = 'Crane TP-410 (2009)';

describe(`${SOURCE}, friction in full turbulence`, () => {
  /** Bore of schedule 40 in mm, f_T of a public library whose correlation rounds to the printed table. */
  const SIZES: [string, number, number][] = [
    ['1/2', 15.76, 0.0256],
    ['3/4', 20.96, 0.0237],
    ['1', 26.64, 0.0223],
    ['1-1/4', 35.08, 0.0208],
    ['1-1/2', 40.94, 0.02],
    ['2', 52.48, 0.0189],
    ['2-1/2', 62.68, 0.0181],
    ['3', 77.92, 0.0172],
    ['4', 102.26, 0.0162],
    ['5', 128.2, 0.0154],
    ['6', 154.08, 0.0149],
  ];
  for (const [size, bore, printed] of SIZES) {
    test(`${SOURCE}, f_T of ${size} in: ${printed}`, () => {
      // One unit of the last digit for 2 in, at 0.01885, which the library rounds up.
      expect(Math.abs(fullyTurbulentFriction(bore / 1000) - printed)).toBeLessThan(0.000052);
    });
  }
});

describe(`${SOURCE}, velocity that holds a check valve open`, () => {
  for (const [kind, constant, printed] of [
    ['swing straight', 75, '2.37'],
    ['swing angled', 45, '1.42'],
    ['lift straight', 50, '1.58'],
    ['tilting disc 15 degrees', 40, '1.27'],
    ['tilting disc 5 degrees', 100, '3.17'],
    ['foot poppet', 20, '0.63'],
    ['foot hinged', 45, '1.42'],
  ] as const) {
    test(`${SOURCE}, ${kind}: ${printed} m/s in water of 998 kg/m3`, () => {
      expectPrinted(checkOpeningVelocity(constant, 998), printed);
    });
  }
});

test(`${SOURCE} example 7.1: 50 mm smooth pipe, 200 L/min at 30 degC, Re 100,600`, () => {
  // 0.4 %: the example takes the viscosity from a chart as 0.80 cP; IAPWS gives 0.797.
  const found = reynoldsNumber(200 * LITRE_PER_MINUTE, 0.0525, kinematicViscosity(303.15));
  expect(Math.abs(found / 100_600 - 1)).toBeLessThan(0.0045);
});

test(`${SOURCE} example 7.2: Y-globe valve, Kv 500, bore 154 mm: K 3.6, L/D 240, L 37.0 m`, () => {
  const bore = 0.15408;
  const found = lossCoefficientOf(metricFlowCoefficientResistance(500), bore);
  expectPrinted(found, '3.6');
  // The example goes on from the rounded K and f_T = 0.015.
  const diameters = 3.6 / 0.015;
  expectPrinted(diameters, '240');
  expectPrinted(diameters * bore, '37.0');
});

test(`${SOURCE} example 7.3: angle valve, 100 mm schedule 80: K 2.475, Kv 240.2`, () => {
  // K = 150 f_T with f_T = 0.0165; the bore of 97.18 mm follows from the printed L = 14.6 m at L/D 150 and is from memory.
  const resistance = fittingResistance(150 * 0.0165, 0.09718);
  const unit = metricFlowCoefficientResistance(1);
  expectPrinted(150 * 0.0165, '2.475');
  expectPrinted(150 * 0.09718, '14.6');
  // A part in a thousand for the density of water that the definition of Kv is read at.
  expectPrinted(Math.sqrt(unit / resistance), '240.2', 0.24);
});

test(`${SOURCE} example 7.5: lift check valve of 65 mm in 80 mm pipe at 300 L/min: K2 26.3, 14,450 Pa`, () => {
  // Lift check 600 f_T; f_T 0.018 and the bores 62.7 and 77.9 mm as rounded in print; water at 20 degC.
  const pipe = 0.0779;
  const found = craneReducedBore(600 * 0.018, 0.0627 / pipe);
  expectPrinted(found, '26.3');
  const head = fittingResistance(found, pipe) * (300 * LITRE_PER_MINUTE) ** 2;
  expect(Math.abs(pressureOfHeight(head, waterDensity(293.15)) - 14_450)).toBeLessThanOrEqual(5);
});

test(`${SOURCE} example 7.15: 100 gpm against 421 ft at 70 % takes 15.2 hp`, () => {
  expectPrinted(shaftPower(waterPower(gpm(100), feet(421), WATER), 0.7) / HORSEPOWER, '15.2');
});

test(`${SOURCE} example 7.32: NPSH available 13.9 ft (5 psig tank, 25 ft lift, 6 ft loss, 60 degF)`, () => {
  const temperature = fahrenheit(60);
  const found = netPositiveSuctionHead(
    psi(5 + 14.7),
    vapourPressure(temperature),
    waterDensity(temperature),
    feet(-25),
    feet(6),
  );
  expectPrinted(found / FOOT, '13.9');
});

test(`${SOURCE} example 7.33: 3500 to 1700 rpm turns 400 gpm, 126 ft, 17.5 hp into 194, 29.7, 2.0`, () => {
  const ratio = 1700 / 3500;
  expectPrinted(affinityFlow(400, ratio), '194');
  expectPrinted(affinityHead(126, ratio), '29.7');
  expectPrinted(affinityPower(17.5, ratio), '2.0');
});

test(`${SOURCE} example 7.34: 428 ft, 700 gpm, 70.7 %: 107.06 bhp; motor 0.95 and drive 0.96 make 117.4 hp`, () => {
  const shaft = shaftPower(waterPower(gpm(700), feet(428), WATER), 70.7 / 100) / HORSEPOWER;
  expectPrinted(shaft, '107.06');
  expectPrinted(shaft / 0.95 / 0.96, '117.4');
});

test(`${SOURCE} example 7.35: converging tee, 4 in, 300 + 100 gpm: V 10.08 ft/s, K -0.0422 and 0.325`, () => {
  const bore = inches(4.026);
  const flow = gpm(400);
  const tee = convergingTee(100 / 400, 90);
  expectPrinted(flowVelocity(flow, bore) / FOOT, '10.08');
  expectPrinted(tee.branch, '-0.0422');
  expectPrinted(tee.run, '0.325');
  expectPrinted((tee.branch * velocityHead(flow, bore)) / FOOT, '-0.067');
  expectPrinted((tee.run * velocityHead(flow, bore)) / FOOT, '0.513');
});

test(`${SOURCE} example 7.36: diverging 45 degree wye, 6 in schedule 80, 400 + 250 gpm: K 0.4646 and -0.0683`, () => {
  const bore = inches(5.761);
  const flow = gpm(650);
  const wye = divergingTee(250 / 650, 45);
  expectPrinted(wye.branch, '0.4646');
  expectPrinted(wye.run, '-0.0683');
  expectPrinted((wye.branch * velocityHead(flow, bore)) / FOOT, '0.462');
  expectPrinted((wye.run * velocityHead(flow, bore)) / FOOT, '-0.068');
});

test(`${SOURCE} example 7.1: friction factor 0.0179 at Re 100,600 in a smooth pipe`, () => {
  // Colebrook makes 0.01797: the print is cut off, or read from a chart. One unit of its last digit.
  expect(Math.abs(frictionFactor(100_600, 0) - 0.0179)).toBeLessThan(0.0001);
});

// Examples 7.6, 7.14, 7.15 (its head) and 7.19 are whole piping systems; what stands in them besides pipe has not been seen in
// full, so they are not here. Example 7.34's yearly cost is no law of water.
