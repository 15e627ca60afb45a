import type { Measure } from '../quantity/dimension.js';
import { type Role, toUnit, type UnitSystem, unitFor } from '../quantity/format.js';
import type { Answer } from '../study/answer.js';
import { checkedNumber, InternalFault } from './checked-number.js';
import { advanceTree } from './json-advance.js';
import { checkTree } from './json-check.js';
import { clockTree } from './json-clock.js';
import { flowTree } from './json-flow.js';
import { reachTree } from './json-reach.js';
import { requireTree } from './json-require.js';
import type { AdvanceJson, CheckJson, ClockJson, FlowJson, ReachJson, RequireJson } from './json-schema.js';
import { Bore, InRole, Vacuum } from './json-tree.js';

/** Changes only when a shape breaks, never when a key is added. */
export const JSON_FORMAT = 1;

/** Enough to hide the dust of a change of units and far more than any figure is worth. */
const DIGITS = 12;

const isMeasure = (value: object): value is Measure => 'dimension' in value && 'value' in value;

function quantity(path: string, { value, dimension }: Measure, units: UnitSystem, role?: Role) {
  const unit = unitFor(dimension, units, role);
  return { value: rounded(path, toUnit(checkedNumber(path, value), unit)), unit };
}

function bore(path: string, { length }: Bore, units: UnitSystem) {
  const unit = unitFor('length', units, 'bore');
  return { value: rounded(path, toUnit(checkedNumber(path, length), unit)), unit };
}

function vacuum(path: string, { vacuum: value }: Vacuum, units: UnitSystem) {
  const unit = unitFor('pressure', units, 'vacuum');
  return { value: rounded(path, toUnit(checkedNumber(path, value), unit)), unit };
}

const rounded = (path: string, value: number): number =>
  Number(checkedNumber(path, value).toPrecision(DIGITS));

/** Measures into the reader's units; a number that is none, or a key without a value, is a fault with its path. */
function converted(value: unknown, path: string, units: UnitSystem): unknown {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return checkedNumber(path, value);
  if (Array.isArray(value)) return value.map((each, index) => converted(each, `${path}[${index}]`, units));
  if (value instanceof Bore) return bore(path, value, units);
  if (value instanceof InRole) return quantity(path, value.measure, units, value.role);
  if (value instanceof Vacuum) return vacuum(path, value, units);
  if (typeof value !== 'object') throw new InternalFault(`${path} is ${typeof value}, which JSON would drop`);
  if (isMeasure(value)) return quantity(path, value, units);
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [key, converted(each, path ? `${path}.${key}` : key, units)]),
  );
}

interface Shapes {
  check: CheckJson;
  flow: FlowJson;
  require: RequireJson;
  reach: ReachJson;
  advance: AdvanceJson;
  clock: ClockJson;
}

function treeOf(answer: Answer, units: UnitSystem): object {
  switch (answer.question) {
    case 'check':
      return checkTree(answer, units);
    case 'flow':
      return flowTree(answer, units);
    case 'require':
      return requireTree(answer, units);
    case 'reach':
      return reachTree(answer, units);
    case 'advance':
      return advanceTree(answer, units);
    case 'clock':
      return clockTree(answer, units);
  }
}

/** The answer as other programs read it; the shape is `answerJson` in json-schema.ts. */
export function toJson<Q extends Answer['question']>(
  answer: Extract<Answer, { question: Q }>,
  units: UnitSystem,
): Shapes[Q] {
  return treeInUnits(treeOf(answer, units), units) as Shapes[Q];
}

/** A tree of measures in the reader's units, with the format of its shape. */
export const treeInUnits = (tree: object, units: UnitSystem): unknown =>
  converted({ format: JSON_FORMAT, ...tree }, '', units);
