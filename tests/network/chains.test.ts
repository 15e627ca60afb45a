import { describe, expect, it } from 'vitest';
import { joinChains } from '../../src/network/chains.js';
import type { Network } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { PowerPumpCurve } from '../support/pump-curves.js';
import { worstEnergyResidual, worstImbalance } from '../support/residuals.js';
import { GPM, HEAD_PER_PSI } from '../support/units.js';

const NONE = new Set<number>();

function namesOf(network: Network, kept: ReadonlySet<number> = NONE): string[] {
  return joinChains(network, kept)
    .map(({ members }) => members.map((link) => network.links[link].name).join(' '))
    .sort();
}

/** A tank, a pump behind its check valve, two hoses with a node between them, and a nozzle. */
function line() {
  const builder = new NetworkBuilder();
  const tank = builder.fixed('tank', 2);
  const volute = builder.node('volute');
  const outlet = builder.node('outlet', 1);
  const middle = builder.node('middle', 5);
  const tip = builder.node('tip', 9);
  const pump = builder.pump('pump', tank, volute, new PowerPumpCurve(200 * HEAD_PER_PSI, 1e6, 2));
  builder.hose('check', volute, outlet, 2, 50, { oneWay: true });
  builder.hose('first', outlet, middle, 24, 100);
  // Drawn against the flow.
  builder.hose('second', tip, middle, 24, 100);
  builder.nozzle('nozzle', tip, 0.375);
  return { builder, pump, volute, outlet, middle, tip };
}

describe('links in a row', () => {
  it('become one chain, whichever way each is drawn', () => {
    const { builder } = line();
    const [chain, ...others] = joinChains(builder.network, NONE);
    expect(others).toEqual([]);
    expect(chain.members.map((link) => builder.links[link].name)).toEqual([
      'pump',
      'check',
      'first',
      'second',
      'nozzle',
    ]);
    expect(chain.signs).toEqual([1, 1, 1, -1, 1]);
  });

  it('give every node within the head that their losses leave', () => {
    const { builder } = line();
    const solution = new NetworkSolver(builder.network).solve();
    expect(solution.status).toBe('solved');
    expect(solution.flows[0] / GPM).toBeGreaterThan(20);
    expect(solution.flows[3]).toBe(-solution.flows[0]);
    expect(worstEnergyResidual(builder.network, solution)).toBeLessThan(1e-6);
    expect(worstImbalance(builder.network, solution)).toBe(0);
  });

  it('part where a third link joins, where water is drawn, and where a node is to be kept', () => {
    const { builder, outlet, middle, tip } = line();
    expect(namesOf(builder.network, new Set([middle]))).toEqual(['pump check first', 'second nozzle']);
    builder.nodes[tip].demand = 1e-3;
    expect(namesOf(builder.network)).toEqual(['nozzle', 'pump check first second']);
    builder.hose('side', outlet, builder.node('end'), 24, 100);
    expect(namesOf(builder.network)).toEqual(['first second', 'nozzle', 'pump check', 'side']);
  });

  it('part between check valves that face each other, and between power laws of unlike exponents', () => {
    const builder = new NetworkBuilder();
    const high = builder.fixed('high', 50);
    const low = builder.fixed('low', 0);
    const nodes = ['1', '2', '3'].map((name) => builder.node(name));
    const power = (exponent: number) =>
      ({ kind: 'power', resistance: 1e5, exponent, minor: 0, linearBelow: 1e-6 }) as const;
    builder.hose('check', high, nodes[0], 2, 50, { oneWay: true });
    builder.hose('turned check', nodes[1], nodes[0], 2, 50, { oneWay: true });
    builder.link('one', nodes[1], nodes[2], power(1.852));
    builder.link('another', nodes[2], low, power(1.9));
    expect(namesOf(builder.network)).toEqual(['another', 'check', 'one turned check']);
    const { status, flows, heads } = new NetworkSolver(builder.network).solve();
    expect(status).toBe('solved');
    for (const flow of flows) expect(Math.abs(flow)).toBeLessThan(1e-9);
    expect(heads[nodes[2]]).toBeCloseTo(0, 6);
  });

  it('in a ring that hangs on one node pass nothing', () => {
    const { builder, outlet } = line();
    const far = builder.node('far');
    const farther = builder.node('farther');
    builder.hose('ring 1', outlet, far, 24, 100);
    builder.hose('ring 2', far, farther, 24, 100);
    builder.hose('ring 3', farther, outlet, 24, 100);
    const { status, flows, heads } = new NetworkSolver(builder.network).solve();
    expect(status).toBe('solved');
    for (const flow of flows.slice(5)) expect(Math.abs(flow)).toBeLessThan(1e-8);
    expect(heads[farther]).toBeCloseTo(heads[outlet], 6);
  });

  it('hold the pump head before a shut check valve and the other head behind it', () => {
    const { builder, volute, middle } = line();
    builder.nodes[builder.nodes.findIndex(({ name }) => name === 'tank')].head = 2;
    const strong = builder.fixed('hydrant', 400);
    builder.hose('supply', strong, middle, 1, 50);
    const { heads, flows } = new NetworkSolver(builder.network).solve();
    expect(Math.abs(flows[0]) / GPM).toBeLessThan(1e-4);
    expect(heads[volute]).toBeCloseTo(2 + 200 * HEAD_PER_PSI, 4);
    expect(heads[builder.nodes.findIndex(({ name }) => name === 'outlet')]).toBeCloseTo(heads[middle], 4);
  });
});

describe('a draw set at a node within a chain', () => {
  it('gives what the same draw written into the network gives, with all else as it was set', () => {
    const drawn = line();
    const written = line();
    const solver = new NetworkSolver(drawn.builder.network);
    solver.solve();
    solver.setSpeed(drawn.pump, 0.9);
    solver.setHead(0, 3);
    solver.setResistance(2, 2e6);
    solver.setDemand(drawn.middle, 2e-3);
    const { nodes, links } = written.builder;
    nodes[0].head = 3;
    nodes[written.middle].demand = 2e-3;
    links[2].law = { kind: 'resistance', resistance: 2e6, linearBelow: 1e-6 };
    const fresh = new NetworkSolver(written.builder.network);
    fresh.setSpeed(written.pump, 0.9);
    const expected = fresh.solve();
    expect(expected.status).toBe('solved');
    for (const solution of [solver.solve(), solver.solve({ warm: true })]) {
      for (const [l, flow] of solution.flows.entries()) expect(flow).toBeCloseTo(expected.flows[l], 9);
      for (const [v, head] of solution.heads.entries()) expect(head).toBeCloseTo(expected.heads[v], 5);
    }
  });
});

describe('a draw that wanders down a lay', () => {
  it('is solved at every place, and joins the links anew a few times only', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 100);
    const nodes = Array.from({ length: 40 }, (_, index) => builder.node(`coupling ${index}`));
    nodes.forEach((node, index) => {
      builder.hose(`hose ${index}`, index === 0 ? tank : nodes[index - 1], node, 24, 100);
    });
    builder.nozzle('nozzle', nodes[39], 0.25);
    const solver = new NetworkSolver(builder.network);
    const alone = solver.solve();
    const layings = new Set<unknown>();
    for (const node of nodes) {
      solver.setDemand(node, 1e-3);
      const { status, flows, heads } = solver.solve({ warm: true });
      expect(status).toBe('solved');
      expect(flows[0]).toBeGreaterThan(alone.flows[0] + 1e-4);
      expect(worstEnergyResidual(builder.network, { heads, flows })).toBeLessThan(1e-5);
      solver.setDemand(node, 0);
      layings.add(Reflect.get(solver, 'equations'));
    }
    expect(layings.size).toBeLessThanOrEqual(4);
    expect(solver.solve().flows[0]).toBeCloseTo(alone.flows[0], 8);
  });
});

describe('a solution read value by value', () => {
  it('is the one that is read whole', () => {
    const { builder } = line();
    const solver = new NetworkSolver(builder.network);
    const whole = solver.solve();
    expect(solver.run()).toBeUndefined();
    expect(builder.links.map((_, link) => solver.flowOf(link))).toEqual(whole.flows);
    expect(builder.nodes.map((_, node) => solver.headOf(node))).toEqual(whole.heads);
  });
});
