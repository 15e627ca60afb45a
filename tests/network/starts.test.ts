import { describe, expect, it } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';
import { sharedLay } from '../bench/lay.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { PowerPumpCurve } from '../support/pump-curves.js';
import { Random } from '../support/random.js';
import { randomNetwork } from '../support/random-network.js';
import { GPM, HEAD_PER_PSI } from '../support/units.js';

/** Ten times what the solver promises by default, m3/s. */
const FLOW = 1e-7;

function worstApart(one: readonly number[], other: readonly number[]): number {
  return one.reduce((worst, flow, link) => Math.max(worst, Math.abs(flow - other[link])), 0);
}

describe('a start from the last solutions', () => {
  it('ends where a cold one does, whatever was set between: throttles, draws, resistances', () => {
    for (let seed = 0; seed < 60; seed += 1) {
      const random = new Random(seed);
      const { network, pumps, hoses } = randomNetwork(random, 40);
      const warm = new NetworkSolver(network);
      const cold = new NetworkSolver(network);
      const node = network.nodes.findIndex(({ head }) => head === undefined);
      warm.solve();
      for (let turn = 0; turn < 12; turn += 1) {
        const throttle = random.between(0.6, 1);
        // Three turns in four by one throttle, then each pump by its own; a draw or a resistance now and then.
        const own = pumps.map(() => (turn % 4 === 3 ? random.between(0.6, 1) : throttle));
        const draw = random.between(0, 40) * GPM;
        const [hose] = hoses;
        const law = network.links[hose].law;
        for (const solver of [warm, cold]) {
          pumps.forEach((pump, index) => {
            solver.setSpeed(pump, own[index]);
          });
          if (turn % 5 === 4) solver.setDemand(node, draw);
          if (turn % 6 === 5 && law.kind === 'resistance')
            solver.setResistance(hose, law.resistance * (1 + turn));
        }
        const from = warm.solve({ warm: true });
        const anew = cold.solve();
        expect(from.status).toBe(anew.status);
        if (anew.status === 'solved') expect(worstApart(from.flows, anew.flows)).toBeLessThan(FLOW);
      }
    }
  });

  it('needs one iteration once it has seen what the throttle does', () => {
    const { builder, pumps } = sharedLay(46);
    const solver = new NetworkSolver(builder.network);
    const at = (throttle: number) => {
      for (const pump of pumps) solver.setSpeed(pump, throttle);
      return solver.solve({ warm: true }).iterations;
    };
    solver.solve();
    const iterations = [0.97, 0.94, 0.91, 0.88, 0.9, 0.925, 0.955, 0.99].map(at);
    expect(iterations[0]).toBeGreaterThan(1);
    expect(iterations.slice(4)).toEqual([1, 1, 1, 1]);
  });
});

describe('a start from nothing', () => {
  it('is as good for a network that is often solved so, which then has its trees folded', () => {
    const { builder, pumps } = sharedLay(22);
    const solver = new NetworkSolver(builder.network);
    const answers = [1, 2, 3, 4, 5].map(() => solver.solve());
    for (const { flows } of answers) expect(worstApart(flows, answers[0].flows)).toBeLessThan(FLOW);
    for (const pump of pumps) solver.setSpeed(pump, 0.9);
    const slower = new NetworkSolver(builder.network);
    for (const pump of pumps) slower.setSpeed(pump, 0.9);
    expect(worstApart(solver.solve().flows, slower.solve().flows)).toBeLessThan(FLOW);
  });

  it('finds a bleed a hundredth of what its pump could move, without halving its way down to it', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 1);
    const inlet = builder.node('inlet');
    const volute = builder.node('volute');
    const shutoff = 400 * HEAD_PER_PSI;
    builder.resistance('suction', tank, inlet, (2 * HEAD_PER_PSI) / (150 * GPM) ** 2);
    builder.pump('pump', inlet, volute, new PowerPumpCurve(shutoff, shutoff / (200 * GPM) ** 2, 2));
    // 1.5 gpm at 300 psi.
    builder.resistance('bleed', volute, tank, (300 * HEAD_PER_PSI) / (1.5 * GPM) ** 2);
    const { status, iterations, flows } = new NetworkSolver(builder.network).solve();
    expect(status).toBe('solved');
    expect(iterations).toBeLessThan(6);
    expect(flows[0] / GPM).toBeCloseTo(1.5 * Math.sqrt(400 / 300), 2);
  });
});
