import { type Draft, settingOf, type Topic } from './draft.js';
import { DrillFault } from './drill-fault.js';
import type { DrillUnits, Level, Step } from './problem.js';
import { Draw } from './random.js';
import type { RuleSet } from './rules/rule-set.js';
import { stepsOf, work } from './work.js';

/** A key to figures of one's own: a published example, a trainer's own question. */
export interface PosedKey {
  readonly question: string;
  readonly steps: readonly Step[];
  /** Of the last step, in its unit. */
  readonly answer: number;
  /** Value of a given, a constant or a step. */
  readonly value: (symbol: string) => number;
  /** The answer that each slip leads to, by slip. */
  readonly slips: readonly { readonly slip: string; readonly answer: number }[];
  readonly draft: Draft;
}

/** Poses a topic's problem with figures of one's own, and works its key; no bound of the drawn problems is asked for. */
export function poseKey<Facts>(
  topic: Topic<Facts>,
  facts: Facts,
  rules: RuleSet,
  units: DrillUnits = 'us',
  level: Level = 1,
): PosedKey {
  const setting = settingOf(rules, units, level, new Draw(topic.id));
  if (setting === undefined) throw new DrillFault(`the rules ${rules.name} are not stated in ${units} units`);
  const draft = topic.pose(facts, setting);
  const worked = work(draft);
  return {
    question: draft.question,
    steps: stepsOf(draft, worked),
    answer: worked.answer,
    value: worked.value,
    slips: draft.alterations.map((alteration) => ({
      slip: alteration.slip,
      answer: work(draft, alteration).answer,
    })),
    draft,
  };
}
