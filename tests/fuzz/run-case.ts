import { loadCatalogue } from '../../src/catalogue/load.js';
import { DrillFault } from '../../src/drill/drill-fault.js';
import { makeSheet } from '../../src/drill/generate.js';
import { readShippedRules } from '../../src/drill/rules/build-rules.js';
import type { Layout } from '../../src/layout/layout.js';
import { LayoutProblems } from '../../src/layout/problem.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { answerDocument } from '../../src/report/answer-document.js';
import { toJson } from '../../src/report/json.js';
import { textOf } from '../../src/report/text.js';
import type { Answer } from '../../src/study/answer.js';
import { clockOf } from '../../src/study/clock.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { advanceLayout, NoProgressiveLay } from '../../src/study/progression.js';
import { checkLayout, NoTyping } from '../../src/study/rating.js';
import { NothingToReach, reachOf } from '../../src/study/reach.js';
import { NothingRequired, requireOf } from '../../src/study/require.js';
import type { Case, Command } from './case.js';
import { doubtsAbout } from './oracle.js';

/** How a case ended: answered or refused by name; `faults` is all that is wrong with it. */
export interface Outcome {
  ending: 'answered' | 'refused' | 'fault';
  /** The refusal or the fault; of an answer its text. */
  says: string;
  faults: string[];
}

const catalogue = loadCatalogue();
const rules = readShippedRules('data/rules/').wildland;

const REFUSALS = [
  LayoutProblems,
  NoSteadyAnswer,
  NoTyping,
  NothingRequired,
  NothingToReach,
  NoProgressiveLay,
  DrillFault,
];
/** What stands in a refusal that gives nobody anything to go by. */
const EMPTY_WORDS = /NaN|Infinity|undefined|\[object/;

async function ask(command: Exclude<Command, 'drill'>, layout: Layout): Promise<Answer> {
  switch (command) {
    case 'check':
      return checkLayout(layout);
    case 'flow':
      return operateLayout(layout);
    case 'require':
      return requireOf(layout);
    case 'reach':
      return reachOf(layout, { grades: [0, 0.3], laterals: [0, 3] });
    case 'advance':
      return advanceLayout(layout);
    case 'clock':
      return clockOf(layout);
  }
}

/** Runs a case through the library, as the command would, up to the text and the JSON. */
export async function run({ command, document, seed }: Case): Promise<Outcome> {
  try {
    const { layout } = readLayoutText(JSON.stringify(document), 'layout.yaml', { catalogue });
    if (command === 'drill') return { ending: 'answered', says: await sheet(layout, seed), faults: [] };
    const answer = await ask(command, layout);
    const json = JSON.parse(JSON.stringify(toJson(answer, 'us')));
    const says = textOf(answerDocument(answer, 'us'), { width: 80 });
    return { ending: 'answered', says, faults: doubtsAbout(command, json, says) };
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error);
    if (REFUSALS.some((kind) => error instanceof kind)) {
      const faults =
        EMPTY_WORDS.test(says) || says === '' ? [`refused in words that say nothing: ${says}`] : [];
      return { ending: 'refused', says, faults };
    }
    return {
      ending: 'fault',
      says,
      faults: [`a fault of the program's own: ${error instanceof Error ? error.stack : says}`],
    };
  }
}

async function sheet(layout: Layout, seed: number): Promise<string> {
  const { problems } = makeSheet({
    topics: [],
    level: 2,
    count: 3,
    seed,
    rules,
    units: 'us',
    choices: 0,
    layout,
  });
  return JSON.stringify(problems);
}
