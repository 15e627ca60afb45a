import { describe, expect, test } from 'vitest';
import { DarcyWeisbachLoss } from '../../src/physics/darcy-weisbach.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { jetFlow } from '../../src/physics/nozzle/orifice.js';
import { flowVelocity } from '../../src/physics/velocity.js';
import { kinematicViscosity } from '../../src/physics/water.js';
import { expectPrinted, fahrenheit, feet, gpm, inches, WATER } from './hydraulic-units.js';

const NOZZLES = 'Hydraulic Institute Engineering Data Library, theoretical discharge of nozzles';
const TIPS = [1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1, 1.125, 1.25, 1.375, 1.5, 1.75, 2];
const NOZZLE_TABLE: [number, string][] = [
  [10, '1.5 3.3 5.9 13.3 23.6 36.9 53.0 72 94 119 147 178 212 289 378'],
  [15, '1.8 4.1 7.2 16.3 28.9 45.2 65 88 116 146 181 219 260 354 462'],
  [20, '2.1 4.7 8.3 18.8 33.4 52.1 75 102 133 169 209 252 300 409 534'],
  [25, '2.3 5.2 9.3 21.0 37.3 58.3 84 114 149 189 233 282 336 457 597'],
  [30, '2.6 5.7 10.2 23.0 40.9 63.9 92 125 163 207 255 309 368 501 654'],
];

/**
 * The source works with 2.31 ft of water to the psi and gpm = 19.636 d^2 sqrt(h[ft]). Exact units make 19.637: a part in 20,000,
 * which 7/8 in at 15 psi, at 88.4958 by the source and 88.5006 by exact units, falls between.
 */
const CONSTANT = 19.636 / 19.637;
const pressureOf = (value: number) => pressureOfHeight(feet(2.31 * value), WATER);
/** 3/4 in at 10 psi is printed 53.0; the source's own formula makes 53.09. Its last digit is let off by one. */
const MISPRINTED = '53.0';

describe(NOZZLES, () => {
  for (const [pressure, row] of NOZZLE_TABLE) {
    for (const [i, printed] of row.split(' ').entries()) {
      test(`${NOZZLES}: ${TIPS[i]} in at ${pressure} psi flows ${printed} gpm`, () => {
        const found = jetFlow(inches(TIPS[i]), CONSTANT, pressureOf(pressure), WATER) / gpm(1);
        if (printed === MISPRINTED) expect(Math.abs(found - 53)).toBeLessThan(0.1);
        else expectPrinted(found, printed);
      });
    }
  }
});

const PIPES = 'Pump handbook Table 3.5 (Hydraulic Institute), schedule 40 steel pipe, 60 degF';
/** Bore in inches, flow in gpm, loss in feet per 100 ft. */
const PIPE_TABLE: [string, number, number, string][] = [
  ['2-1/2 in', 2.469, 50, '1.94'],
  ['2-1/2 in', 2.469, 100, '7.11'],
  ['2-1/2 in', 2.469, 150, '15.4'],
  ['3 in', 3.068, 50, '0.66'],
  ['3 in', 3.068, 100, '2.39'],
  ['3 in', 3.068, 150, '5.14'],
  ['4 in', 4.026, 100, '0.62'],
  ['4 in', 4.026, 150, '1.32'],
];
/**
 * The source does not print the viscosity that it takes for 60 degF. Tables of it differ by 1.5 %, which moves the loss by 0.2 %; that
 * is more than the printed precision for 2-1/2 in at 50 and 100 gpm (1.933 and 7.095 here) and for nothing else.
 */
const VISCOSITY_DOUBT = 0.002;
const VELOCITIES: [string, number, string][] = [
  ['2-1/2 in', 2.469, '6.70'],
  ['3 in', 3.068, '4.34'],
  ['4 in', 4.026, '2.52'],
];

describe(PIPES, () => {
  for (const [size, bore, flow, printed] of PIPE_TABLE) {
    test(`${PIPES}: ${size} at ${flow} gpm loses ${printed} ft per 100 ft`, () => {
      const pipe = new DarcyWeisbachLoss({
        length: feet(100),
        bore: inches(bore),
        roughness: feet(0.00015),
        viscosity: kinematicViscosity(fahrenheit(60)),
      });
      const out = { loss: 0, slope: 0 };
      pipe.evaluate(gpm(flow), out);
      const found = out.loss / feet(1);
      expectPrinted(found, printed, VISCOSITY_DOUBT * found);
    });
  }

  for (const [size, bore, printed] of VELOCITIES) {
    test(`${PIPES}: ${size} at 100 gpm runs at ${printed} ft/s`, () => {
      expectPrinted(flowVelocity(gpm(100), inches(bore)) / feet(1), printed);
    });
  }
});
