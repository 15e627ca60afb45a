import { describe, expect, test } from 'vitest';
import { HORSEPOWER } from '../../src/physics/customary.js';
import { BrakePower } from '../../src/physics/pump-curve/brake-power.js';
import { headAt } from '../../src/physics/pump-curve/curve.js';
import { HeldSpeed } from '../../src/physics/pump-curve/held-speed.js';
import { unsteadyStretches } from '../../src/physics/pump-curve/unsteady-stretch.js';
import { SOUND_CURVE as curve, DENSITY, gpm } from '../support/sound-curve.js';

const powerOf = (rows: [number, number][]) =>
  new BrakePower(
    curve,
    rows.map(([q, part]) => [gpm(q), part]),
    DENSITY,
  );
const GENTLE = powerOf([
  [30, 0.38],
  [60, 0.55],
  [85, 0.56],
]);
const LEAPING = powerOf([
  [30, 0.65],
  [55, 0.22],
  [85, 0.6],
]);

test('rows such as a pump has leave no stretch unsteady', () => {
  expect(unsteadyStretches(GENTLE, 3)).toEqual({ folds: [], all: [] });
  expect(unsteadyStretches(GENTLE, 2)).toEqual({ folds: [], all: [] });
});

for (const exponent of [2, 3]) {
  test(`with exponent ${exponent} flow falls within the folds only, and head rises within the stretches only`, () => {
    const { folds, all } = unsteadyStretches(LEAPING, exponent);
    expect(folds.length).toBe(1);
    expect(all.length).toBeGreaterThan(0);
    const step = gpm(0.01);
    const inside = (stretches: typeof all, x: number) =>
      stretches.some(({ from, to }) => x + step > from && x < to);
    const at = (x: number) => {
      const s = LEAPING.at(x, 1) ** (-1 / exponent);
      return { flow: s * x, head: s * s * headAt(curve, x) };
    };
    let backward = 0;
    let upward = 0;
    for (let x = step; x < gpm(104); x += step) {
      const here = at(x);
      const next = at(x + step);
      if (next.flow < here.flow) {
        backward++;
        expect(inside(folds, x), `${x / gpm(1)} gpm`).toBe(true);
      }
      if (next.head > here.head) {
        upward++;
        expect(inside(all, x), `${x / gpm(1)} gpm`).toBe(true);
      }
    }
    expect(backward).toBeGreaterThan(100);
    expect(upward).toBeGreaterThan(100);
  });
}

describe('an engine on rows that leap', () => {
  for (const lugging of ['constant_power', 'flat_torque'] as const) {
    test(`of ${lugging} holds the highest speed that balances, as a search downward in small steps finds it`, () => {
      const out = { speed: 0, slope: 0 };
      for (const horsepower of [8, 12, 16, 20]) {
        const held = new HeldSpeed(LEAPING, horsepower * HORSEPOWER, lugging);
        for (const governed of [0.8, 1]) {
          for (let q = 1.3; q < 100; q += 0.7) {
            let s = governed;
            while (LEAPING.at(gpm(q), s) > held.availableAt(s)) s -= 1e-4;
            held.evaluate(gpm(q), governed, out);
            expect(Math.abs(out.speed - s), `${q} gpm, ${horsepower} hp`).toBeLessThan(1.001e-4);
          }
        }
      }
    });
  }

  test('is unsteady only where it is short of power', () => {
    const strong = new HeldSpeed(LEAPING, 1000 * HORSEPOWER, 'flat_torque');
    expect(strong.unsteadyAt(1)).toEqual([]);
    const weak = new HeldSpeed(LEAPING, 10 * HORSEPOWER, 'flat_torque');
    expect(weak.unsteadyAt(1).length).toBeGreaterThan(0);
    expect(weak.unsteadyAt(0.2)).toEqual([]);
  });
});
