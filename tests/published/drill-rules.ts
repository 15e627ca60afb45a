import { readRuleSet, readShippedRules } from '../../src/drill/rules/build-rules.js';
import type { RuleSet } from '../../src/drill/rules/rule-set.js';

const shipped = readShippedRules('data/rules');

export function rules(name: string): RuleSet {
  return shipped[name];
}

/** A source's own rules, as a department would write them: what differs from a set that ships. */
export function rulesOf(base: string, us: string, units: 'us' | 'si' = 'us'): RuleSet {
  const text = `name: source\ntitle: as the source has it\nsource: the source\nbased_on: ${base}\n${units}: {${us}}\n`;
  return readRuleSet(text, 'source.yaml', (name) => shipped[name]);
}
