import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { Random } from '../support/random.js';
import { randomLayout as randomEngine } from '../support/random-engine.js';
import { randomLayout } from '../support/random-layout.js';
import { type Document, mutate } from './mutate.js';

export const COMMANDS = ['check', 'flow', 'require', 'reach', 'advance', 'clock', 'drill'] as const;
export type Command = (typeof COMMANDS)[number];

export interface Case {
  seed: number;
  command: Command;
  document: Document;
}

const EXAMPLES = ['demo', 'downhill', 'lay', 'relay', 'ridge', 'short'];

const example = (name: string): Document => parse(readFileSync(`data/examples/${name}.yaml`, 'utf8'));

/** The examples that ship, each with its engine in it. */
const SHIPPED = EXAMPLES.map((name) => {
  const document = example(name);
  return {
    ...document,
    engine: document.engine === 'demo-engine.yaml' ? example('demo-engine') : document.engine,
  };
});

/** Commands that solve many times are drawn less often. */
const WEIGHTED: readonly Command[] = [
  'check',
  'check',
  'flow',
  'flow',
  'flow',
  'clock',
  'clock',
  'require',
  'reach',
  'advance',
  'drill',
];

/** A command on a layout made wrong in some places, from a seed. */
export function caseOf(seed: number): Case {
  const random = new Random(seed * 7919 + 17);
  const base = random.integer(0, 9);
  const document: Document = structuredClone(
    base < 5
      ? random.pick(SHIPPED)
      : base < 8
        ? randomLayout(random, random.integer(2, 25), { wild: true, tapped: random.chance(0.3) })
        : (randomEngine(random) as Document),
  );
  const changes = random.pick([0, 1, 1, 1, 2, 3]);
  for (let n = 0; n < changes; n++) mutate(random, document);
  const fitting = WEIGHTED.filter((one) => one !== 'advance' || document.progressive !== undefined);
  return { seed, command: random.pick(fitting), document };
}
