import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../../../src/physics/constants.js';
import { AutomaticNozzle, automaticFlow } from '../../../src/physics/nozzle/automatic.js';
import { fogFlow, fogResistance } from '../../../src/physics/nozzle/fog.js';
import { openEndResistance } from '../../../src/physics/nozzle/open-end.js';
import { IDEAL_JET_CONSTANT } from '../../../src/physics/nozzle/orifice.js';
import {
  SHARP_ORIFICE_COEFFICIENT,
  sharpOrificeBore,
  sharpOrificeFlow,
  sharpOrificeResistance,
} from '../../../src/physics/nozzle/sharp-orifice.js';
import { smoothBoreFlow, smoothBoreResistance } from '../../../src/physics/nozzle/smooth-bore.js';
import { velocityHead } from '../../../src/physics/velocity.js';

const WEIGHT = REFERENCE_WATER_DENSITY * STANDARD_GRAVITY;

test('an ideal 1 in jet at 1 psi is the 29.84 gpm of the trade', () => {
  expect(IDEAL_JET_CONSTANT).toBeCloseTo(29.84, 2);
});

describe('resistance and flow of a nozzle are one law', () => {
  test('smooth bore', () => {
    const flow = smoothBoreFlow(0.0127, 350_000, REFERENCE_WATER_DENSITY);
    expect(smoothBoreResistance(0.0127) * flow ** 2 * WEIGHT).toBeCloseTo(350_000, 4);
  });

  test('fog', () => {
    const flow = fogFlow(0.002, 700_000, 400_000);
    expect(fogResistance(0.002, 700_000) * flow ** 2 * WEIGHT).toBeCloseTo(400_000, 4);
  });

  test('sharp orifice: the static gauge is the total head less that of the velocity in its tee', () => {
    const bore = 0.716 * 0.0254;
    const tee = 0.0381;
    const flow = sharpOrificeFlow(bore, 1_723_689, REFERENCE_WATER_DENSITY);
    const total = sharpOrificeResistance(bore, tee) * flow ** 2;
    expect((total - velocityHead(flow, tee)) * WEIGHT).toBeCloseTo(1_723_689, 3);
    expect(sharpOrificeBore(flow, 1_723_689, REFERENCE_WATER_DENSITY)).toBeCloseTo(bore, 12);
    expect(SHARP_ORIFICE_COEFFICIENT).toBeCloseTo(0.6213, 4);
  });

  test('an open end loses one velocity head', () => {
    expect(openEndResistance(0.0381) * 0.005 ** 2).toBeCloseTo(velocityHead(0.005, 0.0381), 12);
  });
});

describe('an automatic nozzle', () => {
  const nozzle = new AutomaticNozzle(700_000, 0.0006, 0.0038);
  const at = (flow: number) => {
    const out = { loss: 0, slope: 0 };
    nozzle.evaluate(flow, out);
    return out;
  };

  test('holds its pressure within 1 % through its range and tells where it stands', () => {
    for (const flow of [0.0006, 0.001, 0.0022, 0.0038]) {
      expect(Math.abs((at(flow).loss * WEIGHT) / 700_000 - 1)).toBeLessThanOrEqual(0.010001);
      expect(nozzle.state(flow)).toBe('regulating');
    }
    expect(nozzle.state(0.0005)).toBe('below');
    expect(nozzle.state(0.004)).toBe('above');
  });

  test('is a fixed orifice below and above it', () => {
    expect(at(0.0003).loss / at(0.0006).loss).toBeCloseTo(0.25, 12);
    expect(at(0.0076).loss / at(0.0038).loss).toBeCloseTo(4, 12);
  });

  test('takes more head for more flow, everywhere, with no step, and its slope is that of its loss', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.008, max: 0.008, noNaN: true }), (flow) => {
        const step = 1e-9;
        const rise = at(flow + step).loss - at(flow - step).loss;
        expect(rise).toBeGreaterThanOrEqual(0);
        expect(rise).toBeLessThan(1);
        const nearEdge = [0, 0.0006, 0.0038].some((edge) => Math.abs(Math.abs(flow) - edge) < 1e-7);
        if (!nearEdge) expect(Math.abs(rise / (2 * step) / at(flow).slope - 1)).toBeLessThan(1e-3);
      }),
    );
  });

  test('its flow at a pressure is the inverse of its law', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-5, max: 0.008, noNaN: true }), (flow) => {
        expect(Math.abs(automaticFlow(nozzle, at(flow).loss * WEIGHT) / flow - 1)).toBeLessThan(1e-9);
      }),
    );
  });

  test('refuses a range that is none', () => {
    expect(() => new AutomaticNozzle(700_000, 0.002, 0.001)).toThrow(RangeError);
    expect(() => new AutomaticNozzle(0, 0.001, 0.002)).toThrow(RangeError);
  });
});
