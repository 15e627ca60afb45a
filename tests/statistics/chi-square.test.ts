import { expect, test } from 'vitest';
import { incompleteBeta, logGamma } from '../../src/statistics/beta.js';
import { chiSquareTail } from '../../src/statistics/chi-square.js';
import { explainBy, whitener } from '../../src/statistics/explain.js';
import { linearFit } from '../../src/statistics/linear-fit.js';

test('the chi-square table (from memory): 5 % at 3.841, 5.991, 18.307 and 43.773 for 1, 2, 10 and 30 degrees of freedom', () => {
  for (const [freedom, x] of [
    [1, 3.841],
    [2, 5.991],
    [10, 18.307],
    [30, 43.773],
  ])
    expect(chiSquareTail(x, freedom)).toBeCloseTo(0.05, 4);
});

test('chi-square with two degrees of freedom is exponential, on both sides of the change of method', () => {
  for (const x of [0.1, 1, 3, 5, 20, 80]) expect(chiSquareTail(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 10);
  expect(chiSquareTail(0, 3)).toBe(1);
  expect(() => chiSquareTail(1, 0)).toThrow(RangeError);
});

test('the gamma function is the factorial, and beta is symmetric', () => {
  for (const [n, factorial] of [
    [1, 1],
    [5, 24],
    [11, 3628800],
  ])
    expect(Math.exp(logGamma(n)) / factorial).toBeCloseTo(1, 12);
  expect(incompleteBeta(0.3, 2, 5)).toBeCloseTo(1 - incompleteBeta(0.7, 5, 2), 12);
  expect(incompleteBeta(0.3, 1, 1)).toBeCloseTo(0.3, 12);
});

test('a whitener undoes a covariance, and refuses what is none', () => {
  const whiten = whitener([
    [4, 2],
    [2, 5],
  ]);
  // The sum of squares of what it makes is e' V^-1 e, here (5 + 4 - 4) / 16 of (1, 1).
  expect(whiten([1, 1]).reduce((sum, one) => sum + one * one, 0)).toBeCloseTo(5 / 16, 12);
  expect(() =>
    whitener([
      [1, 2],
      [2, 1],
    ]),
  ).toThrow(RangeError);
});

test('a cause of a straight effect is found where the sums of squares have it, with its deviation and evidence', () => {
  const read = [1.2, 2.3, 2.9];
  const prior = { deviation: 2, oneSided: false };
  const found = explainBy(
    (sizes) => [1, 2, 3].map((x) => x * sizes[0]),
    read,
    (errors) => [...errors],
    [prior],
    [0],
  );
  // Minimum of sum (y - m x)^2 + (m / 2)^2: m = sum xy / (sum xx + 1/4).
  expect(found?.sizes[0]).toBeCloseTo(14.5 / 14.25, 6);
  expect(found?.deviations[0]).toBeCloseTo(1 / Math.sqrt(14.25), 6);
  // A Gaussian integral: exact evidence is that of N(0, I + 4 x x').
  const squares = read.reduce((sum, y) => sum + y * y, 0);
  const exact = -0.5 * Math.log(1 + 4 * 14) - 0.5 * (squares - 14.5 ** 2 / 14.25);
  expect(found?.evidence).toBeCloseTo(exact, 6);
});

test('a one-sided cause stays at none where the readings ask for less', () => {
  const prior = { deviation: 1, oneSided: true };
  const found = explainBy(
    (sizes) => [sizes[0]],
    [-3],
    (errors) => [...errors],
    [prior],
    [0.5],
  );
  expect(found?.sizes).toEqual([0]);
});

test('the leverages of a fit sum to its unknowns', () => {
  const fit = linearFit(
    [0, 1, 2, 3, 5].map((x) => [1, x, x * x]),
    [1, 3, 2, 5, 4],
  );
  expect(fit.leverages.reduce((sum, one) => sum + one, 0)).toBeCloseTo(3, 8);
});
