import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  PART_OPEN_TABLES,
  partOpenLossCoefficient,
  type ThrottleableValve,
} from '../../src/physics/valve-part-open.js';

const KINDS = Object.keys(PART_OPEN_TABLES) as ThrottleableValve[];

describe('a valve part open', () => {
  for (const kind of KINDS) {
    test(`${kind}: full open it is what the catalogue says`, () => {
      expect(partOpenLossCoefficient(kind, 1, 0.37)).toBeCloseTo(0.37, 12);
    });

    test(`${kind}: shut it passes nothing`, () => {
      expect(partOpenLossCoefficient(kind, 0, 0.37)).toBe(Number.POSITIVE_INFINITY);
    });

    test(`${kind}: gives back its table`, () => {
      const { openings, lossCoefficients } = PART_OPEN_TABLES[kind];
      for (const [i, opening] of openings.entries()) {
        const found = partOpenLossCoefficient(kind, opening, lossCoefficients[0]);
        expect(found / lossCoefficients[i]).toBeCloseTo(1, 9);
      }
    });

    test(`${kind}: opening it never raises the loss`, () => {
      const opening = fc.double({ min: 1e-6, max: 1, noNaN: true });
      fc.assert(
        fc.property(opening, opening, (one, other) => {
          const least = partOpenLossCoefficient(kind, Math.max(one, other), 0.2);
          const most = partOpenLossCoefficient(kind, Math.min(one, other), 0.2);
          expect(most).toBeGreaterThanOrEqual(least);
        }),
      );
    });
  }

  test('an opening beyond the travel is refused', () => {
    expect(() => partOpenLossCoefficient('ball', 1.1, 0.1)).toThrow(RangeError);
    expect(() => partOpenLossCoefficient('ball', -0.1, 0.1)).toThrow(RangeError);
  });
});
