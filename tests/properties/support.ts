import * as fc from 'fast-check';
import { expect } from 'vitest';
import { LayoutProblems } from '../../src/layout/problem.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, layoutFrom } from '../support/layouts.js';
import { Random } from '../support/random.js';
import { type LayoutOptions, randomLayout } from '../support/random-layout.js';

/** The same cases every time; PROPERTY_SEED in the environment draws others. */
export const SEED = Number(process.env.PROPERTY_SEED ?? 1988);

/** How long a property may take, ms: many tests share one machine. */
export const PATIENCE = 120_000;

/** Layouts from a size and a seed, so that a failure shrinks to the smallest that shows it. */
export function layouts(options: LayoutOptions = {}, most = 15): fc.Arbitrary<Document> {
  return fc
    .tuple(fc.integer({ min: 1, max: most }), fc.nat())
    .map(([size, seed]) => randomLayout(new Random(seed), size, options));
}

/** Where a number stands in an answer that is none, if one does. */
export function badNumber(value: unknown, path = 'answer'): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inside] of Object.entries(value)) {
    const found = badNumber(inside, `${path}.${key}`);
    if (found) return found;
  }
  return undefined;
}

export type Ending = 'answered' | 'refused as written' | 'no steady answer';

/** A layout ought to be answered or refused well within this, ms, on a busy machine too. */
const LONG = 30_000;

/** Puts both questions to a document, and tells how each ended; anything but an answer or a named refusal is thrown on. */
export async function endingsOf(document: Document): Promise<Record<'read' | 'flow' | 'check', Ending>> {
  const start = performance.now();
  const ended = async (ask: () => Promise<unknown>): Promise<Ending> => {
    try {
      expect(badNumber(await ask())).toBeUndefined();
      return 'answered';
    } catch (error) {
      if (error instanceof LayoutProblems) {
        expect(error.problems.length).toBeGreaterThan(0);
        return 'refused as written';
      }
      if (!(error instanceof NoSteadyAnswer)) throw error;
      expect(error.message).not.toBe('');
      expect(error.where.length).toBeGreaterThan(0);
      return 'no steady answer';
    }
  };
  const read = await ended(async () => void layoutFrom(document));
  if (read !== 'answered') return { read, flow: read, check: read };
  const flow = await ended(() => operateLayout(layoutFrom(document)));
  const check = await ended(() => checkLayout(layoutFrom(document)));
  expect(performance.now() - start).toBeLessThan(LONG);
  return { read, flow, check };
}

/** The layout as it stands, answered; undefined where it is refused as it is written. */
export async function flowOf(document: Document) {
  try {
    return await operateLayout(layoutFrom(document));
  } catch (error) {
    if (error instanceof LayoutProblems) return undefined;
    throw error;
  }
}
