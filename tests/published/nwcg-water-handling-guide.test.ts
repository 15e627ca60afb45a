import { describe, expect, test } from 'vitest';
import { sharpOrificeBore, sharpOrificeFlow } from '../../src/physics/nozzle/sharp-orifice.js';
import { expectPrinted, gpm, inches, psi, WATER } from './hydraulic-units.js';

const SOURCE = 'NWCG Water Handling Equipment Guide PMS 447-1, 5th ed., Oct 2003, App. C';

/** d = sqrt(Q / (29.9 x 0.62 sqrt P)) worked out for the bores and pressures of the federal engine contract, 2009. */
const READINGS = [
  ['0.716', 250, '150.3'],
  ['0.716', 312.5, '168.0'],
  ['0.716', 375, '184.0'],
  ['0.520', 100, '50.1'],
  ['0.520', 125, '56.0'],
  ['0.520', 150, '61.4'],
] as const;

/** The same formula for the flow and pressure that each engine type asks for. */
const BORES = [
  [10, 100, '0.232'],
  [250, 150, '1.049'],
  [200, 50, '1.235'],
  [300, 50, '1.513'],
  [500, 150, '1.484'],
  [1000, 150, '2.099'],
] as const;

describe(SOURCE, () => {
  for (const [bore, pressure, flow] of READINGS) {
    test(`${SOURCE}: ${bore} in orifice at ${pressure} psi passes ${flow} gpm`, () => {
      expectPrinted(sharpOrificeFlow(inches(Number(bore)), psi(pressure), WATER) / gpm(1), flow);
    });
  }

  for (const [flow, pressure, bore] of BORES) {
    test(`${SOURCE}: ${flow} gpm at ${pressure} psi takes an orifice of ${bore} in`, () => {
      expectPrinted(sharpOrificeBore(gpm(flow), psi(pressure), WATER) / inches(1), bore);
    });
  }
});

describe('USDA Forest Service engine contract template, 2009: test orifices', () => {
  // The contract's bores give its flows to 0.3 %: it rounds them up to the thousandth of an inch.
  for (const [bore, pressure, flow] of [
    [0.716, 250, 150],
    [0.52, 100, 50],
  ]) {
    test(`USDA Forest Service engine contract template, 2009: ${bore} in at ${pressure} psi is the typing's ${flow} gpm`, () => {
      const found = sharpOrificeFlow(inches(bore), psi(pressure), WATER) / gpm(1);
      expect(Math.abs(found / flow - 1)).toBeLessThan(0.003);
    });
  }
});
