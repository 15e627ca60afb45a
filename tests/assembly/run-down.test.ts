import { expect, test } from 'vitest';
import { runDown } from '../../src/assembly/run-down.js';

test('an engine with power to spare stays at its governed speed', () => {
  expect(runDown([1.05], () => [1.2])).toEqual([1.05]);
});

test('an engine is pulled down to the first speed that it has power for, not past it', () => {
  // Balances at 0.9, at 0.7, where it would run away, and at 0.5.
  const found = runDown([1], ([s]) => [Math.exp(-20 * (s - 0.9) * (s - 0.7) * (s - 0.5))]);
  expect(found?.[0]).toBeCloseTo(0.9, 8);
});

test('it passes a place where the balance is nearly reached, and does not stay there', () => {
  const found = runDown([1], ([s]) => [Math.exp(-20 * ((s - 0.8) ** 2 + 1e-5) * (s - 0.5))]);
  expect(found?.[0]).toBeCloseTo(0.5, 6);
});

test('a balance on a kink is found', () => {
  const found = runDown([1], ([s]) => [s > 0.83 ? 0.83 / s : (0.83 / s) ** 0.01]);
  expect(found?.[0]).toBeCloseTo(0.83, 6);
});

test('two engines that help each other down come to rest together', () => {
  const found = runDown([1, 1], ([a, b]) => [0.8 / a ** 0.5 / b ** 0.2, 0.7 / b ** 0.6 / a ** 0.3]);
  const [a, b] = found ?? [];
  expect(a ** 0.5 * b ** 0.2).toBeCloseTo(0.8, 8);
  expect(b ** 0.6 * a ** 0.3).toBeCloseTo(0.7, 8);
});

test('two engines that drive each other round settle nowhere, and the search ends', () => {
  // Each by itself would run away from where both balance; round that place they go in a circle that widens.
  const found = runDown([1, 1], ([a, b]) => {
    const x = Math.log(a / 0.7);
    const y = Math.log(b / 0.7);
    return [Math.exp(0.3 * x + 2 * y), Math.exp(-2 * x + 0.3 * y)];
  });
  expect(found).toBeUndefined();
});

test('where the network has no state there are no speeds', () => {
  expect(runDown([1], ([s]) => (s > 0.9 ? [0.5] : undefined))).toBeUndefined();
});

test('the last speeds asked of the network are those that are returned', () => {
  let last: readonly number[] = [];
  const found = runDown([1], (speeds) => {
    last = speeds;
    return [0.64 / speeds[0]];
  });
  expect(found).toEqual(last);
});
