import { describe, expect, it } from 'vitest';
import { NetworkSolver } from '../../src/network/solver.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { CUBIC_FOOT, FOOT } from '../support/units.js';

describe('Munson, Fundamentals of Fluid Mechanics, Example 8.14 (answers from memory): three reservoirs at 100, 20 and 0 ft, pipes of 1 ft, f 0.02', () => {
  const builder = new NetworkBuilder();
  const junction = builder.node('junction');
  const pipes = [
    { head: 100, feet: 1000 },
    { head: 20, feet: 500 },
    { head: 0, feet: 400 },
  ].map(({ head, feet }) => {
    const reservoir = builder.fixed(`${head} ft`, head * FOOT);
    // h = f (L/D) V^2/2g in ft and cfs, g 32.2 ft/s2 as the text has it.
    const resistance = (0.02 * feet) / (2 * 32.2 * (Math.PI / 4) ** 2);
    return builder.resistance(`${feet} ft`, reservoir, junction, (resistance * FOOT) / CUBIC_FOOT ** 2);
  });
  const { flows } = new NetworkSolver(builder.network).solve();
  const cfs = pipes.map((pipe) => flows[pipe] / CUBIC_FOOT);

  it('12.5 cfs leaves the highest, printed to 0.1', () => {
    expect(Math.abs(cfs[0] - 12.5)).toBeLessThan(0.05);
  });
  // The text rounds its velocities: its 2.26 cfs is 2.88 ft/s where 2.84 balances, and its 10.2 cfs is the rest of 15.9 ft/s.
  it('2.26 and 10.2 cfs reach the others, to the 0.1 cfs that rounded velocities leave', () => {
    expect(Math.abs(-cfs[1] - 2.26)).toBeLessThan(0.1);
    expect(Math.abs(-cfs[2] - 10.2)).toBeLessThan(0.1);
  });
});
