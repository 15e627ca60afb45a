import { describe, expect, it } from 'vitest';
import { waterDensity } from '../../src/physics/water.js';
import { fromUnit } from '../../src/quantity/format.js';
import { GrowingLay } from '../../src/study/growing-lay.js';
import { operateLayout } from '../../src/study/operation.js';
import { advanceLayout, NoProgressiveLay } from '../../src/study/progression.js';
import { Rig, SolvedAssembly } from '../../src/study/rig.js';
import { Random } from '../support/random.js';
import { FOOT, GPM, GRAVITY, PSI } from '../support/units.js';
import { layoutFrom, PLAIN_ENGINE, randomPlan } from './progressive-layouts.js';

const psi = (pressure: number) => pressure / PSI;

describe('a progressive lay worked by hand: C 24, five laterals of 20 gpm, 200 ft apart', () => {
  /** What each 200 ft loses with 100, 80, 60, 40 and 20 gpm in it: 24 q^2 x 2. */
  const LOSSES = [48, 30.72, 17.28, 7.68, 1.92];
  // The ground falls by what is lost, so that every wye has the pressure of the pump and every lateral takes 20 gpm.
  const falls = LOSSES.map((loss) => (loss * PSI) / (waterDensity(fromUnit(60, 'degF')) * GRAVITY * FOOT));
  const ground = [[0, 0]];
  for (const fall of falls) {
    const [along, height] = ground[ground.length - 1];
    ground.push([along + 200, height - fall]);
  }
  const layout = layoutFrom(`
title: the sum that is worked by hand
${PLAIN_ENGINE}
staging: parallel
throttle: {discharge_pressure: 200 psi}
appliance_policy: engineering
terrain: [${ground.map(([along, height]) => `[${along} ft, ${height} ft]`).join(', ')}]
progressive:
  trunk: {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 200 ft}
  sections: 5
  lateral:
    branch: plain
    steps:
      - nozzle: {kind: fog, flow: 20 gpm, pressure: 200 psi}
`);

  it('loses 48.0 + 30.7 + 17.3 + 7.7 + 1.9 = 106 psi to the last lateral', async () => {
    const lay = new GrowingLay(
      await Rig.of(layout),
      layout.progressive as NonNullable<typeof layout.progressive>,
    );
    const { point, nozzles, hose } = lay.at(5);
    const flows = nozzles.flatMap(({ link, state }) =>
      link === undefined || state === 'shut' ? [] : [point.flow(link) / GPM],
    );
    expect(flows).toHaveLength(5);
    for (const flow of flows) expect(flow).toBeCloseTo(20, 3);
    const trunk = hose.filter(({ name }) => name.startsWith('section'));
    const lost = trunk.map((element) => psi(point.lossOf(element)));
    expect(lost.map((loss) => loss.toFixed(1))).toEqual(['48.0', '30.7', '17.3', '7.7', '1.9']);
    expect(Math.round(lost.reduce((sum, loss) => sum + loss, 0))).toBe(106);
  });

  it('loses 240 psi by the habit of taking all of it to the far end', async () => {
    const { habits } = await operateLayout(layout);
    expect(Math.round(psi(habits[0].actual))).toBe(106);
    expect(Math.round(psi(habits[0].endToEnd))).toBe(240);
  });
});

describe('a lay solved as one network', () => {
  for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
    const random = new Random(100 + seed);
    const laterals = random.integer(4, 25);
    it(`stands at every length as the lay that lies there: random ground ${seed}, ${laterals} laterals`, async () => {
      const layout = randomPlan(random, laterals);
      const plan = layout.progressive as NonNullable<typeof layout.progressive>;
      const rig = await Rig.of(layout);
      const after = random.integer(1, plan.trunk.length);
      for (const variant of [{}, { doubled: true }, { pump: { after, throttle: 0.6, tank: false } }]) {
        const lay = new GrowingLay(rig, plan, variant);
        for (const length of [after, plan.trunk.length]) {
          const laid = lay.at(length);
          const plain = new SolvedAssembly(
            rig.with(lay.layoutAt(length)).assemble({ staging: layout.staging, lay: 'whole' }),
          ).solve();
          for (const nozzle of laid.nozzles) {
            const same = plain.assembly.nozzles.find(({ name }) => name === nozzle.name);
            expect(same?.state).toBe(nozzle.state);
            if (same) {
              const apart = laid.point.totalPressure(nozzle.inlet) - plain.totalPressure(same.inlet);
              expect(Math.abs(psi(apart)), nozzle.name).toBeLessThan(0.01);
            }
          }
        }
      }
    });
  }

  it('stands at the shutoff of its pumps with every nozzle shut, and holds no more behind the check valves', async () => {
    const layout = randomPlan(new Random(7), 12);
    const plan = layout.progressive as NonNullable<typeof layout.progressive>;
    const { shut, hose } = new GrowingLay(await Rig.of(layout), plan).at(plan.trunk.length);
    const [pump] = shut.assembly.pumps.slice(-1);
    const first = hose[0];
    const rise = shut.totalPressure(first.from) - shut.totalPressure(pump.discharge);
    expect(Math.abs(psi(rise))).toBeLessThan(0.01);
  });
});

describe('laws of a lay that grows', () => {
  for (const seed of [1, 2, 3, 4]) {
    it(`a longer lay never gives the far nozzle more, on level ground: ${seed}`, async () => {
      const random = new Random(40 + seed);
      const layout = plainPlan({
        sections: 24,
        flowing: random.pick(['all', 'none']),
        rise: random.integer(0, 20),
      });
      const lay = new GrowingLay(await Rig.of(layout), layout.progressive as never);
      let before = Number.POSITIVE_INFINITY;
      for (let length = 1; length <= 24; length++) {
        const { point, nozzles } = lay.at(length);
        const far = nozzles.find(({ name }) => name === 'far nozzle');
        const flow = far?.link === undefined ? 0 : point.flow(far.link);
        expect(flow).toBeLessThanOrEqual(before + 1e-9);
        before = flow;
      }
    });
  }

  it('opening a lateral never raises the flow of another nozzle', async () => {
    const layout = randomPlan(new Random(11), 14);
    const plan = layout.progressive as NonNullable<typeof layout.progressive>;
    const rig = await Rig.of(layout);
    let before: Map<string, number> | undefined;
    for (let open = 0; open <= 14; open++) {
      const numbers = Array.from({ length: open }, (_, index) => index + 1);
      const flowing = open === 0 ? ('none' as const) : { numbers };
      const { point, nozzles } = new GrowingLay(rig, plan, { flowing }).at(plan.trunk.length);
      const flows = new Map(
        nozzles.map(({ name, link, state }) => [
          name,
          state === 'open' && link !== undefined ? point.flow(link) : Number.NaN,
        ]),
      );
      for (const [name, flow] of before ?? [])
        if (!Number.isNaN(flow)) expect(flows.get(name), name).toBeLessThanOrEqual(flow + 1e-9);
      before = flows;
    }
  });
});

/** A plan on even ground, short of one thing at a time. */
function plainPlan(given: {
  sections?: number;
  flowing?: string;
  rise?: number;
  engine?: string;
  carried?: string;
  more?: string;
  throttle?: string;
  supply?: string;
}) {
  const { sections = 20, flowing = 'all', rise = 0, carried = '', more = '', throttle = '60 %' } = given;
  return layoutFrom(`
title: plain plan
engine:
  name: plain
  tank: {capacity: ${given.engine ?? '5000 gal'}, outlet_height: 3 ft}
  pumps:
    a: {model: &twin {name: twin, points: [[0 gpm, 400 psi], [60 gpm, 318 psi], [130 gpm, 70 psi]], shape: power}}
    b: {model: *twin}
  ${carried}
staging: parallel
throttle: ${throttle}
supply: ${given.supply ?? 'tank'}
progressive:
  trunk: {hose: forestry-1.5, length: 100 ft, rise: ${rise} ft}
  sections: ${sections}
  lateral:
    every: 2
    branch: gated-wye
    steps:
      - hose: forestry-1
        length: 100 ft
      - nozzle: fog-10
    flowing: ${flowing}
  end:
    - nozzle: tip-1/4
${more}
`);
}

describe('what stops a lay is named', () => {
  it('a nozzle below its minimum, and every option is solved to where it stops', async () => {
    const answer = await advanceLayout(plainPlan({}));
    expect(answer.stop?.code).toBe('nozzle_below_minimum');
    expect(answer.stop?.value.value).toBeLessThan(answer.stop?.limit.value as number);
    const last = answer.steps.at(-1);
    expect(last?.section).toBe(answer.reached + 1);
    expect(answer.steps.slice(0, -1).every(({ limits }) => limits.length === 0)).toBe(true);
    const codes = answer.options.map(({ code }) => code);
    for (const code of [
      'fewer_laterals',
      'laterals_shut',
      'staging',
      'booster',
      'portable_tank',
      'doubled_trunk',
      'bigger_trunk',
    ])
      expect(codes).toContain(code);
    expect(answer.options.map(({ reached }) => reached)).toEqual(
      answer.options.map(({ reached }) => reached).sort((a, b) => b - a),
    );
  });

  it('hose over its limit with every nozzle shut, and the throttle at which it holds', async () => {
    const answer = await advanceLayout(plainPlan({ throttle: '87 %' }));
    expect(answer.stop).toMatchObject({ code: 'hose_over_limit', state: 'shut' });
    expect(answer.reached).toBe(0);
    const lower = answer.options.find(({ code }) => code === 'throttle');
    expect(lower?.reached).toBeGreaterThan(0);
  });

  it('hose over its limit downhill, at the lowest section', async () => {
    const answer = await advanceLayout(plainPlan({ rise: -30, throttle: '70 %' }));
    expect(answer.stop).toMatchObject({ code: 'hose_over_limit', state: 'shut' });
    expect(answer.stop?.at).toMatch(new RegExp(`section ${answer.reached + 1}$|of lateral`));
  });

  it('hose run out', async () => {
    const carried =
      'hose_carried: [{hose: forestry-1.5, length: 300 ft}, {hose: forestry-1, length: 500 ft}]';
    const answer = await advanceLayout(plainPlan({ carried }));
    expect(answer.stop).toMatchObject({ code: 'hose_run_out', at: '1.5 in hose' });
    expect(answer.reached).toBe(3);
    const more = answer.options.find(({ code }) => code === 'more_hose');
    expect(more?.reached).toBeGreaterThan(3);
    expect(more?.needs.map(({ item }) => item)).toContain('1.5 in hose');
  });

  it('fittings run out', async () => {
    const answer = await advanceLayout(plainPlan({ carried: 'fittings_carried: {gated-wye: 1}' }));
    expect(answer.stop).toMatchObject({ code: 'fittings_run_out', at: 'gated wye' });
    expect(answer.reached).toBe(3);
  });

  it('water run out, on a plan with a pace', async () => {
    const layout = plainPlan({ engine: '200 gal' });
    const paced = {
      ...layout,
      progressive: { ...(layout.progressive as NonNullable<typeof layout.progressive>), pace: 120 },
    };
    const answer = await advanceLayout(paced);
    expect(answer.stop).toMatchObject({ code: 'water_run_out', at: 'tank' });
    const used = answer.steps.map(({ water }) => water?.used ?? 0);
    // What has been poured at a step is what the steps before it poured in two minutes each, and what drips from shut ends.
    answer.steps.slice(1).forEach((step, index) => {
      expect(used[index + 1] - used[index]).toBeCloseTo(answer.steps[index].totalFlow * 120, 4);
      expect(step.water?.used).toBe(used[index + 1]);
    });
  });

  it('nothing, where the whole plan goes through', async () => {
    const answer = await advanceLayout(plainPlan({ sections: 2 }));
    expect(answer.stop).toBeUndefined();
    expect(answer.reached).toBe(2);
    expect(answer.options).toEqual([]);
  });

  it('a layout that does not grow is told how to', async () => {
    const layout = plainPlan({});
    await expect(advanceLayout({ ...layout, progressive: undefined })).rejects.toBeInstanceOf(
      NoProgressiveLay,
    );
  });
});

describe('a booster is put where the pressure along the line has fallen to its intake', () => {
  it('has at least its floor there, and would have less a section further out', async () => {
    const layout = plainPlan({ sections: 40, flowing: 'none', rise: 4, throttle: '50 %' });
    const answer = await advanceLayout(layout);
    const booster = answer.options.find(({ code }) => code === 'booster');
    const { placement } = booster ?? {};
    if (!booster || !placement) throw new Error('no booster was placed');
    expect(booster.gained).toBeGreaterThan(0);
    expect(psi(placement.intake)).toBeGreaterThanOrEqual(20);
    const rig = await Rig.of(layout);
    const plan = layout.progressive as NonNullable<typeof layout.progressive>;
    const variant = { pump: { after: placement.section, throttle: placement.throttle, tank: false } };
    const plain = rig.with(new GrowingLay(rig, plan, variant).layoutAt(booster.reached));
    const point = new SolvedAssembly(plain.assemble({ staging: 'parallel', lay: 'whole' })).solve();
    const pump = point.assembly.pumps.find((one) => one.booster);
    expect(pump && psi(point.totalPressure(pump.inlet))).toBeCloseTo(psi(placement.intake), 2);
    expect(pump && point.flow(pump.link) / GPM).toBeCloseTo(placement.flow / GPM, 2);
  });
});
