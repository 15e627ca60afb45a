import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endingsOf, layouts, SEED } from './support.js';

describe('anything that the format can say, in hundreds', () => {
  it('ends in an answer of finite numbers or in a named refusal', async () => {
    await fc.assert(
      fc.asyncProperty(layouts({ wild: true, tapped: true }, 60), async (document) => {
        await endingsOf(document);
      }),
      { numRuns: 150, seed: SEED, endOnFailure: true },
    );
  });

  it('has an answer to what flows where, where no curve droops and no valve is shut', async () => {
    await fc.assert(
      fc.asyncProperty(layouts({}, 60), async (document) => {
        expect((await endingsOf(document)).flow).not.toBe('no steady answer');
      }),
      { numRuns: 150, seed: SEED, endOnFailure: true },
    );
  });
});
