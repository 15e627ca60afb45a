import { describe, expect, it } from 'vitest';
import type { LinkLaw, LossAtFlow } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { NetworkBuilder } from '../support/network-builder.js';
import { CubicPumpCurve, PowerPumpCurve } from '../support/pump-curves.js';
import { FOOT, GPM, HEAD_PER_PSI } from '../support/units.js';

const PSI_AT_HUNDRED_GPM = HEAD_PER_PSI / (100 * GPM) ** 2;

describe('a pump that is itself one-way', () => {
  function twoPumps(shutoffB: number) {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 0);
    const manifold = builder.node('manifold');
    const a = builder.pump('a', tank, manifold, new PowerPumpCurve(200 * HEAD_PER_PSI, 1e6, 2), 1, {
      oneWay: true,
    });
    const b = builder.pump('b', tank, manifold, new PowerPumpCurve(shutoffB * HEAD_PER_PSI, 1e6, 2), 1, {
      oneWay: true,
    });
    builder.nozzle('nozzle', manifold, 0.5);
    return { solution: new NetworkSolver(builder.network).solve(), a, b, manifold };
  }

  it('shares the flow with its equal, its head counted while it is shut as well', () => {
    const { solution, a, b } = twoPumps(200);
    expect(solution.status).toBe('solved');
    expect(solution.flows[a] / GPM).toBeGreaterThan(10);
    expect(Math.abs(solution.flows[a] - solution.flows[b]) / GPM).toBeLessThan(1e-4);
  });

  it('passes nothing when the manifold stands above its shutoff', () => {
    const { solution, a, b, manifold } = twoPumps(60);
    expect(solution.flows[a] / GPM).toBeGreaterThan(10);
    expect(Math.abs(solution.flows[b]) / GPM).toBeLessThan(1e-4);
    expect(solution.heads[manifold] / HEAD_PER_PSI).toBeGreaterThan(60);
  });

  it('makes its shutoff head when nothing flows', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 1);
    const volute = builder.node('volute');
    const manifold = builder.node('manifold');
    builder.pump('pump', tank, volute, new PowerPumpCurve(89, 1e5, 1.8), 0.9, { oneWay: true });
    builder.resistance('discharge', volute, manifold, 3e4);
    const { heads } = new NetworkSolver(builder.network).solve();
    expect(heads[volute]).toBeCloseTo(1 + 89 * 0.81, 4);
    expect(heads[manifold]).toBeCloseTo(1 + 89 * 0.81, 4);
  });

  it('makes its shutoff head behind the check valve that a stronger pump holds shut', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 1);
    const manifold = builder.node('manifold');
    const volute = builder.node('b volute');
    builder.pump('a', tank, manifold, new PowerPumpCurve(207, 553779, 1.82));
    builder.pump('b', tank, volute, new PowerPumpCurve(160, 553779, 1.82), 1, { oneWay: true });
    builder.resistance('b check', volute, manifold, 107682, { oneWay: true });
    const { heads } = new NetworkSolver(builder.network).solve();
    expect(heads[manifold]).toBeCloseTo(208, 4);
    expect(heads[volute]).toBeGreaterThan(160.9);
    expect(heads[volute]).toBeLessThan(208.1);
  });
});

describe('a dead line behind a one-way link', () => {
  // Water that cannot move: rounding alone decides which way it seems to go. Figures in full, as it hangs on them.
  it('does not keep the rest from converging', () => {
    const builder = new NetworkBuilder();
    const volute = 1;
    const point = 2;
    builder.fixed('tank', 1.798238154338859);
    builder.node('volute');
    builder.node('point', 12.335158083647492);
    builder.node('behind the one-way hose', 10.153067904353142);
    builder.node('capped end', 15.653519527452998);
    builder.node('booster volute');
    builder.node('low point', -12.42683146260213);
    builder.node('behind check 65', 29.452731796234847);
    const behind91 = builder.node('behind check 91', 1.2738056165333855);
    const capped = builder.node('capped end 2', 3.9799612798914334);
    const end97 = builder.node('end of line 97', 3.6888715782556694);
    const curve = new PowerPumpCurve(200.82372049947352, 190399550.0050569, 2.6466085124760865);
    builder.pump('pump', 0, volute, curve, 0.7014983136672527);
    const hoseLaw = (resistance: number): LinkLaw => ({
      kind: 'power',
      resistance,
      exponent: 1.852,
      minor: 0,
      linearBelow: 1e-6,
    });
    const air = (height: number) => builder.fixed('air', height);
    builder.link('hose 18', volute, point, hoseLaw(2171336.548757439));
    builder.link('one-way hose', point, 3, hoseLaw(602582.6395177545), { oneWay: true });
    builder.resistance('capped hose', 3, 4, 424346.18497886584);
    builder.resistance('nozzle 2', point, air(35.7340825023735), 51314030.387389444);
    const booster = new CubicPumpCurve(244.56921519833512, 2827.998343612646, 32938418.8455587);
    builder.pump('booster', volute, 5, booster, 0.557868324581068);
    builder.resistance('nozzle 5', 6, air(-12.42683146260213), 200445.43120074001);
    builder.resistance('nozzle 6', 5, air(0.09969567349366848), 10136104.767879399);
    builder.resistance('check 65', volute, 7, 120641.02022378339, { oneWay: true });
    builder.resistance('nozzle 7', 7, air(25.778832671457902), 162177676.28607038);
    builder.resistance('nozzle 10', volute, air(5.003677468213254), 51314030.387389444, { oneWay: true });
    builder.resistance('check 91', volute, behind91, 63947.52396952873, { oneWay: true });
    builder.link('hose 92', behind91, capped, hoseLaw(71098.2337284905));
    builder.resistance('line 97', volute, end97, 104784.78100577115);
    builder.resistance('nozzle 12', volute, air(12.810038690915334), 3207126.8992118402, { oneWay: true });
    builder.resistance('hose 104', 6, point, 274056.9111321842);
    const solution = new NetworkSolver(builder.network).solve();
    expect(solution.failure).toBeUndefined();
    expect(solution.iterations).toBeLessThan(30);
  });

  it('stands at the head before the check valve, or above it, never below', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 0);
    const volute = builder.node('volute');
    const behind = builder.node('behind the check valve');
    const end = builder.node('capped end', 20 * FOOT);
    builder.pump('pump', tank, volute, new PowerPumpCurve(200 * HEAD_PER_PSI, 1e6, 2));
    builder.nozzle('nozzle', volute, 0.5);
    builder.resistance('check valve', volute, behind, 2 * PSI_AT_HUNDRED_GPM, { oneWay: true });
    builder.hose('capped hose', behind, end, 24, 100);
    const { heads, flows } = new NetworkSolver(builder.network).solve();
    expect(Math.abs(flows[3]) / GPM).toBeLessThan(1e-4);
    const above = (heads[end] - heads[volute]) / HEAD_PER_PSI;
    expect(above).toBeGreaterThan(-0.01);
    expect(above).toBeLessThan(0.01);
  });

  it('stands at the head before the check valve though a valve that a spring holds shut leads off it', () => {
    const builder = new NetworkBuilder();
    const tank = builder.fixed('tank', 2);
    const volute = builder.node('volute');
    const header = builder.node('header');
    const end = builder.node('capped end');
    const air = builder.fixed('air', 0);
    builder.pump('pump', tank, volute, new PowerPumpCurve(200 * HEAD_PER_PSI, 1e6, 2));
    // The cooling line keeps the pump from standing at its shutoff, so that no rounding opens the check valve.
    builder.nozzle('cooling line', volute, 0.125);
    builder.resistance('check valve', volute, header, 2 * PSI_AT_HUNDRED_GPM, { oneWay: true });
    builder.hose('capped hose', header, end, 24, 100);
    const spring = {
      evaluate: (flow: number, out: LossAtFlow) => {
        out.loss = 300 * HEAD_PER_PSI + 1000 * flow;
        out.slope = 1000;
      },
    };
    const relief = builder.link(
      'relief valve',
      header,
      air,
      { kind: 'curve', curve: spring },
      { oneWay: true },
    );
    const { heads, flows, status } = new NetworkSolver(builder.network).solve();
    expect(status).toBe('solved');
    expect(Math.abs(flows[relief]) / GPM).toBeLessThan(1e-4);
    expect(heads[volute] / HEAD_PER_PSI).toBeGreaterThan(190);
    expect((heads[header] - heads[volute]) / HEAD_PER_PSI).toBeGreaterThan(-0.02);
    expect((heads[header] - heads[volute]) / HEAD_PER_PSI).toBeLessThan(0.02);
    expect(heads[end]).toBeCloseTo(heads[header], 6);
  });
});
