import { describe, expect, test } from 'vitest';
import { HORSEPOWER } from '../../src/physics/customary.js';
import { BrakePower } from '../../src/physics/pump-curve/brake-power.js';
import { HeldSpeed, type Lugging } from '../../src/physics/pump-curve/held-speed.js';
import { SOUND_CURVE as curve, DENSITY, gpm } from '../support/sound-curve.js';

const power = new BrakePower(
  curve,
  [
    [gpm(30), 0.38],
    [gpm(60), 0.55],
    [gpm(85), 0.56],
  ],
  DENSITY,
);

describe('power that a pump takes', () => {
  test('is gpm psi / 1714 over efficiency at each row', () => {
    const at60 = (60 * 318) / 1714 / 0.55;
    expect(power.at(gpm(60), 1) / HORSEPOWER).toBeCloseTo(at60, 2);
  });

  test('goes by the cube of the speed', () => {
    expect(power.at(gpm(48), 0.8)).toBeCloseTo(0.8 ** 3 * power.at(gpm(60), 1), 6);
  });

  test('does not vanish at no flow, where the pump churns', () => {
    const atNoFlow = power.at(0, 1);
    expect(atNoFlow).toBeGreaterThan(0.3 * power.at(gpm(30), 1) - 1e-9);
    expect(atNoFlow).toBeLessThanOrEqual(power.at(gpm(30), 1));
  });

  test('of a single row is half of it at no flow', () => {
    const one = new BrakePower(curve, [[gpm(60), 0.55]], DENSITY);
    expect(one.at(0, 1)).toBeCloseTo(0.5 * one.at(gpm(60), 1), 9);
  });
});

/** The same balance, found by nothing but halving. */
function bisected(flow: number, governed: number, available: number, lugging: Lugging): number {
  const left = (s: number) => (lugging === 'flat_torque' ? available * s : available);
  if (power.at(flow, governed) <= left(governed)) return governed;
  let low = 1e-6;
  let high = governed;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (power.at(flow, middle) > left(middle)) high = middle;
    else low = middle;
  }
  return low;
}

for (const lugging of ['constant_power', 'flat_torque'] as const) {
  for (const horsepower of [5, 10, 15, 18, 20, 23]) {
    test(`${horsepower} hp at ${lugging}: the speed held is the one that halving finds, at every flow and throttle`, () => {
      const held = new HeldSpeed(power, horsepower * HORSEPOWER, lugging);
      const out = { speed: 0, slope: 0 };
      for (const governed of [0.5, 0.8, 1, 1.1]) {
        for (let q = -10; q <= 130; q += 2.5) {
          held.evaluate(gpm(q), governed, out);
          expect(out.speed).toBeCloseTo(bisected(gpm(q), governed, horsepower * HORSEPOWER, lugging), 9);
        }
      }
    });

    test(`${horsepower} hp at ${lugging}: the slope told is the slope that there is`, () => {
      const held = new HeldSpeed(power, horsepower * HORSEPOWER, lugging);
      const out = { speed: 0, slope: 0 };
      for (let q = 3.3; q < 100; q += 7.1) {
        const step = gpm(1e-4);
        held.evaluate(gpm(q) + step, 1, out);
        const above = out.speed;
        held.evaluate(gpm(q) - step, 1, out);
        const measured = (above - out.speed) / (2 * step);
        held.evaluate(gpm(q), 1, out);
        expect(Math.abs(out.slope - measured)).toBeLessThan(1e-4 * Math.max(1, Math.abs(measured)));
      }
    });
  }
}
