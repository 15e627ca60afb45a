import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SpeedCurve } from '../../../src/physics/pump-curve/affinity.js';
import { headAt, type PumpCurve } from '../../../src/physics/pump-curve/curve.js';
import { leastSquares } from '../../../src/physics/pump-curve/least-squares.js';
import { MonotoneCurve } from '../../../src/physics/pump-curve/monotone.js';
import { PowerCurve } from '../../../src/physics/pump-curve/power.js';
import { fitQuadratic, QuadraticCurve, quadraticThrough } from '../../../src/physics/pump-curve/quadratic.js';
import { WornCurve } from '../../../src/physics/pump-curve/wear.js';

/** The invented pump of the examples, in round SI figures. */
const POINTS = [
  { flow: 0, head: 292 },
  { flow: 0.0019, head: 271 },
  { flow: 0.0038, head: 224 },
  { flow: 0.0054, head: 160 },
  { flow: 0.0066, head: 77 },
];
const THREE = [POINTS[0], POINTS[2], POINTS[4]];
const at = (curve: PumpCurve, flow: number) => {
  const out = { head: 0, slope: 0 };
  curve.evaluate(flow, out);
  return out;
};

const CURVES: [string, PumpCurve][] = [
  ['power', new PowerCurve(THREE)],
  ['power with C below 1', new PowerCurve([POINTS[0], { flow: 0.0038, head: 150 }, POINTS[4]])],
  ['quadratic', quadraticThrough(POINTS, leastSquares)],
  ['monotone', new MonotoneCurve(POINTS)],
  ['monotone that starts above no flow', new MonotoneCurve(POINTS.slice(1))],
  ['worn', new WornCurve(new MonotoneCurve(POINTS), 0.03)],
  ['slowed', new SpeedCurve(new MonotoneCurve(POINTS), 0.8)],
];

describe('every shape of pump curve', () => {
  for (const [name, curve] of CURVES) {
    test(`${name}: head falls all the way, backwards and beyond the last point too`, () => {
      let before = headAt(curve, -0.005);
      for (let flow = -0.0049; flow < 0.012; flow += 0.0001) {
        const head = headAt(curve, flow);
        expect(head).toBeLessThanOrEqual(before);
        before = head;
      }
      expect(curve.droops()).toBe(false);
    });

    test(`${name}: no step anywhere`, () => {
      for (const flow of [0, 6.6e-6, 0.0019, 0.0038, 0.0054, curve.lastFlow]) {
        expect(Math.abs(headAt(curve, flow + 1e-12) - headAt(curve, flow - 1e-12))).toBeLessThan(1e-5);
      }
    });

    test(`${name}: its slope is that of its head`, () => {
      fc.assert(
        fc.property(fc.double({ min: -0.002, max: 0.009, noNaN: true }), (flow) => {
          const edges = [0, 6.6e-6, curve.lastFlow];
          if (edges.some((edge) => Math.abs(flow - edge) < 1e-5)) return;
          const step = 1e-8;
          const difference = (headAt(curve, flow + step) - headAt(curve, flow - step)) / (2 * step);
          expect(Math.abs(at(curve, flow).slope - difference)).toBeLessThan(1e-3 * Math.abs(difference) + 1);
        }),
      );
    });

    test(`${name}: beyond its last point it is off its curve, and steeper`, () => {
      expect(curve.isOffCurve(curve.lastFlow)).toBe(false);
      expect(curve.isOffCurve(curve.lastFlow * 1.001)).toBe(true);
      const inside = at(curve, curve.lastFlow * 0.9999).slope;
      expect(at(curve, curve.lastFlow * 1.01).slope).toBeLessThan(3.9 * inside);
      expect(headAt(curve, 0)).toBeCloseTo(curve.shutoffHead, 9);
    });
  }
});

describe('power curve', () => {
  test('goes through its three points, whether the first is at no flow or not', () => {
    for (const points of [THREE, POINTS.slice(1, 4)]) {
      const curve = new PowerCurve(points);
      for (const { flow, head } of points) expect(headAt(curve, flow)).toBeCloseTo(head, 9);
    }
  });

  test('finds A, B and C of a curve that is one', () => {
    const points = [0, 2, 4].map((flow) => ({ flow, head: 100 - 3 * flow ** 1.7 }));
    const { a, b, c } = new PowerCurve(points);
    expect(a).toBeCloseTo(100, 9);
    expect(b).toBeCloseTo(3, 9);
    expect(c).toBeCloseTo(1.7, 9);
  });

  test('refuses points that it cannot go through', () => {
    expect(() => new PowerCurve(POINTS)).toThrow(/exactly 3 points, not 5/);
    expect(() => new PowerCurve(POINTS.slice(0, 2))).toThrow(/at least 3 points/);
    expect(() => new PowerCurve([POINTS[0], { flow: 0.001, head: 300 }, POINTS[4]])).toThrow(/must fall/);
    expect(() => new PowerCurve([POINTS[0], POINTS[0], POINTS[4]])).toThrow(/same flow/);
    const kinked = [
      { flow: 1, head: 100 },
      { flow: 2, head: 1 },
      { flow: 3, head: 0.9 },
    ];
    expect(() => new PowerCurve(kinked)).toThrow(/no power curve/);
  });
});

describe('quadratic curve', () => {
  test('finds a quadratic in points of one, and the least squares among others', async () => {
    const exact = [0, 1, 2, 3, 5].map((flow) => ({ flow, head: 50 - flow - 1.5 * flow ** 2 }));
    const { a, b, c } = await fitQuadratic(exact);
    expect(a).toBeCloseTo(50, 9);
    expect(b).toBeCloseTo(-1, 9);
    expect(c).toBeCloseTo(-1.5, 9);

    const uneven = [292, 268, 225, 178, 120].map((head, i) => ({ flow: 0.0015 * i, head: head + (i % 2) }));
    const squares = (curve: QuadraticCurve) =>
      uneven.reduce((sum, { flow, head }) => sum + (headAt(curve, flow) - head) ** 2, 0);
    const fitted = await fitQuadratic(uneven);
    expect(fitted.b).toBeLessThan(0);
    const best = squares(fitted);
    for (const [da, db, dc] of [
      [0.1, 0, 0],
      [-0.1, 0, 0],
      [0, 50, 0],
      [0, -50, 0],
      [0, 0, 1e4],
      [0, 0, -1e4],
    ]) {
      expect(
        squares(new QuadraticCurve(fitted.a + da, fitted.b + db, fitted.c + dc, 0, fitted.lastFlow)),
      ).toBeGreaterThan(best);
    }
  });

  test('falls throughout where its points do, and is then the nearest that does', () => {
    const upFromShutoff = quadraticThrough(POINTS, leastSquares);
    expect(upFromShutoff.b).toBe(0);
    const hollow = [100, 40, 12, 5, 4].map((head, flow) => ({ flow, head }));
    const turnedUp = quadraticThrough(hollow, leastSquares);
    expect(at(turnedUp, 4).slope).toBeCloseTo(0, 9);
    expect(turnedUp.droops()).toBe(false);
    const drooping = [100, 104, 96, 70].map((head, flow) => ({ flow, head }));
    expect(quadraticThrough(drooping, leastSquares).droops()).toBe(true);
  });

  test('tells of a droop', () => {
    expect(new QuadraticCurve(100, 5, -3, 0, 4).droops()).toBe(true);
    expect(new QuadraticCurve(100, -5, -3, 0, 4).droops()).toBe(false);
    expect(() => new QuadraticCurve(Number.NaN, 0, 0, 0, 1)).toThrow(RangeError);
  });
});

describe('monotone curve', () => {
  test('goes through every point and never beyond its neighbours', () => {
    const steps = fc.array(
      fc.tuple(fc.double({ min: 0.01, max: 1, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true })),
      { minLength: 3, maxLength: 9 },
    );
    fc.assert(
      fc.property(steps, (list) => {
        let flow = 0;
        let head = 1000;
        const points = list.map(([run, fall]) => {
          flow += run;
          head -= fall;
          return { flow, head };
        });
        const curve = new MonotoneCurve(points);
        for (let i = 1; i < points.length; i++) {
          expect(headAt(curve, points[i].flow)).toBeCloseTo(points[i].head, 7);
          for (let part = 0.1; part < 1; part += 0.1) {
            const between = points[i - 1].flow + part * (points[i].flow - points[i - 1].flow);
            expect(headAt(curve, between)).toBeLessThanOrEqual(points[i - 1].head + 1e-9);
            expect(headAt(curve, between)).toBeGreaterThanOrEqual(points[i].head - 1e-9);
          }
        }
      }),
    );
  });

  test('tells of a droop that its points have', () => {
    expect(new MonotoneCurve([POINTS[0], { flow: 0.001, head: 295 }, POINTS[2]]).droops()).toBe(true);
  });

  test('takes its points in any order and refuses what are none', () => {
    expect(headAt(new MonotoneCurve([...POINTS].reverse()), 0.003)).toBe(
      headAt(new MonotoneCurve(POINTS), 0.003),
    );
    expect(() => new MonotoneCurve([POINTS[0]])).toThrow(RangeError);
    expect(() => new MonotoneCurve([{ flow: -1, head: 3 }, POINTS[1]])).toThrow(RangeError);
    expect(() => new MonotoneCurve([{ flow: 0, head: Number.NaN }, POINTS[1]])).toThrow(RangeError);
  });
});

describe('speed and wear', () => {
  const curve = new MonotoneCurve(POINTS);

  test('at a speed, flow goes with it and head with its square', () => {
    const slowed = new SpeedCurve(curve, 0.8);
    for (const { flow, head } of POINTS) expect(headAt(slowed, 0.8 * flow)).toBeCloseTo(0.64 * head, 9);
    expect(slowed.lastFlow).toBeCloseTo(0.8 * curve.lastFlow, 12);
  });

  test('a pump that stands still makes no head', () => {
    const still = new SpeedCurve(curve, 0);
    expect(headAt(still, 0.003)).toBe(0);
    expect(still.shutoffHead).toBe(0);
    expect(still.droops()).toBe(false);
    expect(() => new SpeedCurve(curve, -1)).toThrow(RangeError);
  });

  test('wear takes the same part of the head at every flow', () => {
    const worn = new WornCurve(curve, 0.05);
    for (const flow of [0, 0.001, 0.005])
      expect(headAt(worn, flow)).toBeCloseTo(0.95 * headAt(curve, flow), 9);
    expect(worn.shutoffHead).toBeCloseTo(0.95 * curve.shutoffHead, 9);
    expect(() => new WornCurve(curve, -0.01)).toThrow(RangeError);
    expect(() => new WornCurve(curve, 1)).toThrow(RangeError);
  });
});

test('least squares refuses fewer points than unknowns', () => {
  expect(() => leastSquares([[1, 2]], [1])).toThrow(RangeError);
});
