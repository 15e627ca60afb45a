import type * as z from 'zod';
import type { Kind } from '../catalogue/kind.js';
import { withArticle } from '../quantity/article.js';
import type { Draft, DraftLine } from './draft.js';
import type { Pattern } from './hollow.js';
import { withoutModels, withoutSteps } from './hollow.js';
import { makeStep } from './make-step.js';
import type { Reading } from './reading.js';
import { isMapping, made, whatStands } from './schema/choice.js';
import { misspelt, stepKeyOf } from './schema/step-key.js';
import { STEP_KEYS, STEP_SCHEMAS, type StepKey } from './schema/steps.js';
import type { Spot } from './spot.js';

/** Steps whose key takes an id of the catalogue; the kind there has the same name. */
const MODELLED: readonly StepKey[] = [
  'hose',
  'pipe',
  'valve',
  'check_valve',
  'appliance',
  'branch',
  'pump',
  'nozzle',
];

/** Where steps hold lists of steps. */
const WITHIN: Partial<Record<StepKey, Pattern>> = {
  branch: ['to', '*', 'steps'],
  siamese: ['siamese', '*'],
  repeat: ['steps'],
};

/** Reads a list of steps, each by itself, and reports whatever is wrong with any of them. */
export function readSteps(spot: Spot | undefined, reading: Reading): Draft[] {
  if (spot === undefined) return [];
  return spot.items().flatMap((item) => (reading.problems.full ? [] : (readStep(item, reading) ?? [])));
}

function readStep(spot: Spot, reading: Reading): Draft | undefined {
  const { value } = spot;
  if (!isMapping(value)) {
    return reading.report(
      spot,
      `${whatStands(value)}; a step is wanted, for instance { hose: ID, length: 100 ft }`,
    );
  }
  const key = stepKeyOf(value, STEP_KEYS);
  if (key === undefined) return reading.report(spot, misspelt(value, STEP_KEYS), { key: true });

  const alone = withoutOtherKinds(spot, value, key, reading);
  const model =
    MODELLED.includes(key) && Object.hasOwn(alone, key) ? readModel(key, spot, reading) : undefined;
  const hollow = withoutModels(withoutSteps(alone, WITHIN[key] ? [WITHIN[key]] : []), model ? [[key]] : []);
  const data = reading.parse(
    STEP_SCHEMAS[key],
    spot,
    model === 'wrong' ? withoutModels(hollow, [[key]]) : hollow,
  );
  const lines = readLines(key, spot, reading);
  const step =
    data === undefined || model === 'wrong' || key === 'repeat'
      ? undefined
      : makeStep({ key, data, model, spot, reading });
  const repeats = key === 'repeat' && data !== undefined && 'repeat' in data ? data.repeat : 1;
  if (key === 'repeat' && lines[0]?.steps.length === 0 && lines[0].spot.items().length === 0) {
    reading.report(spot, 'nothing is repeated here: its list of steps is empty', { within: ['steps'] });
  }
  return { key, spot, step, count: repeats, lines };
}

/** The model that the key of a step names, or `wrong` where that has been reported. */
function readModel(key: StepKey, spot: Spot, reading: Reading) {
  const inside = spot.child(key) as Spot;
  if (typeof inside.value !== 'string' && !isMapping(inside.value)) return undefined;
  if (inside.value === '') return undefined;
  return reading.model(key as Kind, inside) ?? 'wrong';
}

/** A step without the keys that name another kind, each of which is reported: a dash is missing before it. */
function withoutOtherKinds(
  spot: Spot,
  value: Record<string, unknown>,
  key: StepKey,
  reading: Reading,
): Record<string, unknown> {
  const own = Object.keys(made<z.ZodObject>(STEP_SCHEMAS[key] as z.ZodLazy<z.ZodObject>).shape);
  const others = Object.keys(value).filter(
    (other) => (STEP_KEYS as readonly string[]).includes(other) && !own.includes(other),
  );
  if (others.length === 0) return value;
  for (const other of others) {
    reading.report(
      spot,
      `${other} names a step of its own, and this step is ${withArticle(key.replace('_', ' '))}`,
      {
        within: [other],
        key: true,
        hint: `start it with a dash on a line of its own: - ${other}: ...`,
      },
    );
  }
  return Object.fromEntries(Object.entries(value).filter(([name]) => !others.includes(name)));
}

function readLines(key: StepKey, spot: Spot, reading: Reading): DraftLine[] {
  if (key === 'repeat') {
    const inside = spot.child('steps');
    return inside ? [{ spot: inside, steps: readSteps(inside, reading) }] : [];
  }
  if (key === 'siamese') {
    const lines = spot.child('siamese')?.items() ?? [];
    return lines.map((line) => ({ spot: line, steps: readSteps(line, reading) }));
  }
  if (key !== 'branch') return [];
  const lines = spot.child('to')?.items() ?? [];
  return lines.map((line) => {
    const name = line.child('name')?.value;
    return {
      spot: line,
      name: typeof name === 'string' ? name.trim() : undefined,
      steps: readSteps(line.child('steps'), reading),
    };
  });
}
