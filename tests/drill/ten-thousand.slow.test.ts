import { expect, test } from 'vitest';
import {
  makeSheet,
  type SheetRequest,
  topicLacks,
  topicLevels,
  topicList,
} from '../../src/drill/generate.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { RULE_SETS } from '../../src/drill/rules/rule-set.js';
import { checkProblem } from './check-problem.js';
import { RECOMPUTED } from './independent.js';

const AT_LEAST = 10_000;
/** The drill is held to 60 s on a machine to itself; on one that others slow down a test may take three times as long. */
const SECONDS = 180;

/** A few topics have not so many problems under a rule set of few figures. */
function asManyAsThereAre(request: SheetRequest) {
  try {
    return makeSheet(request);
  } catch (error) {
    const count = Number(/no more than (\d+) different/.exec((error as Error).message)?.[1] ?? 0);
    if (count === 0) throw error;
    return makeSheet({ ...request, count });
  }
}

test(`${AT_LEAST} problems over all topics, levels, rule sets and units are sound, each key recomputed by another way`, async () => {
  const topics = topicList();
  expect(new Set(topics.map(({ id }) => id))).toEqual(new Set(RECOMPUTED));
  const sets = await Promise.all(RULE_SETS.map(loadRuleSet));
  const cells = sets.flatMap((rules) =>
    (['us', 'si'] as const).flatMap((units) =>
      rules[units] === undefined
        ? []
        : topics.flatMap(({ id: topic }) =>
            topicLacks(topic, rules, units) === undefined
              ? topicLevels(topic, rules, units).map((level) => ({ rules, units, topic, level }))
              : [],
          ),
    ),
  );
  const each = Math.ceil(AT_LEAST / cells.length);
  // Of the processor, not of the clock: other work on the machine is no fault of the drill's.
  const start = process.cpuUsage();
  const faults: string[] = [];
  let made = 0;
  for (const [index, { rules, units, topic, level }] of cells.entries()) {
    const request = { topics: [topic], level, count: each, seed: 1000 + index, rules, units, choices: 4 };
    const { problems } = asManyAsThereAre(request);
    const asked = new Set(problems.map(({ question, given }) => `${question} ${JSON.stringify(given)}`));
    if (asked.size !== problems.length)
      expect.fail(`${topic} level ${level} ${rules.name} ${units}: a problem comes twice`);
    for (const problem of problems) {
      const wrong = checkProblem(problem, rules);
      if (wrong.length > 0) faults.push(`${problem.id}: ${wrong.join('; ')}`);
    }
    made += problems.length;
  }
  const { user, system } = process.cpuUsage(start);
  const seconds = (user + system) / 1e6;
  expect(faults.slice(0, 40)).toEqual([]);
  expect(made).toBeGreaterThanOrEqual(AT_LEAST);
  expect(seconds).toBeLessThan(SECONDS);
});
