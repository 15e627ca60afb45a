import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DrillFault } from '../drill-fault.js';
import { RULE_SETS, type RuleSet } from './rule-set.js';

/** Set by the bundler, which writes the rule sets beside the bundle so that no start has to parse YAML. */
declare const PUMPYOKE_BUNDLED: boolean | undefined;

let shipped: Promise<Record<string, RuleSet>> | undefined;

async function readShipped(): Promise<Record<string, RuleSet>> {
  if (typeof PUMPYOKE_BUNDLED !== 'undefined' && PUMPYOKE_BUNDLED)
    return JSON.parse(readFileSync(new URL('./rules.json', import.meta.url), 'utf8'));
  const { readShippedRules } = await import('./build-rules.js');
  return readShippedRules(fileURLToPath(new URL('../../../data/rules/', import.meta.url)));
}

/**
 * The rule set of that name, or, where the name ends in .yaml or .yml or holds a slash, the department's own in that file.
 *
 * Errors: DrillFault where there is none or the file is wrong; its message says what there is.
 */
export async function loadRuleSet(nameOrFile: string): Promise<RuleSet> {
  shipped ??= readShipped();
  const sets = await shipped;
  if (Object.hasOwn(sets, nameOrFile)) return sets[nameOrFile];
  if (!/\.ya?ml$|\//i.test(nameOrFile))
    throw new DrillFault(
      `no rules are called ${nameOrFile}; there are ${RULE_SETS.join(', ')}, or a file of your own (rules.yaml)`,
    );
  let text: string;
  try {
    text = readFileSync(nameOrFile, 'utf8');
  } catch {
    throw new DrillFault(`${nameOrFile}: there is no such file, or it cannot be read`);
  }
  const { readRuleSet } = await import('./build-rules.js');
  return readRuleSet(text, nameOrFile, (name) => sets[name]);
}
