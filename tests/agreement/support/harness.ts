import { expect } from 'vitest';
import type { Layout } from '../../../src/layout/layout.js';
import { LayoutProblems } from '../../../src/layout/problem.js';
import { NoSteadyAnswer } from '../../../src/study/no-steady-answer.js';
import { type Document, layoutFrom } from '../../support/layouts.js';
import { Random } from '../../support/random.js';
import { type LayoutOptions, randomLayout } from '../../support/random-layout.js';

/** The same layouts every time; AGREEMENT_SEED in the environment draws others. */
export const SEED = Number(process.env.AGREEMENT_SEED ?? 1994);

/** A layout that was drawn, with its number to be found again by. */
export interface Drawn {
  seed: number;
  document: Document;
  layout: Layout;
}

/** Random layouts that the reader lets in, from a seed on. */
export function* drawnLayouts(count: number, options: LayoutOptions = {}, size = 8): Generator<Drawn> {
  for (let seed = SEED * 100_000, made = 0; made < count; seed++) {
    const random = new Random(seed);
    const document = randomLayout(random, random.integer(1, size), options);
    const layout = readOrNone(document);
    if (layout === undefined) continue;
    made++;
    yield { seed, document, layout };
  }
}

/**
 * Puts a question to so many drawn layouts and fails with every one that it does not agree on; `agrees` tells whether a layout
 * was answered at all, which more than half of them have to be.
 */
export async function holdsForDrawn(
  count: number,
  agrees: (drawn: Drawn) => Promise<boolean>,
  options: LayoutOptions = { wild: true, tapped: true },
): Promise<void> {
  let answered = 0;
  const failed: string[] = [];
  for (const drawn of drawnLayouts(count, options)) {
    try {
      if (await agrees(drawn)) answered++;
    } catch (error) {
      const [first] = (error instanceof Error ? error.message : `${error}`).split('\n');
      failed.push(`${drawn.seed}: ${first}`);
    }
  }
  expect(failed).toEqual([]);
  expect(answered).toBeGreaterThan(count / 2);
}

/** The layout of a document; nothing where the reader refuses it. */
export function readOrNone(document: Document): Layout | undefined {
  try {
    return layoutFrom(document);
  } catch (error) {
    if (error instanceof LayoutProblems) return undefined;
    throw error;
  }
}

/** What a question answers, and nothing where the layout has no steady state, which is an answer that both askers share. */
export async function answerOf<T>(ask: () => Promise<T>): Promise<T | undefined> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return undefined;
    throw error;
  }
}

/** Holds two answers to one question together, and says which layout they differ in. */
export function expectAlike(
  { seed }: Pick<Drawn, 'seed'>,
  what: string,
  one: number | undefined,
  other: number | undefined,
  within: number,
): void {
  const where = `${what} of layout ${seed}: ${one} and ${other}`;
  expect(one === undefined, where).toBe(other === undefined);
  if (one !== undefined && other !== undefined) expect(Math.abs(one - other), where).toBeLessThan(within);
}

/** Every figure with its unit in a text, as it is printed. */
export function figuresPrinted(text: string): { value: number; unit: string }[] {
  const pattern = /(?<![\w.])(-?\d[\d,]*(?:\.\d+)?) (psi|gpm|inHg|ft|lb)\b/g;
  return [...text.matchAll(pattern)].map(([, value, unit]) => ({
    value: Number(value.replace(/,/g, '')),
    unit,
  }));
}

/** Every pressure in a tree of JSON, psi. */
export function pressuresIn(tree: unknown): number[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const { value, unit } = tree as { value?: unknown; unit?: unknown };
  if (typeof value === 'number' && unit === 'psi') return [value];
  return Object.values(tree).flatMap(pressuresIn);
}

/** Every number with a unit in a tree of JSON, by its unit. */
export function quantitiesIn(tree: unknown): { value: number; unit: string }[] {
  if (typeof tree !== 'object' || tree === null) return [];
  const { value, unit } = tree as { value?: unknown; unit?: unknown };
  if (typeof value === 'number' && typeof unit === 'string') return [{ value, unit }];
  return Object.values(tree).flatMap(quantitiesIn);
}
