import { describe, expect, it } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';
import { DarcyWeisbachLoss } from '../../src/physics/darcy-weisbach.js';
import { NetworkBuilder } from '../support/network-builder.js';

describe('White, Fluid Mechanics, ch. 6 (inputs from memory): three reservoirs at 20, 100 and 40 m meet at a junction', () => {
  const builder = new NetworkBuilder();
  const junction = builder.node('junction');
  const viscosity = 1.005e-6;
  const pipes = [
    { head: 20, length: 100, bore: 0.08, roughness: 0.24e-3 },
    { head: 100, length: 150, bore: 0.06, roughness: 0.12e-3 },
    { head: 40, length: 80, bore: 0.04, roughness: 0.2e-3 },
  ].map(({ head, ...pipe }, index) => {
    const reservoir = builder.fixed(`reservoir ${index + 1}`, head);
    const curve = new DarcyWeisbachLoss({ ...pipe, viscosity });
    return builder.link(`pipe ${index + 1}`, reservoir, junction, { kind: 'curve', curve });
  });
  const { heads, flows } = new NetworkSolver(builder.network).solve();
  const perHour = pipes.map((pipe) => Math.abs(flows[pipe] * 3600));

  // The text stops its hand iteration at 34.53 m, where its flows are 0.0 out of balance as printed: 0.02 m for that.
  it('the junction stands at 34.53 m, to the 0.02 m that a hand iteration leaves', () => {
    expect(Math.abs(heads[junction] - 34.53)).toBeLessThan(0.02);
  });
  it('52.8, 47.0 and 5.8 m3/h, printed to 0.1 and rounded down there', () => {
    expect(Math.abs(perHour[0] - 52.8)).toBeLessThan(0.1);
    expect(Math.abs(perHour[1] - 47.0)).toBeLessThan(0.1);
    expect(Math.abs(perHour[2] - 5.8)).toBeLessThan(0.1);
  });
});
