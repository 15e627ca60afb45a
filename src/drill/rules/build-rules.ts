import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type * as z from 'zod';
import { DrillFault } from '../drill-fault.js';
import { RULE_SETS, type RuleSet } from './rule-set.js';
import { ruleSetSchema } from './schema.js';

type Mapping = Record<string, unknown>;

const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A rule set from YAML. With `based_on` it says only what differs from a rule set that ships: a part given with all that
 * its kind needs replaces that part whole, others are filled up figure by figure. Units that the file does not name
 * are not to be had, since a method in gpm says nothing of litres.
 *
 * Errors: DrillFault with every problem of the file.
 */
export function readRuleSet(text: string, file: string, shipped: (name: string) => RuleSet): RuleSet {
  let document: unknown;
  try {
    document = parse(text);
  } catch (error) {
    throw new DrillFault(
      `${file}: not YAML: ${error instanceof Error ? error.message.split('\n')[0] : error}`,
    );
  }
  if (!isMapping(document))
    throw new DrillFault(`${file}: not a rule set; it starts with name:, title: and source:`);
  if ('engine' in document || 'pumps' in document)
    throw new DrillFault(
      `${file}: this is ${'pumps' in document ? 'an engine' : 'a layout'}, and a rule set is wanted, which starts with name:, title: and source:; problems out of a layout are made by --layout`,
    );
  const { based_on: base, ...own } = document;
  const whole = base === undefined ? own : based(own, shippedSet(base, file, shipped));
  const parsed = ruleSetSchema.safeParse(whole);
  if (!parsed.success) throw new DrillFault(`${file}: ${problemsOf(parsed.error)}`);
  const { us, si } = parsed.data;
  if (us === undefined && si === undefined)
    throw new DrillFault(`${file}: a rule set has figures under us:, si: or both`);
  return parsed.data as RuleSet;
}

/** The widest first, on one line. */
const problemsOf = ({ issues }: z.ZodError): string =>
  issues
    .toSorted((one, other) => one.path.length - other.path.length)
    .map(problemOf)
    .join('; ');

function problemOf({ path, message }: z.core.$ZodIssue): string {
  return path.length === 0 ? message : `${path.join('.')}: ${message}`;
}

function shippedSet(base: unknown, file: string, shipped: (name: string) => RuleSet): RuleSet {
  if (typeof base !== 'string' || !(RULE_SETS as readonly string[]).includes(base))
    throw new DrillFault(
      `${file}: based_on: ${String(base)} is no rule set; there are ${RULE_SETS.join(', ')}`,
    );
  return shipped(base);
}

function based(own: Mapping, base: RuleSet): Mapping {
  const result: Mapping = { ...own };
  for (const units of ['us', 'si'] as const) {
    const differs = own[units];
    if (isMapping(differs) && base[units] !== undefined)
      result[units] = filled(differs, base[units] as unknown as Mapping);
  }
  return result;
}

/** Own figures over those of the base. Another method of friction, or policy of appliances, takes nothing over. */
function filled(own: Mapping, base: Mapping): Mapping {
  const result: Mapping = { ...base };
  for (const [key, value] of Object.entries(own)) {
    const before = base[key];
    const same =
      isMapping(value) &&
      isMapping(before) &&
      value.method === (before.method ?? value.method) &&
      value.policy === (before.policy ?? value.policy);
    result[key] = same && key !== 'friction' ? { ...before, ...value } : value;
    if (same && key === 'friction' && isMapping(value) && isMapping(before))
      result[key] = {
        method: before.method,
        hoses: { ...(before.hoses as Mapping), ...(isMapping(value.hoses) ? value.hoses : {}) },
      };
  }
  return result;
}

/** The rule sets that ship, checked; for the build, and for running unbuilt. */
export function readShippedRules(folder: string): Record<string, RuleSet> {
  const sets: Record<string, RuleSet> = {};
  const read = (name: string): RuleSet => {
    const file = join(folder, `${name}.yaml`);
    sets[name] ??= readRuleSet(readFileSync(file, 'utf8'), file, read);
    return sets[name];
  };
  for (const name of RULE_SETS) read(name);
  return Object.fromEntries(RULE_SETS.map((name) => [name, sets[name]]));
}
