import { describe, expect, it } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';
import { crossCheck, HELD_TO } from '../support/cross-check.js';
import { EpanetFailure } from '../support/epanet.js';
import { Random } from '../support/random.js';
import { randomNetwork } from '../support/random-network.js';

const FIRST = 2001;
const NETWORKS = 600;
/** EPANET itself ends unbalanced, or with a matrix it cannot factor, on a few: there is nothing to compare with. */
const MAY_FAIL = 0.02;
/**
 * What EPANET lets past its shut links (see EPANET_SHUT_SLOPE) can add up to more than 0.02 where a dozen of them stand
 * shut at once; with the same leak put into ours even those agree, which `crossCheck` asserts for all.
 */
const MAY_LEAK = 0.01;

describe(`${NETWORKS} more networks against EPANET 2.3`, () => {
  const failed: string[] = [];
  const leaked: string[] = [];

  for (let seed = FIRST; seed < FIRST + NETWORKS; seed += 1) {
    it(`network ${seed}`, async () => {
      const random = new Random(seed);
      const drawn = randomNetwork(random, random.integer(10, 120), { weakB: random.chance(0.2) });
      try {
        const { difference } = await crossCheck(drawn);
        if (difference.psi >= HELD_TO.psi || difference.gpm >= HELD_TO.gpm) leaked.push(`${seed}`);
      } catch (error) {
        if (!(error instanceof EpanetFailure)) throw error;
        failed.push(`${seed}: ${error.message}`);
        expect(new NetworkSolver(drawn.network).solve().status).toBe('solved');
      }
    });
  }

  it(`EPANET fails on no more than ${MAY_FAIL * 100} % of them`, () => {
    expect(failed.length, failed.join('\n')).toBeLessThanOrEqual(NETWORKS * MAY_FAIL);
  });

  it(`all but ${MAY_LEAK * 100} % are within 0.02 psi and 0.02 gpm before its leaks are allowed for`, () => {
    expect(leaked.length, leaked.join('\n')).toBeLessThanOrEqual(NETWORKS * MAY_LEAK);
  });
});
