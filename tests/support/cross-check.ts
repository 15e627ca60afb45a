import { expect } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';
import { compare, type Difference, withLeaks } from './compare.js';
import { type EpanetSolution, solveByEpanet } from './epanet.js';
import type { RandomNetwork } from './random-network.js';

/** What the program is held to: every head within 0.02 psi, every flow within 0.02 gpm. */
export const HELD_TO = { psi: 0.02, gpm: 0.02 };

/**
 * With EPANET's leak past its shut links put into our network as well, little is left: EPANET stops when no flow moves by
 * more than 1e-8 m3/s (0.00016 gpm), and lets 1e-5 cfs (0.0045 gpm) back through a check valve before it shuts it.
 */
export const SAME_EQUATIONS = { psi: 0.005, gpm: 0.0045 };

/** Holds a difference to what the program is held to. */
export function expectWithin(difference: Difference): void {
  expect(difference.psi, `head at ${difference.node}`).toBeLessThan(HELD_TO.psi);
  expect(difference.gpm, `flow in ${difference.link}`).toBeLessThan(HELD_TO.gpm);
}

/** Solves a network by both engines, and holds ours to theirs once both solve the same equations. */
export async function crossCheck({ network, hints }: RandomNetwork) {
  const theirs = await solveByEpanet(network, hints);
  const ours = new NetworkSolver(network).solve();
  expect(ours.failure).toBeUndefined();
  expect(ours.status).toBe('solved');
  const difference = compare(network, ours, theirs);
  const leaking = new NetworkSolver(withLeaks(network, theirs.shut)).solve();
  const same = compare(network, leaking, { ...theirs, flows: knownFlows(theirs, leaking.flows) });
  expect(same.psi, `head at ${same.node}, leaks alike`).toBeLessThan(SAME_EQUATIONS.psi);
  expect(same.gpm, `flow in ${same.link}, leaks alike`).toBeLessThan(SAME_EQUATIONS.gpm);
  return { ours, theirs, difference, same };
}

/** EPANET does not report what leaks past a shut link: nothing to compare there. */
function knownFlows(theirs: EpanetSolution, ours: readonly number[]): Float64Array {
  const flows = Float64Array.from(theirs.flows);
  theirs.shut.forEach((link) => {
    flows[link] = ours[link];
  });
  return flows;
}
