import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Ending, endingsOf, layouts, PATIENCE, SEED } from './support.js';

/** Hundreds more are in the slow file. */
const RUNS = 25;

/** How often each ending came, over some runs. */
async function tally(options: { wild: boolean; tapped: boolean }, numRuns: number) {
  const counts = { read: {}, flow: {}, check: {} } as Record<string, Partial<Record<Ending, number>>>;
  await fc.assert(
    fc.asyncProperty(layouts(options), async (document) => {
      const endings = await endingsOf(document);
      for (const [question, ending] of Object.entries(endings))
        counts[question][ending] = (counts[question][ending] ?? 0) + 1;
    }),
    { numRuns, seed: SEED, endOnFailure: true },
  );
  return counts;
}

describe('anything that the format can say', () => {
  it(
    'ends in an answer of finite numbers or in a named refusal',
    async () => {
      const counts = await tally({ wild: true, tapped: true }, RUNS);
      // The layouts must not be refused so often that nothing is tried.
      expect(counts.flow.answered).toBeGreaterThan(RUNS / 2);
      expect(counts.check.answered).toBeGreaterThan(RUNS / 2);
    },
    PATIENCE,
  );

  it(
    'has an answer, where no curve droops and no valve is shut',
    async () => {
      const counts = await tally({ wild: false, tapped: false }, RUNS);
      expect(counts.flow.answered).toBeGreaterThan(RUNS / 2);
      expect(counts.flow['no steady answer']).toBeUndefined();
      expect(counts.check['no steady answer']).toBeUndefined();
    },
    PATIENCE,
  );
});
