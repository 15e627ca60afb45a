import { describe, expect, it } from 'vitest';
import type { LinkLaw } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { DarcyWeisbachLoss } from '../../src/physics/darcy-weisbach.js';
import { colebrook } from '../../src/physics/friction-factor.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { PowerPumpCurve } from '../support/pump-curves.js';
import { CUBIC_FOOT, FOOT } from '../support/units.js';

const CITATION = 'Hydraulics and Water Resources, open university text (EdM44/hydr-watres-book)';
const GPM_PER_CFS = 448.831;

describe(`${CITATION}, ch. 7: a pump between two reservoirs, 30 ft of lift`, () => {
  // The points that the text fits by least squares to H = a + c Q^2, gpm and ft.
  const points = [
    [0, 81],
    [5000, 60],
    [7850, 20],
  ].map(([gpm, feet]) => ({ square: (gpm / GPM_PER_CFS) ** 2, feet }));
  const mean = (pick: (point: { square: number; feet: number }) => number) =>
    points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const squares = mean((point) => point.square);
  const heads = mean((point) => point.feet);
  const fall =
    -mean((point) => (point.square - squares) * (point.feet - heads)) /
    mean((point) => (point.square - squares) ** 2);
  const shutoff = heads + fall * squares;

  it('the fitted curve is H = 82.5 - 0.201 Q^2, printed to 0.1 and 0.001', () => {
    expect(Math.abs(shutoff - 82.5)).toBeLessThan(0.05);
    expect(Math.abs(fall - 0.201)).toBeLessThan(0.0005);
  });

  // K 0.160 is printed to three figures: half of its last figure moves the flow by 0.0084 cfs and the head by 0.034 ft.
  it('the system of K 0.160 crosses it at 12.051 cfs and 53.285 ft, as far as K is printed', () => {
    const builder = new NetworkBuilder();
    const low = builder.fixed('low reservoir', 0);
    const volute = builder.node('volute');
    const high = builder.fixed('high reservoir', 30 * FOOT);
    const toSi = FOOT / CUBIC_FOOT ** 2;
    const pump = builder.pump('pump', low, volute, new PowerPumpCurve(shutoff * FOOT, fall * toSi, 2));
    builder.resistance('pipe', volute, high, 0.16 * toSi);
    const solution = new NetworkSolver(builder.network).solve();
    expect(Math.abs(solution.flows[pump] / CUBIC_FOOT - 12.051)).toBeLessThan(0.0005 + 0.0084);
    expect(Math.abs(solution.heads[volute] / FOOT - 53.285)).toBeLessThan(0.0005 + 0.034);
  });
});

describe(`${CITATION}, ch. 4: parallel pipes of 0.2 m x 400 m and 0.3 m x 600 m, roughness 0.025 mm, 0.5 m3/s at 100 degC`, () => {
  // Kinematic viscosity of water at 100 degC, from memory.
  const viscosity = 0.294e-6;
  const pipes = [
    { bore: 0.2, length: 400 },
    { bore: 0.3, length: 600 },
  ].map((pipe) => ({ ...pipe, roughness: 0.025e-3, viscosity }));
  const builder = new NetworkBuilder();
  const start = builder.node('start');
  const end = builder.fixed('end', 0);
  builder.nodes[start].demand = -0.5;
  for (const pipe of pipes) {
    const law: LinkLaw = { kind: 'curve', curve: new DarcyWeisbachLoss(pipe) };
    builder.link(`${pipe.bore} m`, start, end, law);
  }
  const { heads, flows } = new NetworkSolver(builder.network).solve();
  const velocity = flows.map((flow, index) => flow / ((Math.PI / 4) * pipes[index].bore ** 2));
  const friction = velocity.map((speed, index) =>
    colebrook((speed * pipes[index].bore) / viscosity, pipes[index].roughness / pipes[index].bore),
  );

  it('flows 0.15 and 0.35 m3/s, printed to 0.01', () => {
    expect(Math.abs(flows[0] - 0.15)).toBeLessThan(0.005);
    expect(Math.abs(flows[1] - 0.35)).toBeLessThan(0.005);
  });
  it('velocities 4.8 and 5.0 m/s, printed to 0.1', () => {
    expect(Math.abs(velocity[0] - 4.8)).toBeLessThan(0.05);
    expect(Math.abs(velocity[1] - 5.0)).toBeLessThan(0.05);
  });
  it('friction factors 0.013 and 0.012, printed to 0.001', () => {
    expect(Math.abs(friction[0] - 0.013)).toBeLessThan(0.0005);
    expect(Math.abs(friction[1] - 0.012)).toBeLessThan(0.0005);
  });
  it('head loss 30.0 m, printed to 0.1', () => {
    expect(Math.abs(heads[start] - 30.0)).toBeLessThan(0.05);
  });
});
