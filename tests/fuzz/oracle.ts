import type * as z from 'zod';
import {
  advanceJson,
  checkJson,
  clockJson,
  flowJson,
  reachJson,
  requireJson,
} from '../../src/report/json-schema.js';
import type { Command } from './case.js';

const SHAPES: Record<Exclude<Command, 'drill'>, z.ZodType> = {
  check: checkJson,
  flow: flowJson,
  require: requireJson,
  reach: reachJson,
  advance: advanceJson,
  clock: clockJson,
};

/** More than any engine, hydrant or shuttle that a layout may describe moves, gpm. */
const MOST_FLOW = 50_000;
/** More than two pumps of the greatest pressure in series, or a lay from the highest place to the lowest, make, psi. */
const MOST_PRESSURE = 40_000;
const NO_FIGURE = /\b(NaN|Infinity|undefined|null)\b|\[object|∞|\d{9,}/;

/** All that is wrong with an answer: its shape, and figures that no water has. */
export function doubtsAbout(command: Exclude<Command, 'drill'>, json: unknown, text: string): string[] {
  const doubts: string[] = [];
  const { success, error } = SHAPES[command].safeParse(json);
  if (!success) doubts.push(`not of its exported shape: ${error.message.slice(0, 300)}`);
  const wrong = NO_FIGURE.exec(text);
  if (wrong)
    doubts.push(
      `prints ${text.slice(Math.max(0, wrong.index - 60), wrong.index + 40).replaceAll('\n', ' ')}`,
    );
  figures(json, '', doubts);
  return doubts;
}

function figures(node: unknown, path: string, doubts: string[]): void {
  if (typeof node !== 'object' || node === null) return;
  if ('value' in node && 'unit' in node && typeof node.value === 'number') {
    const { value, unit } = node;
    if (!Number.isFinite(value)) doubts.push(`${path} is ${value}`);
    if (unit === 'gpm' && Math.abs(value) > MOST_FLOW) doubts.push(`${path} is ${value} gpm`);
    if (unit === 'psi' && Math.abs(value) > MOST_PRESSURE) doubts.push(`${path} is ${value} psi`);
    return;
  }
  for (const [key, value] of Object.entries(node)) figures(value, path ? `${path}.${key}` : key, doubts);
}
