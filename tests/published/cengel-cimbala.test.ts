import { describe, expect, it } from 'vitest';
import type { LossAtFlow, LossCurve } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { DarcyWeisbachLoss } from '../../src/physics/darcy-weisbach.js';
import { NetworkBuilder } from '../support/network-builder.js';

/** A pump that gives the water a fixed power: head = power / (weight a second). */
class FixedPowerPump implements LossCurve {
  constructor(private readonly power: number) {}

  evaluate(flow: number, out: LossAtFlow): void {
    // A pump of fixed power has no shutoff; below this flow its head is held.
    const used = Math.max(flow, 1e-3);
    out.loss = -this.power / (998 * 9.81 * used);
    out.slope = flow < used ? 0 : -out.loss / flow;
  }
}

describe('Cengel and Cimbala, Fluid Mechanics, Example 8-7 (from memory): 8 kW into a 70 % pump, 8 m up, two parallel pipes of 36 m', () => {
  // Commercial steel 0.045 mm; water at 20 degC: 998 kg/m3, viscosity 1.002e-3 Pa s. The example neglects small losses.
  const pipes = [0.04, 0.08].map((bore) => ({
    bore,
    length: 36,
    roughness: 0.045e-3,
    viscosity: 1.002e-3 / 998,
  }));
  const builder = new NetworkBuilder();
  const low = builder.fixed('reservoir A', 5);
  const start = builder.node('start', 5);
  const high = builder.fixed('reservoir B', 13);
  const pump = builder.link('pump', low, start, {
    kind: 'curve',
    curve: new FixedPowerPump(0.7 * 8000),
    speed: 1,
  });
  const [small, large] = pipes.map((pipe) =>
    builder.link(`${pipe.bore} m`, start, high, { kind: 'curve', curve: new DarcyWeisbachLoss(pipe) }),
  );
  const { status, flows, heads } = new NetworkSolver(builder.network).solve();

  it('0.0300 m3/s in all, 0.00415 and 0.0259 m3/s in the pipes, as printed', () => {
    expect(status).toBe('solved');
    expect(Math.abs(flows[pump] - 0.03)).toBeLessThan(0.00005);
    expect(Math.abs(flows[small] - 0.00415)).toBeLessThan(0.000005);
    expect(Math.abs(flows[large] - 0.0259)).toBeLessThan(0.00005);
  });
  it('a pump head of 19.1 m and a loss of 11.1 m, printed to 0.1', () => {
    expect(Math.abs(heads[start] - heads[low] - 19.1)).toBeLessThan(0.05);
    expect(Math.abs(heads[start] - heads[high] - 11.1)).toBeLessThan(0.05);
  });
});
