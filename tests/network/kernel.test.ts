import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMPILED, compileKernel } from '../../src/build/kernel.js';
import { Region } from '../../src/network/memory.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { sharedLay } from '../bench/lay.js';
import { Random } from '../support/random.js';
import { randomNetwork } from '../support/random-network.js';

describe('the compiled kernel', () => {
  it('is what its sources compile to', async () => {
    expect(readFileSync(COMPILED, 'utf8') === (await compileKernel()), 'run `npm run kernel`').toBe(true);
  });
});

describe('networks that share memory', () => {
  it('solve as each does alone, however their solves alternate', () => {
    const networks = Array.from(
      { length: 40 },
      (_, seed) => randomNetwork(new Random(seed), 30 + 5 * seed).network,
    );
    const alone = networks.map((network) => new NetworkSolver(network).solve());
    const together = networks.map((network) => new NetworkSolver(network));
    for (let round = 0; round < 3; round += 1) {
      together.forEach((solver, index) => {
        const { flows } = solver.solve();
        flows.forEach((flow, link) => {
          expect(Math.abs(flow - alone[index].flows[link])).toBeLessThan(1e-7);
        });
      });
    }
  });

  it('may be larger than a block', () => {
    const { network } = sharedLay(40_000).builder;
    const solution = new NetworkSolver(network).solve();
    expect(solution.status).toBe('solved');
    expect(solution.flowResidual).toBeLessThan(1e-7);
  });

  it('get what they asked for, all zero and apart from each other, and never more', () => {
    const first = new Region(1000);
    const second = new Region(1000);
    const mine = first.doubles(100);
    const yours = second.doubles(100);
    mine.fill(7);
    expect(yours.every((value) => value === 0)).toBe(true);
    expect(() => first.doubles(100)).toThrow(RangeError);
  });
});
