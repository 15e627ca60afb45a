import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readBytes } from '../../layout/read-bytes.js';
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

/** The rule sets that ship have a few kilobytes. */
const BOUNDS = { most: 1_000_000, tooLarge: 'it is larger than 1 MB, so it is no rule set', pipes: true };

/** Whether it names a file and not one of the sets that ship. */
export const isRuleFile = (nameOrFile: string): boolean => /\.ya?ml$|\//i.test(nameOrFile);

/**
 * The rule set of that name, or, where the name ends in .yaml or .yml or holds a slash, the department's own in that file.
 *
 * Errors: DrillFault where there is none or the file is wrong; its message says what there is.
 */
export async function loadRuleSet(nameOrFile: string): Promise<RuleSet> {
  shipped ??= readShipped();
  const sets = await shipped;
  if (Object.hasOwn(sets, nameOrFile)) return sets[nameOrFile];
  if (!isRuleFile(nameOrFile))
    throw new DrillFault(
      `no rules are called ${nameOrFile}; there are ${RULE_SETS.join(', ')}, or a file of your own (rules.yaml)`,
    );
  const read = readBytes(nameOrFile, BOUNDS);
  if ('fault' in read) throw new DrillFault(`the rules ${nameOrFile} cannot be read: ${read.fault}`);
  const { readRuleSet } = await import('./build-rules.js');
  return readRuleSet(read.bytes.toString('utf8'), nameOrFile, (name) => sets[name]);
}
