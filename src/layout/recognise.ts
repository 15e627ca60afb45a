import { isMapping } from './schema/choice.js';

/** A document that is no layout: what it is, and where it goes. */
export interface Recognised {
  is: string;
  goes: string;
}

const has = (value: Record<string, unknown>, ...keys: string[]): boolean =>
  keys.every((key) => Object.hasOwn(value, key));

const hasOne = (value: Record<string, unknown>, ...keys: string[]): boolean =>
  keys.some((key) => Object.hasOwn(value, key));

const NOZZLE_KINDS: unknown[] = ['smooth_bore', 'fog', 'automatic', 'sharp_orifice'];

const ANSWER: Recognised = {
  is: 'an answer that pumpyoke has printed',
  goes: 'Give the layout that was asked of, and read the answer with a program of your own.',
};

/** A part by what it says of itself: pumps have points, hose a bore and a friction, nozzles a kind. */
function part(value: Record<string, unknown>): Recognised | undefined {
  if (has(value, 'points'))
    return {
      is: 'a pump',
      goes: "Write it into an engine's file, pumps: { a: { model: { points: ... } } }, and that into a layout.",
    };
  if (NOZZLE_KINDS.includes(value.kind))
    return { is: 'a nozzle', goes: 'Write it into a lay, as its last step: - nozzle: { kind: ... }.' };
  if (has(value, 'inside_diameter') && hasOne(value, 'coefficient', 'roughness', 'hazen_williams'))
    return {
      is: 'a hose or a pipe',
      goes: 'Write it into a lay, as a step: - hose: { inside_diameter: ..., coefficient: ... } with a length.',
    };
  return undefined;
}

/** One thing by its name after another, as the catalogue has them. */
function rows(value: Record<string, unknown>): Recognised | undefined {
  const entries = Object.values(value);
  if (entries.length === 0 || !entries.every(isMapping)) return undefined;
  const first = part(entries[0] as Record<string, unknown>);
  if (first === undefined) return undefined;
  return {
    is: `${first.is.replace(/^a /, '')}s by their names, as the catalogue has them`.replace(
      /^hose or a pipes/,
      'hoses or pipes',
    ),
    goes: first.goes,
  };
}

const STEPS = ['hose', 'pipe', 'valve', 'check_valve', 'appliance', 'branch', 'siamese', 'nozzle', 'repeat'];

/** What a document is that is no layout; undefined where it is one, or nothing that is known. */
export function recognised(value: unknown): Recognised | undefined {
  if (typeof value === 'string' && /^"?sheet\b.*[,;\t]/i.test(value))
    return { is: 'a form of answers to a drill', goes: 'Mark it: pumpyoke drill mark FILE.' };
  if (Array.isArray(value)) {
    const steps = value.length > 0 && value.every((step) => isMapping(step) && hasOne(step, ...STEPS));
    return steps
      ? { is: 'a list of steps', goes: 'Write it under lay: in a layout, beside engine: engine.yaml.' }
      : undefined;
  }
  if (!isMapping(value) || has(value, 'engine'))
    return isMapping(value) && isAnswer(value) ? ANSWER : undefined;
  if (has(value, 'pumps'))
    return {
      is: 'an engine',
      goes: 'Name it in a layout (engine: FILE, staging: parallel, and the lay), and give that layout.',
    };
  if (has(value, 'name', 'source') && hasOne(value, 'us', 'si', 'based_on'))
    return { is: 'a set of rules of the drill', goes: 'Take it there: pumpyoke drill --rules FILE.' };
  return isAnswer(value) ? ANSWER : (part(value) ?? rows(value));
}

const isAnswer = (value: Record<string, unknown>): boolean =>
  has(value, 'format') && typeof value.question === 'string';

/** What was given as an engine and is none. */
export function recognisedForEngine(value: unknown): Recognised | undefined {
  if (isMapping(value) && has(value, 'pumps')) return undefined;
  if (isMapping(value) && has(value, 'engine') && !isAnswer(value))
    return { is: 'a layout', goes: "Name the engine's own file, the one with pumps: in it." };
  return recognised(value);
}
