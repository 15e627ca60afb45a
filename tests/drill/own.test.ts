import { describe, expect, test } from 'vitest';
import { makeSheet, topicLacks, topicList } from '../../src/drill/generate.js';
import type { NumberAnswer, Problem } from '../../src/drill/problem.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { readLayout } from '../../src/layout/read-layout.js';

const wildland = await loadRuleSet('wildland');
const { layout } = readLayout('data/examples/lay.yaml');

const sheet = (topics: string[], level: 1 | 3 | 5, count: number) =>
  makeSheet({ topics, level, count, seed: 7, rules: wildland, units: 'us', choices: 4, layout }).problems;

const given = (problem: Problem, symbol: string) =>
  problem.given.find((each) => each.symbol === symbol)?.value ?? 0;

describe('problems of a trainer’s own lay', () => {
  test('pump to a nozzle of it: 200 ft of 1-1/2 in and 40 ft of height a section, by hand', () => {
    for (const problem of sheet(['own-lay'], 5, 8)) {
      const flows = [1, 2, 3, 4].map((at) => given(problem, `q${at}`));
      const target = Number(
        /far nozzle needs most/i.test(problem.question)
          ? 4
          : /nozzle (\d) needs most/i.exec(problem.question)?.[1],
      );
      let expected = given(problem, 'NP');
      for (let section = 1; section <= Math.min(target, 4); section++) {
        const carried = flows.slice(section - 1).reduce((sum, flow) => sum + flow, 0);
        expected += 24 * (carried / 100) ** 2 * 2 + 0.5 * 40;
      }
      // A lateral is 100 ft of 1 in hose, and its wye one appliance; the far nozzle hangs on the trunk.
      if (target < 4) expected += 150 * (flows[target - 1] / 100) ** 2;
      expected += 5 * Math.min(target, 3);
      expect((problem.answer as NumberAnswer).value, problem.question).toBeCloseTo(expected, 6);
    }
  });

  test('the solver’s answer differs by the rules of thumb alone', () => {
    for (const { crossCheck, steps } of sheet(['own-lay'], 5, 6)) {
      const height = steps.find(({ symbol }) => symbol === 'H')?.value ?? 0;
      const appliances = steps.find(({ symbol }) => symbol === 'AL')?.value ?? 0;
      const gap = (crossCheck?.hand.value ?? 0) - (crossCheck?.solver.value ?? 0);
      expect(gap).toBeCloseTo(height * (0.5 - 0.4331) + appliances, 1);
      expect(crossCheck?.reason).toMatch(/0\.5 psi\/ft/);
    }
  });

  test('come as a mix of all that the layout gives, none twice', () => {
    const problems = sheet([], 3, 20);
    expect(new Set(problems.map(({ topic }) => topic)).size).toBe(4);
    expect(new Set(problems.map(({ question }) => question)).size).toBe(20);
    expect(problems.every(({ question }) => !question.includes('undefined'))).toBe(true);
  });

  test('where the layout lacks something, it is said what', async () => {
    const bare = readLayout('data/examples/demo.yaml').layout;
    expect(topicList(bare).map(({ id }) => id)).toEqual(topicList(layout).map(({ id }) => id));
    expect(topicLacks('own-lay', wildland, 'us', bare)).toBe('the layout has no lay');
    const dropTen = await loadRuleSet('drop-ten');
    expect(topicLacks('own-lay', dropTen, 'us', layout)).toMatch(/1-1\/2 in forestry hose.*no friction/);
    expect(topicLacks('own-curve', wildland, 'us', bare)).toBeUndefined();
  });
});
