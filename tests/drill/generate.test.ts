import { describe, expect, test } from 'vitest';
import {
  makeSheet,
  problemById,
  type SheetRequest,
  topicLacks,
  topicList,
} from '../../src/drill/generate.js';
import { LEVELS, type NumberAnswer } from '../../src/drill/problem.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { checkProblem } from './check-problem.js';

const wildland = await loadRuleSet('wildland');
const base: SheetRequest = {
  topics: [],
  level: 3,
  count: 20,
  seed: 7,
  rules: wildland,
  units: 'us',
  choices: 4,
};

describe('a sheet', () => {
  test('is the same for the same seed, and another for another', () => {
    expect(makeSheet(base)).toEqual(makeSheet(base));
    const other = makeSheet({ ...base, seed: 8 });
    expect(other.problems.map(({ id }) => id)).not.toEqual(makeSheet(base).problems.map(({ id }) => id));
  });

  test('numbers its problems and asks none twice', () => {
    const { problems } = makeSheet({ ...base, topics: ['friction-loss'], level: 2, count: 60 });
    expect(problems.map(({ number }) => number)).toEqual(Array.from({ length: 60 }, (_, i) => i + 1));
    const asked = problems.map(({ given }) => given.map(({ text }) => text).join());
    expect(new Set(asked).size).toBe(60);
  });

  test('of no topic named is a mix of all, none more than once oftener than another', () => {
    const topics = topicList().filter(
      ({ id, levels }) => topicLacks(id, wildland, 'us') === undefined && levels.includes(base.level),
    );
    const { problems } = makeSheet({ ...base, count: topics.length + 5 });
    const counts = topics.map(({ id }) => problems.filter(({ topic }) => topic === id).length);
    expect(Math.min(...counts)).toBe(1);
    expect(Math.max(...counts)).toBeLessThanOrEqual(2);
  });

  test('takes the topics named in turn', () => {
    const { problems } = makeSheet({ ...base, topics: ['volume', 'relay'], count: 4 });
    expect(problems.map(({ topic }) => topic)).toEqual(['volume', 'relay', 'volume', 'relay']);
  });

  test('has no choices unless asked', () => {
    const { problems } = makeSheet({ ...base, choices: 0 });
    expect(problems.every(({ choices }) => choices.length === 0)).toBe(true);
    const three = makeSheet({ ...base, choices: 3, topics: ['single-line'], count: 5 });
    expect(three.problems.every(({ choices }) => choices.length === 3)).toBe(true);
  });

  test('is sound at each level and in both units', () => {
    for (const level of LEVELS)
      for (const units of ['us', 'si'] as const) {
        const { problems } = makeSheet({ ...base, level, units, count: topicList().length });
        expect(problems.flatMap((problem) => checkProblem(problem, wildland))).toEqual([]);
      }
  });

  test('words the same topic in more than one way', () => {
    const { problems } = makeSheet({ ...base, topics: ['single-line'], count: 12 });
    const openings = new Set(problems.map(({ question }) => question.split(' ')[0]));
    expect(openings.size).toBeGreaterThan(1);
  });
});

describe('a problem', () => {
  test('is made again from its id alone', () => {
    for (const problem of makeSheet(base).problems) {
      const { id, number, seed } = problem;
      expect(problemById(id, wildland, 4, { number, seed })).toEqual(problem);
    }
  });

  test('is not made from another rule set’s id, or from none', async () => {
    const [{ id }] = makeSheet(base).problems;
    const structural = await loadRuleSet('structural');
    expect(() => problemById(id, structural)).toThrow(/problem of the rules wildland, not structural/);
    expect(() => problemById('nonsense', wildland)).toThrow(/no problem's id/);
    expect(() => problemById('volume.9.wildland.us.abc', wildland)).toThrow(/no problem's id/);
  });

  test('has the same key whether or not choices are asked', () => {
    const [open] = makeSheet({ ...base, choices: 0 }).problems;
    const [closed] = makeSheet(base).problems;
    expect({ ...closed, choices: [] }).toEqual(open);
  });

  test('gets harder from level to level: more steps on the whole', () => {
    const steps = (level: 1 | 5) =>
      makeSheet({ ...base, level, count: 52 }).problems.reduce((sum, { steps: all }) => sum + all.length, 0);
    expect(steps(5)).toBeGreaterThan(1.1 * steps(1));
  });
});

describe('what is not to be had', () => {
  test('is said with what there is', async () => {
    expect(() => makeSheet({ ...base, topics: ['juggling'] })).toThrow(
      /no topic is called juggling; there are volume, /,
    );
    expect(() => makeSheet({ ...base, count: 0 })).toThrow(/1 to 500/);
    expect(() => makeSheet({ ...base, level: 6 as 5 })).toThrow(/levels 1 to 5/);
    expect(() => makeSheet({ ...base, choices: 9 })).toThrow(/2 to 4/);
    expect(() => makeSheet({ ...base, seed: -1 })).toThrow(/whole number/);
    const dropTen = await loadRuleSet('drop-ten');
    expect(() => makeSheet({ ...base, rules: dropTen, units: 'si' })).toThrow(/only in us/);
    expect(() => makeSheet({ ...base, rules: dropTen, topics: ['two-sizes'] })).toThrow(
      /two-sizes is not to be had under the rules drop-ten: it knows one size of hose only; there are /,
    );
  });

  test('a sheet of more problems than a topic has says how many there are', async () => {
    const finger = await loadRuleSet('finger');
    expect(() => makeSheet({ ...base, level: 1, rules: finger, topics: ['wye-equal'], count: 500 })).toThrow(
      /has no more than \d+ different problems at level 1/,
    );
  });
});

describe('hand methods', () => {
  test('are never mixed: a sheet uses the friction of its rule set alone', async () => {
    for (const [name, pattern] of [
      ['drop-ten', /^\(Q \/ \(10 gpm\) - 10\)/],
      ['tenths', /^\(Q \* N \/ \(10 gpm\) - 10\)/],
      ['condensed-q', /^\(Q \/ \(100 gpm\)\)\^2 \/ D/],
      ['finger', /^F \*/],
      ['old-square', /^share \* \(2 \*/],
      ['engineering', /^C \*/],
    ] as const) {
      const rules = await loadRuleSet(name);
      const { problems } = makeSheet({ ...base, rules, topics: ['friction-loss'], level: 1, count: 6 });
      for (const { steps } of problems) expect(steps[0].formula).toMatch(pattern);
    }
  });

  test('one question has several right answers, by rule set', async () => {
    const answers = await Promise.all(
      ['wildland', 'structural', 'engineering'].map(async (name) => {
        const rules = await loadRuleSet(name);
        const { problems } = makeSheet({ ...base, rules, topics: ['appliances'], count: 1 });
        return (problems[0].answer as NumberAnswer).text;
      }),
    );
    expect(new Set(answers).size).toBeGreaterThan(1);
  });
});
