import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { makeSheet } from '../../src/drill/generate.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { RULE_SETS } from '../../src/drill/rules/rule-set.js';

const folder = mkdtempSync(join(tmpdir(), 'rules-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(text: string, name = 'ours.yaml'): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

describe('the rule sets that ship', () => {
  for (const name of RULE_SETS)
    test(`${name} is whole, and every figure has its source`, async () => {
      const rules = await loadRuleSet(name);
      expect(rules.name).toBe(name);
      const walk = (value: unknown): void => {
        if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
        const holdsNumber = Object.values(value).some(
          (each) => typeof each === 'number' || Array.isArray(each),
        );
        if (holdsNumber) expect(value).toHaveProperty('source', expect.stringMatching(/.{5,}/));
        Object.values(value).forEach(walk);
      };
      walk(rules);
    });

  test('differ where they should: elevation, appliances, rounding', async () => {
    const [wildland, structural, engineering] = await Promise.all(
      ['wildland', 'structural', 'engineering'].map(loadRuleSet),
    );
    expect(
      [wildland, structural, engineering].map((rules) => 1000 * (rules.us?.elevation.rate ?? 0)),
    ).toEqual([500, 500, 434]);
    expect([wildland, structural, engineering].map((rules) => rules.us?.appliance.policy)).toEqual([
      'each',
      'by_flow',
      'none',
    ]);
    expect([wildland, structural, engineering].map((rules) => rules.us?.rounding.pump_pressure)).toEqual([
      0, 5, 0,
    ]);
  });
});

describe('a department’s own rules', () => {
  test('say only what differs, and problems follow them', async () => {
    const path = file(
      [
        'name: our-department',
        'title: Rules of our department',
        'source: our operations manual, chapter 4',
        'based_on: finger',
        'us:',
        '  friction:',
        '    method: table',
        '    hoses:',
        '      "1.75":',
        '        table: [[100, 11], [150, 26], [185, 40]]',
        '        source: our flow tests of last year',
        '  nozzle: {fog: 75, source: our operations manual}',
      ].join('\n'),
    );
    const rules = await loadRuleSet(path);
    expect(rules.us?.nozzle).toMatchObject({ fog: 75, smooth_hand: 50 });
    const { problems } = makeSheet({
      topics: ['single-line'],
      level: 2,
      count: 8,
      seed: 1,
      rules,
      units: 'us',
      choices: 0,
    });
    const inches = problems.filter(({ given }) => given[0].text === '1-3/4 in');
    expect(inches.length).toBeGreaterThan(0);
    for (const { given, constants } of inches) {
      const flow = given.find(({ symbol }) => symbol === 'Q')?.value;
      expect([100, 150, 185]).toContain(flow);
      const read = constants.find(({ symbol }) => symbol === 'F');
      expect(read?.value).toBe({ 100: 11, 150: 26, 185: 40 }[flow as 100]);
      expect(read?.source).toBe('our flow tests of last year');
    }
    expect(problems[0].rules).toBe('our-department');
  });

  test('may change one coefficient and keep the others', async () => {
    const rules = await loadRuleSet(
      file(
        'name: ours\ntitle: ours\nsource: ours\nbased_on: wildland\nus:\n  friction: {method: coefficient, hoses: {"1.5": {coefficient: 20.4, source: our tests}}}\n',
      ),
    );
    expect(rules.us?.friction.hoses['1.5']).toMatchObject({ coefficient: 20.4 });
    expect(rules.us?.friction.hoses['2.5']).toMatchObject({ coefficient: 2 });
    expect(rules.si).toBeUndefined();
  });

  test('that are wrong are refused with every reason', async () => {
    const misspelt =
      'name: ours\ntitle: ours\nsource: ours\nbased_on: wildland\nus:\n  elevation: {rat: 0.5, source: x}\n  nozle: {fog: 75, source: x}\n';
    await expect(loadRuleSet(file(misspelt))).rejects.toThrow(/nozle[\s\S]*rat/);
    await expect(
      loadRuleSet(file('name: ours\ntitle: ours\nsource: ours\nbased_on: moon\n')),
    ).rejects.toThrow(/moon is no rule set; there are wildland/);
    await expect(loadRuleSet(file('name: ours\ntitle: ours\nsource: ours\n'))).rejects.toThrow(
      /under us:, si:/,
    );
    await expect(loadRuleSet(file('- 1\n'))).rejects.toThrow(/not a rule set/);
    await expect(loadRuleSet(file('a: [\n'))).rejects.toThrow(/not YAML/);
    const unsourced = 'name: ours\ntitle: ours\nsource: ours\nus:\n  elevation: {rate: 0.5}\n';
    await expect(loadRuleSet(file(unsourced))).rejects.toThrow(/source/);
  });

  test('that are nowhere are missed with what there is', async () => {
    await expect(loadRuleSet('fancy')).rejects.toThrow(
      /no rules are called fancy; there are wildland, structural/,
    );
    await expect(loadRuleSet(join(folder, 'none.yaml'))).rejects.toThrow(/no such file/);
  });
});
