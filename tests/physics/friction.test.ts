import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DarcyWeisbachLoss } from '../../src/physics/darcy-weisbach.js';
import { colebrook, laminarFriction } from '../../src/physics/friction-factor.js';
import { frictionFactor, MoodyCurve } from '../../src/physics/moody.js';

const roughness = fc.double({ min: 0, max: 0.05, noNaN: true });
const at = (curve: MoodyCurve, reynolds: number) => {
  const out = { value: 0, slope: 0 };
  curve.evaluate(reynolds, out);
  return out;
};

describe('Colebrook', () => {
  test('satisfies its own equation to machine precision over the whole chart', () => {
    fc.assert(
      fc.property(fc.double({ min: 3.6, max: 9, noNaN: true }), roughness, (power, e) => {
        const reynolds = 10 ** power;
        const x = 1 / Math.sqrt(colebrook(reynolds, e));
        const residual = x + 2 * Math.log10(e / 3.7 + (2.51 * x) / reynolds);
        expect(Math.abs(residual)).toBeLessThan(1e-13 * x);
      }),
    );
  });

  test('refuses a Reynolds number below 2000 and a roughness above a tenth', () => {
    expect(() => colebrook(1000, 0)).toThrow(RangeError);
    expect(() => colebrook(1e5, 0.2)).toThrow(RangeError);
    expect(() => colebrook(Number.NaN, 0)).toThrow(RangeError);
  });
});

describe('friction from laminar to turbulent', () => {
  test('is 64/Re below 2000 and Colebrook from 4000', () => {
    expect(frictionFactor(1500, 1e-3)).toBeCloseTo(laminarFriction(1500), 14);
    expect(frictionFactor(4000, 1e-3)).toBeCloseTo(colebrook(4000, 1e-3), 14);
    expect(frictionFactor(7e5, 1e-3)).toBeCloseTo(colebrook(7e5, 1e-3), 14);
  });

  test('joins with no step of value or slope at 2000 and 4000', () => {
    fc.assert(
      fc.property(roughness, (e) => {
        const curve = new MoodyCurve(e);
        for (const reynolds of [2000, 4000]) {
          const below = at(curve, reynolds * (1 - 1e-9));
          const above = at(curve, reynolds * (1 + 1e-9));
          expect(Math.abs(above.value / below.value - 1)).toBeLessThan(1e-7);
          expect(Math.abs(above.slope / below.slope - 1)).toBeLessThan(1e-6);
        }
      }),
    );
  });

  test('grows with flow, and ever faster, through the transition', () => {
    fc.assert(
      fc.property(roughness, (e) => {
        const curve = new MoodyCurve(e);
        let before = at(curve, 1900);
        for (let reynolds = 1910; reynolds <= 6000; reynolds += 10) {
          const here = at(curve, reynolds);
          expect(here.value).toBeGreaterThan(before.value);
          expect(here.slope).toBeGreaterThanOrEqual(before.slope * (1 - 1e-12));
          before = here;
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe('DarcyWeisbachLoss', () => {
  const pipe = { length: 30, bore: 0.04, roughness: 4.6e-5, viscosity: 1.1e-6, lossCoefficient: 3 };
  const loss = (flow: number) => {
    const out = { loss: 0, slope: 0 };
    new DarcyWeisbachLoss(pipe).evaluate(flow, out);
    return out;
  };

  test('gives the slope that differences of its loss give, in every regime', () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: -1, noNaN: true }), (power) => {
        const flow = 10 ** power;
        const step = flow * 1e-4;
        const difference = (loss(flow + step).loss - loss(flow - step).loss) / (2 * step);
        expect(Math.abs(loss(flow).slope / difference - 1)).toBeLessThan(1e-5);
      }),
    );
  });

  test('is the same the other way, and nothing at rest', () => {
    expect(loss(-0.003).loss).toBe(-loss(0.003).loss);
    expect(loss(-0.003).slope).toBe(loss(0.003).slope);
    expect(loss(0).loss).toBe(0);
    expect(loss(0).slope).toBeGreaterThan(0);
  });

  test('refuses a pipe that is none', () => {
    expect(() => new DarcyWeisbachLoss({ ...pipe, bore: 0 })).toThrow(RangeError);
    expect(() => new DarcyWeisbachLoss({ ...pipe, length: -1 })).toThrow(RangeError);
    expect(() => new DarcyWeisbachLoss({ ...pipe, roughness: 0.01 })).toThrow(RangeError);
    expect(() => new DarcyWeisbachLoss({ ...pipe, viscosity: Number.NaN })).toThrow(RangeError);
  });
});
