import { describe, expect, it } from 'vitest';
import {
  coefficientLoss,
  columnPressure,
  type Document,
  engineOf,
  parabola,
  parabolic,
  solve,
} from '../support/layouts.js';
import { PSI } from '../support/units.js';

const ENGINE = engineOf(parabolic(400, 75, 250));
const hose = (feet: number, more: Document = {}): Document => ({
  hose: { inside_diameter: '1.5 in', coefficient: 24 },
  length: `${feet} ft`,
  ...more,
});
const thin = (feet: number, more: Document = {}): Document => ({
  hose: { inside_diameter: '1 in', coefficient: 150 },
  length: `${feet} ft`,
  ...more,
});
const tip = (name: string, bore = '1/4 in'): Document => ({
  nozzle: { kind: 'smooth_bore', bore, discharge_coefficient: 1 },
  name,
});
const WYE = { loss: '5 psi' };

describe('a siamese', () => {
  it('of unlike lines: both lose the same, and the flows add', async () => {
    const { point, gpm, loss } = await solve({
      engine: ENGINE,
      lay: [
        { siamese: [[hose(300, { name: 'wide' })], [thin(200, { name: 'thin' })]] },
        tip('tip', '0.4 in'),
      ],
    });
    const [wide, narrow] = [gpm('wide'), gpm('thin')];
    expect(wide + narrow).toBeCloseTo(gpm('tip'), 5);
    expect(loss('wide')).toBeCloseTo(coefficientLoss(24, wide, 300), 4);
    expect(loss('wide')).toBeCloseTo(coefficientLoss(150, narrow, 200), 4);
    expect(point.solution.status).toBe('solved');
  });

  it('of two equal lines is as one step of two lines', async () => {
    const joined = await solve({
      engine: ENGINE,
      lay: [{ siamese: [[hose(300)], [hose(300)]] }, tip('tip')],
    });
    const step = await solve({ engine: ENGINE, lay: [hose(300, { lines: 2 }), tip('tip')] });
    expect(joined.gpm('tip')).toBeCloseTo(step.gpm('tip'), 5);
  });

  it('climbs once', async () => {
    const line = [hose(100, { rise: '30 ft' }), hose(100, { rise: '20 ft' })];
    const lay = [{ siamese: [line, [hose(150, { rise: '50 ft' })]] }, { gauge: 'top' }, { cap: true }];
    const { gauge } = await solve({ engine: ENGINE, lay });
    expect(gauge('top')).toBeCloseTo(400 - columnPressure(50), 2);
  });

  it('within a siamese climbs as it says', async () => {
    const inner = { siamese: [[hose(100, { rise: '50 ft' })], [hose(120, { rise: '50 ft' })]] };
    const lay = [{ siamese: [[inner], [hose(100, { rise: '50 ft' })]] }, { gauge: 'top' }, { cap: true }];
    const { gauge } = await solve({ engine: ENGINE, lay });
    expect(gauge('top')).toBeCloseTo(400 - columnPressure(50), 2);
  });

  it('with a gauge, a valve shut and a check valve in its lines', async () => {
    const shut = { valve: { k: 0.2 }, open: '0 %' };
    const lines = [
      [hose(100, { name: 'open' }), { gauge: 'within' }],
      [hose(100, { name: 'shut' }), shut],
      [hose(100, { name: 'turned' }), { check_valve: { k: 1 } }],
    ];
    const { gpm } = await solve({ engine: ENGINE, lay: [{ siamese: lines }, tip('tip', '0.4 in')] });
    expect(gpm('shut')).toBeCloseTo(0, 4);
    expect(gpm('open') + gpm('turned')).toBeCloseTo(gpm('tip'), 4);
    expect(gpm('turned')).toBeGreaterThan(10);
  });
});

describe('branches', () => {
  it('the branch costs its allowance on the way to every line, and the lines share by their losses', async () => {
    const { point, gpm, nozzle, gauge } = await solve({
      engine: ENGINE,
      lay: [
        hose(200),
        { gauge: 'before' },
        { branch: WYE, to: [{ name: 'lateral', steps: [thin(100), tip('side')] }] },
        hose(100),
        tip('far'),
      ],
    });
    const [side, far] = [gpm('side'), gpm('far')];
    const all = side + far;
    const at = parabola(400, 75, 250, all) - coefficientLoss(24, all, 200) - 5;
    expect(point.totalPressure(nozzle('side').inlet) / PSI).toBeCloseTo(
      at - coefficientLoss(150, side, 100),
      3,
    );
    expect(point.totalPressure(nozzle('far').inlet) / PSI).toBeCloseTo(at - coefficientLoss(24, far, 100), 3);
    expect(gauge('before')).toBeLessThan(at + 5);
  });

  it('in branches, each at its own height', async () => {
    const inner = {
      branch: WYE,
      to: [
        { name: 'low', steps: [thin(100, { rise: '-20 ft' }), tip('low')] },
        { name: 'high', steps: [thin(100, { rise: '40 ft' }), tip('high')] },
      ],
    };
    const outer = { branch: WYE, to: [{ name: 'up', steps: [hose(100, { rise: '60 ft' }), inner] }] };
    const { point, gpm, nozzle } = await solve({ engine: ENGINE, lay: [hose(100), outer, { cap: true }] });
    const [low, high] = [gpm('low'), gpm('high')];
    const all = low + high;
    const inside = parabola(400, 75, 250, all) - coefficientLoss(24, all, 200) - 10 - columnPressure(60);
    expect(point.totalPressure(nozzle('low').inlet) / PSI).toBeCloseTo(
      inside - coefficientLoss(150, low, 100) + columnPressure(20),
      2,
    );
    expect(point.totalPressure(nozzle('high').inlet) / PSI).toBeCloseTo(
      inside - coefficientLoss(150, high, 100) - columnPressure(40),
      2,
    );
  });

  it('that end the list send all water into their lines', async () => {
    const to = ['one', 'two', 'three'].map((name) => ({ name, steps: [thin(100), tip(name)] }));
    const { gpm } = await solve({ engine: ENGINE, lay: [hose(100), { branch: WYE, to }] });
    expect(gpm('one')).toBeCloseTo(gpm('three'), 6);
    expect(gpm('one') * 3).toBeCloseTo(gpm('pump a'), 5);
  });

  it('with everything shut stand at the shutoff pressure throughout, less the height', async () => {
    const line = [thin(100, { rise: '40 ft' }), { gauge: 'lateral' }, { ...tip('side'), state: 'shut' }];
    const lay = [
      hose(100),
      { branch: WYE, to: [{ name: 'lateral', steps: line }] },
      { gauge: 'end' },
      { cap: true },
    ];
    const { gauge } = await solve({ engine: ENGINE, lay });
    expect(gauge('end')).toBeCloseTo(400, 2);
    expect(gauge('lateral')).toBeCloseTo(400 - columnPressure(40), 2);
  });
});

describe('a booster in the line', () => {
  it('adds its head at the flow that comes', async () => {
    const { point, gpm, pump } = await solve({
      engine: ENGINE,
      lay: [hose(500), { pump: parabolic(150, 60, 100), name: 'booster' }, hose(500), tip('tip', '0.4 in')],
    });
    const flow = gpm('tip');
    const inlet = point.totalPressure(pump('booster').inlet) / PSI;
    expect(inlet).toBeCloseTo(parabola(400, 75, 250, flow) - coefficientLoss(24, flow, 500), 3);
    expect(point.totalPressure(pump('booster').discharge) / PSI).toBeCloseTo(
      inlet + parabola(150, 60, 100, flow),
      3,
    );
  });

  it('at part throttle follows the affinity laws', async () => {
    const { point, gpm, pump } = await solve({
      engine: ENGINE,
      lay: [hose(500), { pump: parabolic(150, 60, 100), throttle: '90 %', name: 'booster' }, tip('tip')],
    });
    const { inlet, discharge } = pump('booster');
    const rise = (point.totalPressure(discharge) - point.totalPressure(inlet)) / PSI;
    expect(rise).toBeCloseTo(0.81 * parabola(150, 60, 100, gpm('tip') / 0.9), 3);
  });
});

describe('an open portable tank', () => {
  it('ends the pressure, and a pump draws on from its surface', async () => {
    const { point, gpm, pump } = await solve({
      engine: ENGINE,
      lay: [
        hose(1000, { rise: '200 ft', name: 'up' }),
        { tank: '1,000 gal', name: 'relay tank' },
        { pump: parabolic(200, 60, 120), name: 'next' },
        hose(300, { rise: '100 ft' }),
        { gauge: 'top' },
        tip('tip'),
      ],
    });
    expect(point.totalPressure(pump('next').inlet) / PSI).toBeCloseTo(0, 6);
    const drawn = gpm('tip');
    const made = parabola(200, 60, 120, drawn) - coefficientLoss(24, drawn, 300) - columnPressure(100);
    expect(point.totalPressure(point.assembly.nozzles[0].inlet) / PSI).toBeCloseTo(made, 3);
    // What arrives is what the engine drives up by itself: the tank's level takes up the difference.
    const arriving = gpm('up');
    const lost = coefficientLoss(24, arriving, 1000) + columnPressure(200);
    const left = parabola(400, 75, 250, arriving) - lost;
    expect(left).toBeGreaterThan(0);
    expect(left).toBeLessThan(5);
  });
});

describe('gauges', () => {
  it('are named, and a repeat counts them', async () => {
    const steps = [hose(100, { rise: '10 ft' }), { gauge: 'after {n}' }];
    const { gauge } = await solve({ engine: ENGINE, lay: [{ repeat: 3, steps }, { cap: true }] });
    expect(gauge('after 1')).toBeCloseTo(400 - columnPressure(10), 2);
    expect(gauge('after 3')).toBeCloseTo(400 - columnPressure(30), 2);
  });

  it('stand on the terrain where the hose says nothing', async () => {
    const { gauge } = await solve({
      engine: ENGINE,
      terrain: [
        ['0 ft', '0 ft'],
        ['400 ft', '90 ft'],
        ['800 ft', '40 ft'],
      ],
      lay: [hose(400), { gauge: 'crest' }, hose(200), { gauge: 'beyond' }, { cap: true }],
    });
    expect(gauge('crest')).toBeCloseTo(400 - columnPressure(90), 2);
    expect(gauge('beyond')).toBeCloseTo(400 - columnPressure(65), 2);
  });
});

describe('parts that lose nothing', () => {
  it('still give their bore to what comes after', async () => {
    const free = { appliance: { k: 0, inside_diameter: '1 in' } };
    const lay = [free, { appliance: { k: 3 }, name: 'part' }, tip('tip', '0.4 in')];
    const { loss, gpm } = await solve({ engine: ENGINE, lay });
    const inWide = await solve({
      engine: ENGINE,
      lay: [{ appliance: { k: 3, inside_diameter: '1 in' }, name: 'part' }, tip('tip', '0.4 in')],
    });
    expect(loss('part')).toBeCloseTo(inWide.loss('part'), 3);
    expect(gpm('tip')).toBeCloseTo(inWide.gpm('tip'), 3);
  });
});
