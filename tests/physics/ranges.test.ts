import { describe, expect, test } from 'vitest';
import { standardPressure, standardTemperature } from '../../src/physics/atmosphere.js';
import { convergingTee, divergingTee } from '../../src/physics/crane-tee.js';
import { fittingResistance } from '../../src/physics/fitting.js';
import { flowCoefficientResistance } from '../../src/physics/flow-coefficient.js';
import { hazenWilliamsResistance } from '../../src/physics/hazen-williams.js';
import { hoseResistance, parallelHoseCoefficient } from '../../src/physics/hose-coefficient.js';
import { hydrantFlow, hydrantResistance } from '../../src/physics/hydrant.js';
import { smoothBoreReach } from '../../src/physics/nozzle/reach.js';
import { smoothBoreFlow } from '../../src/physics/nozzle/smooth-bore.js';
import { kinematicViscosity, vapourPressure, waterDensity } from '../../src/physics/water.js';

describe('water', () => {
  test('is refused below freezing, above boiling and where it is no number', () => {
    for (const law of [waterDensity, vapourPressure, kinematicViscosity]) {
      expect(() => law(272)).toThrow(RangeError);
      expect(() => law(374)).toThrow(RangeError);
      expect(() => law(Number.NaN)).toThrow(RangeError);
      expect(law(273.15)).toBeGreaterThan(0);
      expect(law(((212 + 459.67) * 5) / 9)).toBeGreaterThan(0);
    }
  });

  test('gets thinner and lighter as it warms from 10 degC, and its vapour stronger', () => {
    for (let t = 284; t <= 373; t++) {
      expect(kinematicViscosity(t)).toBeLessThan(kinematicViscosity(t - 1));
      expect(waterDensity(t)).toBeLessThan(waterDensity(t - 1));
      expect(vapourPressure(t)).toBeGreaterThan(vapourPressure(t - 1));
    }
  });
});

describe('what is out of range is refused by name', () => {
  test('elevation', () => {
    expect(() => standardPressure(12_000)).toThrow(/elevation must be from -500 to 11000 m, not 12000/);
    expect(() => standardTemperature(-1000)).toThrow(RangeError);
  });

  test('hose, pipe, fitting and valve', () => {
    expect(() => hoseResistance(-1, 30)).toThrow(/hose coefficient must not be below 0/);
    expect(() => hoseResistance(24, Number.NaN)).toThrow(/hose length/);
    expect(() => parallelHoseCoefficient([])).toThrow(RangeError);
    expect(() => parallelHoseCoefficient([2, 0])).toThrow(RangeError);
    expect(() => hazenWilliamsResistance(0, 0.05, 10)).toThrow(/Hazen-Williams C/);
    expect(() => fittingResistance(1, 0)).toThrow(/bore/);
    expect(() => flowCoefficientResistance(0)).toThrow(/flow coefficient/);
  });

  test('share of a tee', () => {
    expect(() => convergingTee(1.2, 90)).toThrow(RangeError);
    expect(() => divergingTee(-0.1, 45)).toThrow(RangeError);
  });

  test('nozzle and hydrant', () => {
    expect(() => smoothBoreFlow(0.01, -1, 999)).toThrow(/pressure must not be below 0/);
    expect(() => hydrantResistance({ staticPressure: 5, residualPressure: 5, flow: 1 })).toThrow(RangeError);
    const test = { staticPressure: 5e5, residualPressure: 3e5, flow: 0.05 };
    expect(() => hydrantFlow(test, 6e5)).toThrow(RangeError);
    expect(hydrantFlow(test, 3e5)).toBeCloseTo(0.05, 12);
    expect(hydrantFlow(test, 5e5)).toBe(0);
  });

  test('reach of a stream: no figure where the rule gives none', () => {
    expect(smoothBoreReach(0.0254, 30 * 6894.757293168)).toBeUndefined();
    expect(smoothBoreReach(0.009525, 50 * 6894.757293168)).toBeUndefined();
    expect(smoothBoreReach(0.01905, 50 * 6894.757293168)).toBeCloseTo(51 * 0.3048, 9);
  });
});
