import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMPILED, compileKernel } from '../../src/build/kernel.js';
import { joinChains } from '../../src/network/chains.js';
import { Equations } from '../../src/network/equations.js';
import { Region } from '../../src/network/memory.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { sharedLay } from '../bench/lay.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { Random } from '../support/random.js';
import { randomNetwork } from '../support/random-network.js';

/** With nothing, whose sign says nothing, as 0. */
const unsigned = (numbers: Float64Array) => Array.from(numbers, (number) => number + 0);

describe('the compiled kernel', () => {
  it('is what its sources compile to', async () => {
    expect(readFileSync(COMPILED, 'utf8') === (await compileKernel()), 'run `npm run kernel`').toBe(true);
  });
});

describe('the law of plain chains', () => {
  it('is the same in the kernel as for one chain at a time, at any flow and down to no resistance', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 30);
    const point = builder.node('point');
    const resistances = [0, 1e-6, 1, 1e3, 1e6, 1e10];
    resistances.forEach((resistance, index) => {
      builder.resistance(`line ${index}`, point, tank, resistance);
    });
    const { network } = builder;
    const equations = new Equations(network, joinChains(network, new Set([point])));
    const { losses } = equations;
    expect(losses.plainEnd).toBe(resistances.length);
    for (const flow of [0, 1e-9, 9e-7, 1.1e-6, 1e-4, 0.02, 3]) {
      for (const signed of flow === 0 ? [0] : [flow, -flow]) {
        losses.flow.fill(signed);
        losses.evaluate();
        const loss = unsigned(losses.loss);
        const conductance = [...losses.conductance];
        equations.workspace.linearise();
        expect([...losses.flow]).toEqual(resistances.map(() => signed));
        expect(unsigned(losses.loss)).toEqual(loss);
        expect([...losses.conductance]).toEqual(conductance);
      }
    }
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
