import { describe, expect, it } from 'vitest';
import type { StagingName } from '../../src/assembly/assembly.js';
import {
  columnPressure,
  type Document,
  engineOf,
  FREE_CHECK,
  orificeFlow,
  parabola,
  parabolic,
  solve,
} from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

const A = parabolic(400, 75, 250);
const B = parabolic(380, 75, 250);
const tip = (bore: string): Document => ({
  nozzle: { kind: 'smooth_bore', bore, discharge_coefficient: 1 },
  name: 'tip',
});
const costs = (psi: number): Document => ({ appliance: { loss: `${psi} psi` } });

/** Every part of the plumbing costs another figure, so that a sum tells which were passed. */
const PLUMBING = {
  intake: [costs(1)],
  suction: { a: [costs(2)], b: [costs(4)] },
  discharge: { a: [costs(8)], b: [costs(16)] },
  transfer: [costs(32)],
  manifold: [costs(64), { gauge: 'panel' }],
};

/** psi at the tip and gpm through it. */
async function atTip(staging: StagingName, more: Document = {}) {
  const engine = engineOf(A, B, { plumbing: PLUMBING, ...more });
  const solved = await solve({ engine, staging, lay: [tip('0.4 in')] });
  const pressure = solved.point.totalPressure(solved.nozzle('tip').inlet) / PSI;
  return { ...solved, pressure, flow: solved.gpm('tip') };
}

describe('one pump alone', () => {
  it('a: intake, suction a, discharge a, manifold', async () => {
    const { pressure, flow, point } = await atTip('a');
    expect(pressure).toBeCloseTo(parabola(400, 75, 250, flow) - 1 - 2 - 8 - 64, 3);
    expect(point.assembly.pumps.map(({ name }) => name)).toEqual(['pump a']);
  });

  it('b: intake, suction b, discharge b, manifold', async () => {
    const { pressure, flow } = await atTip('b');
    expect(pressure).toBeCloseTo(parabola(380, 75, 250, flow) - 1 - 4 - 16 - 64, 3);
  });

  it('an engine with one pump works by itself', async () => {
    const solved = await solve({ engine: engineOf(A), lay: [tip('0.4 in')] });
    const flow = solved.gpm('tip');
    expect(solved.point.assembly.staging).toBe('a');
    expect(flow).toBeCloseTo(orificeFlow(0.4, parabola(400, 75, 250, flow)), 3);
  });
});

describe('series', () => {
  it('adds both heads, by suction a, transfer, discharge b', async () => {
    const { pressure, flow, gpm } = await atTip('series');
    const heads = parabola(400, 75, 250, flow) + parabola(380, 75, 250, flow);
    expect(pressure).toBeCloseTo(heads - 1 - 2 - 32 - 16 - 64, 3);
    expect(gpm('pump a')).toBeCloseTo(flow, 5);
    expect(gpm('pump b')).toBeCloseTo(flow, 5);
  });

  it('reversed goes by suction b, transfer, discharge a', async () => {
    const { pressure, flow, point, pump } = await atTip('series_reversed');
    const heads = parabola(400, 75, 250, flow) + parabola(380, 75, 250, flow);
    expect(pressure).toBeCloseTo(heads - 1 - 4 - 32 - 8 - 64, 3);
    const between = point.totalPressure(pump('pump a').inlet) / PSI;
    expect(between).toBeCloseTo(parabola(380, 75, 250, flow) - 1 - 4 - 32, 3);
  });

  it('the second pump stands at the sum of both shutoffs when nothing flows', async () => {
    const { point, pump } = await solve({ engine: engineOf(A, B), staging: 'series', lay: [{ cap: true }] });
    expect(point.totalPressure(pump('pump b').inlet) / PSI).toBeCloseTo(400, 3);
    expect(point.totalPressure(pump('pump b').discharge) / PSI).toBeCloseTo(780, 3);
  });
});

describe('parallel', () => {
  it('both ways lose the same between the intake and the manifold, and the flows add', async () => {
    const { flow, gpm, gauge, pressure } = await atTip('parallel');
    const [a, b] = [gpm('pump a'), gpm('pump b')];
    expect(a + b).toBeCloseTo(flow, 5);
    expect(a).toBeGreaterThan(b);
    expect(pressure).toBeCloseTo(parabola(400, 75, 250, a) - 1 - 2 - 8 - 64, 3);
    expect(pressure).toBeCloseTo(parabola(380, 75, 250, b) - 1 - 4 - 16 - 64, 3);
    expect(gauge('panel')).toBeCloseTo(pressure, 6);
  });

  it('the weaker pump is shut out by its check valve, and the other carries on by itself', async () => {
    const weak = parabolic(200, 75, 100);
    const engine = engineOf(A, weak, { plumbing: { discharge: [FREE_CHECK] } });
    const both = await solve({ engine, staging: 'parallel', lay: [tip('0.4 in')] });
    const alone = await solve({ engine, staging: 'a', lay: [tip('0.4 in')] });
    expect(both.gpm('pump b')).toBeCloseTo(0, 4);
    expect(both.gpm('tip')).toBeCloseTo(alone.gpm('tip'), 4);
    expect(both.point.totalPressure(both.pump('pump b').discharge) / PSI).toBeCloseTo(200, 3);
  });

  it('each pump knows its own check valve', async () => {
    const discharge = { a: [FREE_CHECK], b: [costs(1), FREE_CHECK] };
    const { pump } = await solve({
      engine: engineOf(A, B, { plumbing: { discharge } }),
      lay: [tip('0.4 in')],
    });
    expect(pump('pump a').checkValve?.name).toBe('check valve 1 of discharge a');
    expect(pump('pump b').checkValve?.name).toBe('check valve 1 of discharge b');
  });

  it('a booster on a branch of the discharge is not taken for the pump', async () => {
    const line = [{ pump: parabolic(100, 20, 50), name: 'little one' }, tip('1/8 in')];
    const branch = { branch: { loss: '0 psi' }, to: [{ name: 'washdown', steps: line }] };
    const discharge = { a: [branch, FREE_CHECK], b: [FREE_CHECK] };
    const { pump } = await solve({
      engine: engineOf(A, B, { plumbing: { discharge } }),
      lay: [{ cap: true }],
    });
    expect(pump('pump a').checkValve?.name).toBe('check valve 1 of discharge a');
    expect(pump('little one').checkValve).toBeUndefined();
  });

  it('a shut valve in one discharge leaves the other pump alone', async () => {
    const valve = { valve: { k: 0.2, inside_diameter: '2 in' }, open: '0 %' };
    const engine = engineOf(A, B, { plumbing: { discharge: { a: [FREE_CHECK], b: [valve, FREE_CHECK] } } });
    const both = await solve({ engine, staging: 'parallel', lay: [tip('0.4 in')] });
    const alone = await solve({ engine, staging: 'a', lay: [tip('0.4 in')] });
    expect(both.gpm('tip')).toBeCloseTo(alone.gpm('tip'), 4);
    expect(both.gpm('pump b')).toBeCloseTo(0, 4);
  });
});

describe('separate', () => {
  it('each pump feeds its own outlet, past no manifold', async () => {
    const outlets = { left: { pump: 'a', steps: [costs(3)] }, right: { pump: 'b', steps: [costs(5)] } };
    const engine = engineOf(A, B, { plumbing: PLUMBING, outlets });
    const lay = {
      left: [{ ...tip('0.3 in'), name: 'one' }],
      right: [{ ...tip('0.4 in'), name: 'other' }],
    };
    const { point, nozzle, gpm } = await solve({ engine, staging: 'separate', lay });
    const one = point.totalPressure(nozzle('one').inlet) / PSI;
    const other = point.totalPressure(nozzle('other').inlet) / PSI;
    // They share the intake, whose allowance is paid once by each.
    expect(one).toBeCloseTo(parabola(400, 75, 250, gpm('one')) - 1 - 2 - 8 - 3, 3);
    expect(other).toBeCloseTo(parabola(380, 75, 250, gpm('other')) - 1 - 4 - 16 - 5, 3);
  });

  it('two outlets of one pump share it', async () => {
    const outlets = { left: { pump: 'a' }, low: { pump: 'a' }, right: { pump: 'b' } };
    const lay = {
      left: [{ ...tip('0.3 in'), name: 'one' }],
      low: [{ ...tip('0.2 in'), name: 'two' }],
    };
    const { gpm } = await solve({ engine: engineOf(A, B, { outlets }), staging: 'separate', lay });
    expect(gpm('pump a')).toBeCloseTo(gpm('one') + gpm('two'), 5);
    expect(gpm('one') / gpm('two')).toBeCloseTo((0.3 / 0.2) ** 2, 4);
    expect(gpm('pump b')).toBeCloseTo(0, 5);
  });
});

describe('several outlets', () => {
  it('stand on one manifold, each with its own plumbing', async () => {
    const outlets = { left: [costs(10)], right: [costs(30)] };
    const lay = {
      left: [{ ...tip('0.3 in'), name: 'one' }],
      right: [{ ...tip('0.3 in'), name: 'other' }],
    };
    const { point, nozzle, gpm } = await solve({ engine: engineOf(A, A, { outlets }), lay });
    const one = point.totalPressure(nozzle('one').inlet) / PSI;
    const other = point.totalPressure(nozzle('other').inlet) / PSI;
    expect(one - other).toBeCloseTo(20, 4);
    const each = (gpm('one') + gpm('other')) / 2;
    expect(one).toBeCloseTo(parabola(400, 75, 250, each) - 10, 3);
  });

  it('one without a lay is shut', async () => {
    const engine = engineOf(A, A, { outlets: { left: [], right: [] } });
    const { gpm } = await solve({ engine, lay: { right: [tip('0.4 in')] } });
    expect(gpm('pump a') + gpm('pump b')).toBeCloseTo(gpm('tip'), 5);
  });
});

describe('throttle', () => {
  it('turns a pump down by the affinity laws: P = s^2 P(q / s)', async () => {
    const { point, gpm, pump } = await solve({ engine: engineOf(A), throttle: '80 %', lay: [tip('0.4 in')] });
    const flow = gpm('tip');
    const made = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(made).toBeCloseTo(0.64 * parabola(400, 75, 250, flow / 0.8), 3);
  });

  it('of each pump is its own', async () => {
    const document = { engine: engineOf(A, A), throttle: { a: '100 %', b: '90 %' }, lay: [tip('0.6 in')] };
    const { point, gpm, pump } = await solve(document);
    const header = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(header).toBeCloseTo(parabola(400, 75, 250, gpm('pump a')), 3);
    expect(header).toBeCloseTo(0.81 * parabola(400, 75, 250, gpm('pump b') / 0.9), 3);
  });

  it('wear takes a part of the head off at every flow', async () => {
    const engine = { tank: { capacity: '500 gal' }, pumps: { a: { model: A, wear: '8 %' } } };
    const { point, gpm, pump } = await solve({ engine, lay: [tip('0.4 in')] });
    const made = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(made).toBeCloseTo(0.92 * parabola(400, 75, 250, gpm('tip')), 3);
  });
});

describe('the cooling line', () => {
  const cooling = { orifice: '1/8 in' };

  it('passes 29.9 x 0.62 d^2 sqrt(P) from each pump back to the tank', async () => {
    const engine = engineOf(A, undefined, { plumbing: { cooling } });
    const { gpm, point, pump } = await solve({ engine, lay: [{ cap: true }] });
    const pressure = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(gpm('cooling line a')).toBeCloseTo(29.9 * 0.62 * (1 / 64) * Math.sqrt(pressure), 2);
    expect(gpm('pump a')).toBeCloseTo(gpm('cooling line a'), 5);
  });

  it('takes a coefficient of its own', async () => {
    const engine = engineOf(A, undefined, {
      plumbing: { cooling: { ...cooling, discharge_coefficient: 0.9 } },
    });
    const { gpm, point, pump } = await solve({ engine, lay: [{ cap: true }] });
    const pressure = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(gpm('cooling line a')).toBeCloseTo(29.84 * 0.9 * (1 / 64) * Math.sqrt(pressure), 2);
  });

  it('stands before the check valve, so that a pump shut out still moves water', async () => {
    const engine = engineOf(A, parabolic(200, 75, 100), { plumbing: { discharge: [FREE_CHECK], cooling } });
    const { gpm } = await solve({ engine, lay: [tip('0.4 in')] });
    expect(gpm('check valve 1 of discharge b')).toBeCloseTo(0, 4);
    expect(gpm('pump b')).toBeGreaterThan(3);
  });

  it('runs into the tank, which is open, also where the water comes from a relay', async () => {
    const engine = engineOf(A, undefined, { plumbing: { cooling } });
    const supply = { relay: { pressure: '60 psi' } };
    const { gpm, point, pump } = await solve({ engine, supply, lay: [{ cap: true }] });
    const pressure = point.totalPressure(pump('pump a').discharge) / PSI;
    expect(pressure).toBeGreaterThan(450);
    expect(gpm('cooling line a')).toBeCloseTo(orificeFlow(1 / 8, pressure, (0.62 * 29.9) / 29.84), 3);
  });
});

describe('a relief valve for each pump', () => {
  const relief = { opens_at: '300 psi', at: 'pump' };
  const outlets = { left: { pump: 'a' }, right: { pump: 'b' } };
  const lay = { left: [{ cap: true }], right: [{ cap: true }] };

  it('is laid with separate outlets, and holds each pump by itself', async () => {
    const { gpm, pump, point } = await solve({
      engine: engineOf(A, B, { relief, outlets }),
      staging: 'separate',
      lay,
    });
    for (const name of ['a', 'b']) {
      const back = gpm(`relief valve ${name}`);
      expect(back).toBeGreaterThan(10);
      // 300 psi when it starts to open, a tenth more when it passes 100 gpm.
      const discharge = point.totalPressure(pump(`pump ${name}`).discharge) / PSI;
      expect(discharge).toBeCloseTo(300 + (30 * back) / 100, 1);
    }
  });

  it('acts between the pumps in series as well as behind them', async () => {
    const engine = engineOf(A, B, { relief });
    const { pump, point, gpm } = await solve({ engine, staging: 'series', lay: [{ cap: true }] });
    const [first, second] = ['a', 'b'].map((name) => gpm(`relief valve ${name}`));
    expect(second).toBeGreaterThan(10);
    // What the first pump moves goes through its own valve or on to the second, and through that one's.
    expect(point.flow(pump('pump a').link) / GPM).toBeCloseTo(first + second, 3);
    expect(point.totalPressure(pump('pump b').discharge) / PSI).toBeCloseTo(300 + (30 * second) / 100, 1);
  });

  it('in parallel opens for the pump that stands above it, and not for the other behind its check valve', async () => {
    const engine = engineOf(A, B, {
      relief: { ...relief, opens_at: '390 psi' },
      plumbing: { discharge: [FREE_CHECK] },
    });
    const { gpm } = await solve({ engine, staging: 'parallel', lay: [{ cap: true }] });
    expect(gpm('relief valve a')).toBeGreaterThan(1);
    expect(gpm('relief valve b')).toBeCloseTo(0, 3);
  });

  it('one where the discharges meet is not laid where they do not', async () => {
    const engine = engineOf(A, B, { relief: { opens_at: '300 psi' }, outlets });
    const { point } = await solve({ engine, staging: 'separate', lay });
    expect(point.assembly.reliefs).toEqual([]);
  });
});

describe('the relief valve', () => {
  const relieved = (psi: number) =>
    engineOf(A, undefined, {
      relief: { opens_at: `${psi} psi` },
      plumbing: { manifold: [{ gauge: 'panel' }] },
    });

  it('stays shut below its setting', async () => {
    const { gpm, gauge } = await solve({ engine: relieved(410), lay: [{ cap: true }] });
    expect(gpm('relief valve')).toBeCloseTo(0, 4);
    expect(gauge('panel')).toBeCloseTo(400, 3);
  });

  it('opens at its setting and passes water back, within a tenth over it up to 100 gpm', async () => {
    const { gpm, gauge } = await solve({ engine: relieved(300), lay: [{ cap: true }] });
    const back = gpm('relief valve');
    expect(back).toBeGreaterThan(10);
    expect(gpm('pump a')).toBeCloseTo(back, 5);
    expect(gauge('panel')).toBeCloseTo(300 * (1 + (0.1 * back) / 100), 3);
    expect(gauge('panel')).toBeCloseTo(parabola(400, 75, 250, back), 3);
  });

  for (const [name, supply] of [
    ['a relay', { relay: { pressure: '60 psi' } }],
    ['a hydrant', { hydrant: { static: '60 psi', residual: '50 psi', flow: '500 gpm' } }],
    ['draft', { draft: { lift: '10 ft' } }],
  ] as const) {
    it(`opens at what the panel reads when the water comes from ${name}`, async () => {
      const { gpm, gauge } = await solve({ engine: relieved(380), supply, lay: [{ cap: true }] });
      const back = gpm('relief valve');
      expect(back).toBeGreaterThan(1);
      expect(gauge('panel')).toBeCloseTo(380 * (1 + (0.1 * back) / 100), 2);
    });
  }

  it('is set on the gauge at the manifold, however high the tank stands', async () => {
    const engine = { ...relieved(300), tank: { capacity: '500 gal', outlet_height: '4 ft' } };
    const { gpm, gauge } = await solve({ engine, lay: [{ cap: true }] });
    expect(gauge('panel')).toBeCloseTo(300 * (1 + (0.1 * gpm('relief valve')) / 100), 1);
  });
});

describe('the tank', () => {
  it('presses on the inlets with the height of its water', async () => {
    const engine = { ...engineOf(A), tank: { capacity: '500 gal', outlet_height: '3 ft' } };
    const { point, pump } = await solve({ engine, lay: [{ gauge: 'g' }, { cap: true }] });
    expect(point.gaugePressure(pump('pump a').inlet) / PSI).toBeCloseTo(columnPressure(3), 3);
  });
});
