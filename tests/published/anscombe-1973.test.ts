import { describe, expect, test } from 'vitest';
import { linearFit } from '../../src/statistics/linear-fit.js';
import { oddOneOut } from '../../src/statistics/odd-one-out.js';

/**
 * F. J. Anscombe, Graphs in Statistical Analysis, The American Statistician 27 (1973): four sets of eleven observations with one and
 * the same regression line. Data and figures from memory.
 */
const X = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5];
const FIRST = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68];
const THIRD = [7.46, 6.77, 12.74, 7.11, 7.81, 8.84, 6.08, 5.39, 8.15, 6.42, 5.73];
const line = (y: number[]) =>
  linearFit(
    X.map((x) => [1, x]),
    y,
  );

describe('Anscombe 1973', () => {
  for (const [name, y] of [
    ['first', FIRST],
    ['third', THIRD],
  ] as const)
    test(`the ${name} set: y = 3.00 + 0.500 x, residual sum of squares 13.75, standard error of the slope 0.118`, () => {
      const { unknowns, squares, freedom, varianceAt } = line(y);
      expect(unknowns[0]).toBeCloseTo(3, 1);
      expect(unknowns[1]).toBeCloseTo(0.5, 2);
      expect(freedom).toBe(9);
      // The third set's own sum is 13.756; both are printed as 13.75 or 13.76.
      expect(squares).toBeCloseTo(13.76, 1);
      expect(Math.sqrt((squares / freedom) * varianceAt([0, 1]))).toBeCloseTo(0.118, 3);
    });

  test('the third set: all but one observation lie on y = 4 + 0.346 x, and the one is told', () => {
    const odd = oddOneOut(line(THIRD));
    expect(odd?.index).toBe(2);
    expect(odd?.chance).toBeLessThan(1e-6);
    const rest = X.map((x, i) => ({ x, y: THIRD[i] })).filter((_, i) => i !== 2);
    const { unknowns } = linearFit(
      rest.map(({ x }) => [1, x]),
      rest.map(({ y }) => y),
    );
    expect(unknowns[0]).toBeCloseTo(4, 1);
    expect(unknowns[1]).toBeCloseTo(0.346, 2);
  });

  test('the first set: no observation is told as odd', () => {
    expect(oddOneOut(line(FIRST))?.chance).toBeGreaterThan(0.5);
  });
});
