import { expect, it } from 'vitest';
import type { LossAtFlow } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { Random } from '../support/random.js';
import { GPM } from '../support/units.js';

/** A fixed allowance, m: level from 1 gpm up, so that a hair of head out of balance would move its flow at will. */
const allowance = (head: number) => ({
  evaluate(flow: number, out: LossAtFlow) {
    const part = flow / GPM;
    out.loss = head * Math.min(1, Math.max(-1, part));
    out.slope = Math.abs(part) < 1 ? head / GPM : 0;
  },
});

// Heads of 1e5 to 1e6 m can be told to 1e-10 m or so; through a level law that is more than the tolerance of a flow.
it('finds the heads of a draw far past what its supply can give, a fixed allowance in the way', () => {
  for (let seed = 0; seed < 200; seed++) {
    const random = new Random(seed);
    const builder = new NetworkBuilder();
    let at = builder.fixed('tank', 0);
    let sum = 0;
    let allowed = 0;
    for (let i = 0; i < 3; i++) {
      const through = builder.node(`after pipe ${i}`);
      const next = builder.node(`after check ${i}`);
      const resistance = random.logBetween(1e5, 1e8);
      const head = random.between(0.1, 2);
      builder.resistance(`pipe ${i}`, at, through, resistance);
      builder.link(`check ${i}`, through, next, { kind: 'curve', curve: allowance(head) }, { oneWay: true });
      sum += resistance;
      allowed += head;
      at = next;
    }
    const draw = random.between(0.03, 0.08);
    builder.nodes[at].demand = draw;
    const { status, heads, flows, headResidual } = new NetworkSolver(builder.network).solve();
    expect(status, `seed ${seed}`).toBe('solved');
    expect(headResidual).toBeLessThan(1e-12 * sum * draw ** 2);
    // What rounding of such heads leaves: 1,000 m3/s per m of the level law, at 1e-16 of up to 6e5 m a step.
    for (const flow of flows) expect(Math.abs(flow / draw - 1)).toBeLessThan(5e-6);
    // Twice that, since head goes with the square of flow.
    expect(Math.abs(-heads[at] / (sum * draw ** 2 + allowed) - 1)).toBeLessThan(1e-5);
  }
});
