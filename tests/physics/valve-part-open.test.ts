import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PartOpenRow, partOpenCoefficient } from '../../src/physics/valve-part-open.js';

const quarterTurn = (degreesClosed: number, coefficient: number): PartOpenRow => [
  1 - degreesClosed / 90,
  coefficient,
];

/** Weisbach's cock and butterfly in a round pipe, from memory; gate from student engineering pages, no primary source seen. */
const TABLES: Record<string, PartOpenRow[]> = {
  ball: [[1, 0], quarterTurn(5, 0.05), quarterTurn(20, 1.56), quarterTurn(40, 17.3), quarterTurn(65, 486)],
  gate: [
    [1, 0],
    [0.75, 0.73],
    [0.5, 4.33],
    [0.25, 23.83],
  ],
  butterfly: [[1, 0], quarterTurn(5, 0.24), quarterTurn(20, 1.54), quarterTurn(60, 118)],
};

describe('a valve part open', () => {
  for (const [kind, table] of Object.entries(TABLES)) {
    test(`${kind}: gives back its table, and nothing more wide open`, () => {
      for (const [opening, coefficient] of table) {
        expect(partOpenCoefficient(table, opening)).toBeCloseTo(coefficient, 9);
      }
    });

    test(`${kind}: shut it passes nothing, and nearly shut hardly anything`, () => {
      expect(partOpenCoefficient(table, 0)).toBe(Number.POSITIVE_INFINITY);
      const [opening, coefficient] = table[table.length - 1];
      expect(partOpenCoefficient(table, opening / 10)).toBeCloseTo(100 * coefficient, 6);
    });

    test(`${kind}: opening it never raises the loss`, () => {
      const opening = fc.double({ min: 1e-6, max: 1, noNaN: true });
      fc.assert(
        fc.property(opening, opening, (one, other) => {
          const least = partOpenCoefficient(table, Math.max(one, other));
          const most = partOpenCoefficient(table, Math.min(one, other));
          expect(most).toBeGreaterThanOrEqual(least * (1 - 1e-12));
        }),
      );
    });
  }

  test('an opening beyond the travel and a table without rows are refused', () => {
    expect(() => partOpenCoefficient(TABLES.ball, 1.1)).toThrow(RangeError);
    expect(() => partOpenCoefficient(TABLES.ball, -0.1)).toThrow(RangeError);
    expect(() => partOpenCoefficient([], 0.5)).toThrow(RangeError);
  });
});
