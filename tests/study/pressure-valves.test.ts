import { describe, expect, test } from 'vitest';
import { ReliefLoss } from '../../src/assembly/relief.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import type { Network } from '../../src/network/network.js';
import { NetworkSolver } from '../../src/network/solver.js';
import { PSI } from '../../src/physics/customary.js';
import { pressureOfHeight } from '../../src/physics/elevation.js';
import { PowerCurve } from '../../src/physics/pump-curve/power.js';
import { governed } from '../../src/study/governor.js';
import { Rig } from '../../src/study/rig.js';
import { solveInput } from '../support/epanet-input.js';
import { CUBIC_FOOT, FOOT } from '../support/units.js';

/** EPANET's own psi of a foot of water, by which it turns a valve's setting back into feet. */
const PSI_PER_FOOT = 0.4333;
const MINOR = 0.02517;

/** A pump of 900 ft at no flow, 700 ft at 0.2 cfs and 300 ft at 0.35 cfs, from a surface at 3 ft into a manifold at 0. */
const POINTS = [
  [0, 900],
  [0.2, 700],
  [0.35, 300],
] as const;
const curve = new PowerCurve(POINTS.map(([q, h]) => ({ flow: q * CUBIC_FOOT, head: h * FOOT })));
const pumpLaw = {
  kind: 'curve' as const,
  speed: 1,
  curve: {
    evaluate(flow: number, out: { loss: number; slope: number }) {
      const at = { head: 0, slope: 0 };
      curve.evaluate(flow, at);
      out.loss = -at.head;
      out.slope = -at.slope;
    },
  },
};

function ours(relief: ReliefLoss, drawn: number) {
  const network: Network = {
    nodes: [
      { name: 'tank', elevation: 3 * FOOT, head: 3 * FOOT },
      { name: 'manifold', elevation: 0, demand: drawn * CUBIC_FOOT },
    ],
    links: [
      { name: 'pump', from: 0, to: 1, law: pumpLaw },
      { name: 'relief', from: 1, to: 0, law: { kind: 'curve', curve: relief }, oneWay: true },
    ],
  };
  const { flows, heads } = new NetworkSolver(network).solve();
  return { passes: flows[1] / CUBIC_FOOT, head: heads[1] / FOOT, pumped: flows[0] / CUBIC_FOOT };
}

const input = (drawn: number, valve: string, extra = '') => `
[JUNCTIONS]
M 0 ${drawn}
R 0 0
[RESERVOIRS]
T 3
[PIPES]
back R T 0.001 12 1000000 0 OPEN
[PUMPS]
pump T M HEAD C
[VALVES]
${valve}
[CURVES]
${POINTS.map(([q, h]) => `C ${q} ${h}`).join('\n')}
${extra}
[OPTIONS]
UNITS CFS
HEADLOSS H-W
ACCURACY 1e-5
TRIALS 500
[END]
`;

const feet = (psi: number) => psi / PSI_PER_FOOT;

describe('a relief valve against EPANET', () => {
  /** Lifts all at once, as a pressure-sustaining valve does, which holds the pressure before it. */
  const sharp = (set: number) =>
    new ReliefLoss(feet(set) * FOOT - 3 * FOOT, feet(set) * FOOT * (1 + 1e-9) - 3 * FOOT, 10);

  for (const drawn of [0, 0.05, 0.1, 0.15]) {
    test(`pressure-sustaining valve at 330 psi with ${drawn} cfs drawn: the same flow back to the tank`, async () => {
      const { passes, head } = ours(sharp(330), drawn);
      const psv = await solveInput(input(drawn, 'V M R 12 PSV 330 0'), ['M'], ['V']);
      expect(passes).toBeGreaterThan(0.01);
      expect(passes).toBeCloseTo(psv.flows[0], 4);
      expect(head).toBeCloseTo(psv.heads[0], 1);
    });
  }

  test('shut where the pressure is below its setting, as the pressure-sustaining valve is', async () => {
    const { passes, head } = ours(sharp(380), 0.12);
    const psv = await solveInput(input(0.12, 'V M R 12 PSV 380 0'), ['M'], ['V']);
    expect(Math.abs(passes)).toBeLessThan(1e-6);
    expect(Math.abs(psv.flows[0])).toBeLessThan(1e-5);
    expect(head).toBeCloseTo(psv.heads[0], 1);
  });

  test('pressure-breaker valve: the same where it is open, a fixed loss to the tank', async () => {
    const { passes, head } = ours(sharp(330), 0.1);
    const lost = (feet(330) - 3) * PSI_PER_FOOT;
    const pbv = await solveInput(input(0.1, `V M R 12 PBV ${lost} 0`), ['M'], ['V']);
    expect(passes).toBeCloseTo(pbv.flows[0], 4);
    expect(head).toBeCloseTo(pbv.heads[0], 1);
  });

  for (const drawn of [0, 0.1]) {
    test(`general-purpose valve with the lift's own characteristic, ${drawn} cfs drawn`, async () => {
      const set = feet(330);
      const lift = new ReliefLoss((set - 3) * FOOT, (set * 1.1 - 3) * FOOT, 0.25 * CUBIC_FOOT);
      const { passes, head } = ours(lift, drawn);
      const points = `L 0 ${set - 3}\nL 0.25 ${set * 1.1 - 3}`;
      const gpv = await solveInput(input(drawn, 'V M R 12 GPV L 0', points), ['M'], ['V']);
      expect(passes).toBeGreaterThan(0.01);
      expect(passes).toBeCloseTo(gpv.flows[0], 4);
      expect(head).toBeCloseTo(gpv.heads[0], 1);
    });
  }

  test('is an orifice once it is fully lifted, and its law has no step there', () => {
    const lift = new ReliefLoss(200, 220, 0.005);
    const at = { loss: 0, slope: 0 };
    lift.evaluate(0.01, at);
    expect(at.loss).toBeCloseTo(4 * 220, 9);
    lift.evaluate(0.005 + 1e-12, at);
    expect(at.loss).toBeCloseTo(220, 6);
  });
});

describe('a governor in discharge-pressure mode against EPANET', () => {
  const layout = (throttle: string) => `
engine:
  tank: {capacity: 500 gal, outlet_height: 0 ft}
  pumps:
    a: {model: {points: [[0 gpm, 400 psi], [90 gpm, 300 psi], [150 gpm, 120 psi]], rated_speed: 3600 rpm}}
staging: a
throttle: ${throttle}
lay:
  - hose: {inside_diameter: 1.5 in, coefficient: 24}
    length: 300 ft
  - nozzle: {kind: smooth_bore, bore: 1/2 in, discharge_coefficient: 0.97}
`;
  const solve = async (throttle: string) => {
    const rig = await Rig.of(readLayoutText(layout(throttle), 'layout.yaml').layout);
    const point = governed(rig, 'a');
    const [pump] = point.assembly.pumps;
    return { point, pump, flow: point.flow(pump.link), pressure: point.gaugePressure(pump.discharge) };
  };

  for (const held of [120, 180, 240]) {
    test(`${held} psi: the flow of a pump at full speed behind a pressure-reducing valve of that setting`, async () => {
      const { point, pump, flow, pressure } = await solve(`{discharge_pressure: ${held} psi}`);
      expect(pressure / PSI).toBeCloseTo(held, 2);
      const { network, site } = point.assembly;
      const resistance = network.links.reduce(
        (sum, { law }) => sum + (law.kind === 'resistance' ? law.resistance : 0),
        0,
      );
      const k = ((resistance * CUBIC_FOOT ** 2) / FOOT / MINOR) * (1.5 / 12) ** 4;
      const metresOfPsi = PSI / pressureOfHeight(1, site.waterDensity);
      const points = [0, 90, 150].map((gpm) => {
        const q = (gpm * 231 * 0.0254 ** 3) / 60;
        const at = { loss: 0, slope: 0 };
        const { law } = network.links[pump.link];
        if (law.kind === 'curve') law.curve.evaluate(q, at);
        return `C ${q / CUBIC_FOOT} ${-at.loss / FOOT}`;
      });
      const text = `
[JUNCTIONS]
D 0 0
M 0 0
[RESERVOIRS]
T 0
air 0
[PIPES]
lay M air 1e-6 1.5 1000000 ${k} OPEN
[PUMPS]
pump T D HEAD C
[VALVES]
V D M 12 PRV ${((held * metresOfPsi) / FOOT) * PSI_PER_FOOT} 0
[CURVES]
${points.join('\n')}
[OPTIONS]
UNITS CFS
HEADLOSS H-W
ACCURACY 1e-5
[END]
`;
      const prv = await solveInput(text, ['M'], ['lay']);
      expect(flow / CUBIC_FOOT).toBeCloseTo(prv.flows[0], 4);
      expect(prv.heads[0] * FOOT).toBeCloseTo(held * metresOfPsi, 2);
      // The same throttle set by hand: EPANET's pump at the speed that ours was turned down to.
      const slowed = text
        .replace('HEAD C', `HEAD C SPEED ${pump.speed}`)
        .replace(/V D M.*/, 'V D M 12 TCV 0 0');
      const byHand = await solveInput(slowed, ['M'], ['lay']);
      expect(byHand.flows[0]).toBeCloseTo(flow / CUBIC_FOOT, 4);
    });
  }

  test('a pressure that full speed does not reach is not held, and the pump runs at full speed', async () => {
    const { pump, pressure } = await solve('{discharge_pressure: 395 psi}');
    expect(pump.speed).toBe(1);
    expect(pressure / PSI).toBeLessThan(395);
  });
});
