import type { Measure } from '../quantity/dimension.js';
import { type Role, toUnit, type UnitSystem, unitFor } from '../quantity/format.js';
import type { Answer, CheckAnswer, FlowAnswer } from '../study/answer.js';
import { checkedNumber, InternalFault } from './checked-number.js';
import { checkTree } from './json-check.js';
import { flowTree } from './json-flow.js';
import type { CheckJson, FlowJson } from './json-schema.js';
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

/** The answer as other programs read it; the shape is `answerJson` in json-schema.ts. */
export function toJson(answer: CheckAnswer, units: UnitSystem): CheckJson;
export function toJson(answer: FlowAnswer, units: UnitSystem): FlowJson;
export function toJson(answer: Answer, units: UnitSystem): CheckJson | FlowJson;
export function toJson(answer: Answer, units: UnitSystem): CheckJson | FlowJson {
  const tree = answer.question === 'check' ? checkTree(answer, units) : flowTree(answer, units);
  return converted({ format: JSON_FORMAT, ...tree }, '', units) as CheckJson | FlowJson;
}
