import { describe, expect, test } from 'vitest';
import { makeSheet, topicLacks, topicList } from '../../src/drill/generate.js';
import { LEVELS, type Problem } from '../../src/drill/problem.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';

const AT_LEAST = 2000;
const wildland = await loadRuleSet('wildland');
const structural = await loadRuleSet('structural');

/** Problems of every topic and level that two rule sets have in both systems of units, with so many choices. */
function exam(choices: number, each: number): Problem[] {
  // Another seed for each sheet: alike seeds deal alike places.
  let seed = 1000 * choices;
  return [wildland, structural].flatMap((rules) =>
    (['us', 'si'] as const).flatMap((units) =>
      topicList().flatMap(({ id, levels }) =>
        topicLacks(id, rules, units) === undefined
          ? levels.flatMap((level) => {
              seed += 1;
              return makeSheet({ topics: [id], level, count: each, seed, rules, units, choices }).problems;
            })
          : [],
      ),
    ),
  );
}

const tally = (values: readonly number[], kinds: number) =>
  Array.from({ length: kinds }, (_, kind) => values.filter((value) => value === kind).length);

/** Chi-square of counts that are as likely one as another. */
function chiSquare(counts: readonly number[]): number {
  const expected = counts.reduce((sum, count) => sum + count, 0) / counts.length;
  return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
}

/** Values of chi-square that chance passes once in a hundred, by degrees of freedom (tables of the distribution). */
const ONE_IN_A_HUNDRED = [0, 6.635, 9.21, 11.345];

const place = ({ choices }: Problem) => choices.findIndex(({ right }) => right);
const rank = ({ choices }: Problem) =>
  [...choices].sort((a, b) => Number(a.value) - Number(b.value)).findIndex(({ right }) => right);

describe.each([2, 3, 4])('an exam of %i choices', (choices) => {
  const problems = exam(choices, choices === 4 ? 6 : 3);
  const numbers = problems.filter(({ answer }) => answer.kind === 'number');

  test('is large enough to judge by', () => {
    if (choices === 4) expect(problems.length).toBeGreaterThanOrEqual(AT_LEAST);
    expect(problems.every((problem) => problem.choices.length === choices)).toBe(true);
  });

  test('does not give answers away by their letters', () => {
    expect(chiSquare(tally(problems.map(place), choices))).toBeLessThan(ONE_IN_A_HUNDRED[choices - 1]);
  });

  test('has the right value lowest, highest and between as often as chance has it', () => {
    expect(chiSquare(tally(numbers.map(rank), choices))).toBeLessThan(ONE_IN_A_HUNDRED[choices - 1]);
  });

  test('offers what is within a factor of two, and of three where mistakes give no more', () => {
    const ratios = numbers.flatMap(({ choices: all, answer }) =>
      all.map(({ value }) => Number(value) / (answer.kind === 'number' ? answer.value : 1)),
    );
    expect(ratios.every((ratio) => ratio >= 1 / 3 && ratio <= 3)).toBe(true);
    const near = ratios.filter((ratio) => ratio >= 0.5 && ratio <= 2);
    expect(near.length / ratios.length).toBeGreaterThan(0.98);
  });

  test('has no two choices within tolerance of each other', () => {
    for (const { choices: all, answer, id } of numbers)
      for (const [i, a] of all.entries())
        for (const b of all.slice(i + 1))
          expect(Math.abs(Number(a.value) - Number(b.value)), id).toBeGreaterThan(
            answer.kind === 'number' ? answer.tolerance : 0,
          );
  });

  test('says of every wrong choice which mistake makes it', () => {
    for (const { choices: all, id } of problems)
      for (const { right, slip, why } of all)
        if (!right) expect([slip, why], id).toEqual([expect.any(String), expect.stringMatching(/.{20,}/)]);
  });
});

test('each topic’s letters are even', () => {
  for (const { id, levels } of topicList()) {
    if (topicLacks(id, wildland, 'us') !== undefined) continue;
    const level = levels[levels.length - 1];
    const request = { topics: [id], level, rules: wildland, units: 'us', choices: 4 } as const;
    const one = makeSheet({ ...request, count: 12, seed: 3 }).problems;
    expect(chiSquare(tally(one.map(place), 4)), id).toBeLessThan(ONE_IN_A_HUNDRED[3]);
  }
});

test('a tolerance is a whole figure, below half the way to the nearest slip, and takes in a rounded answer', () => {
  for (const { answer, slips, id } of exam(0, 3)) {
    if (answer.kind !== 'number') continue;
    const { value, tolerance, unit } = answer;
    const grain = unit === 'm' && value < 20 ? 0.1 : 1;
    expect(Math.abs(tolerance / grain - Math.round(tolerance / grain)), id).toBeLessThan(1e-9);
    const nearest = Math.min(...slips.map((slip) => Math.abs(Number(slip.value) - value)));
    expect(tolerance, `${id} ${nearest}`).toBeLessThan(nearest / 2);
    expect(Math.abs(grain * Math.round(value / grain) - value), id).toBeLessThanOrEqual(tolerance);
  }
});

test('a level is a number of steps', () => {
  for (const level of LEVELS) {
    const { problems } = makeSheet({
      topics: [],
      level,
      count: 60,
      seed: 5,
      rules: structural,
      units: 'us',
      choices: 0,
    });
    for (const { steps, id } of problems)
      if (level < 5) expect(steps.length, id).toBe(level);
      else expect(steps.length, id).toBeGreaterThanOrEqual(5);
  }
});
