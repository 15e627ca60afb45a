import { describe, expect, it } from 'vitest';
import { riseOfGrade } from '../../src/layout/make-step.js';
import { layOf } from './support.js';

const END = '- cap: true';
const first = (step: string) => layOf(`${step}\n${END}`)[0];

describe('a step of each kind', () => {
  it('hose from the catalogue', () => {
    expect(first('- {hose: trunk, length: 100 ft, rise: 30 ft, lines: 2, name: trunk 1}')).toMatchObject({
      kind: 'hose',
      id: 'trunk',
      modelName: 'trunk',
      hose: { inside_diameter: expect.closeTo(0.0381, 12), coefficient: 24 },
      length: expect.closeTo(30.48, 12),
      rise: expect.closeTo(9.144, 12),
      riseBasis: 'stated',
      lines: 2,
      name: 'trunk 1',
      label: 'trunk 1',
      path: ['lay', 0],
      at: { file: 'layout.yaml', line: 4, column: 6 },
    });
  });

  it('hose of its own, level and single where nothing is said', () => {
    const step = first('- {hose: {inside_diameter: 1.61 in, hazen_williams: 140}, length: 50 m}');
    expect(step).toMatchObject({
      kind: 'hose',
      hose: { hazen_williams: 140 },
      modelName: 'a hose of its own',
      rise: 0,
      riseBasis: 'level',
      lines: 1,
      label: 'hose 1 of outlet',
    });
    expect(step).not.toHaveProperty('id');
  });

  it('a grade is height over level distance, and the hose lies along the slope', () => {
    const step = first('- {hose: trunk, length: 100 m, rise: 75 %}');
    // A slope of 3 in 4 is a right triangle of sides 3, 4 and 5.
    expect(step).toMatchObject({ rise: expect.closeTo(60, 10), riseBasis: 'grade' });
    expect(riseOfGrade(100, -0.75)).toBeCloseTo(-60, 10);
  });

  it('pipe with fittings, and fittings alone', () => {
    expect(first('- {pipe: two-inch, length: 3 ft, fittings: {elbow_90: 2, ball_valve: 1}}')).toMatchObject({
      kind: 'pipe',
      length: expect.closeTo(0.9144, 12),
      fittings: [
        { id: 'elbow_90', count: 2, fitting: { friction_multiple: 30 } },
        { id: 'ball_valve', count: 1 },
      ],
    });
    expect(first('- {pipe: two-inch, fittings: {elbow_90: 1}}')).toMatchObject({ length: 0, rise: 0 });
  });

  it('valve, check valve, appliance', () => {
    const steps = layOf(`
- {hose: trunk, length: 1 ft}
- {valve: ball, open: 60 %}
- valve: {flow_coefficient: 60}
- check_valve: swing
- appliance: header
- appliance: {k: 3, inside_diameter: 2 in}
- cap: true`);
    expect(steps).toMatchObject([
      { kind: 'hose' },
      { kind: 'valve', open: 0.6 },
      { kind: 'valve', open: 1, valve: { flow_coefficient: 60 } },
      { kind: 'check_valve', check_valve: { friction_multiple: 100 } },
      { kind: 'appliance', policy: 'engineering' },
      { kind: 'appliance', appliance: { k: 3 }, label: 'appliance 2 of outlet' },
      { kind: 'cap' },
    ]);
  });

  it('branch, its lines named or not', () => {
    const step = first(`
- branch: wye
  name: split
  to:
    - name: left leg
      steps: [{nozzle: fog}]
    - steps: [{hose: lateral, length: 100 ft}, {open_end: true}]`);
    expect(step).toMatchObject({
      kind: 'branch',
      to: [
        { name: 'left leg', steps: [{ kind: 'nozzle', label: 'nozzle 1 of left leg' }] },
        {
          name: 'line 2 of split',
          steps: [{ kind: 'hose' }, { kind: 'open_end' }],
          path: ['lay', 0, 'to', 1],
        },
      ],
    });
  });

  it('siamese', () => {
    expect(
      first('- siamese: [[{hose: trunk, length: 100 ft}], [{hose: lateral, length: 80 ft}]]'),
    ).toMatchObject({
      kind: 'siamese',
      siamese: [[{ hose: { coefficient: 24 } }], [{ hose: { coefficient: 150 } }]],
    });
  });

  it('booster and open tank', () => {
    expect(
      layOf('- tank: 1,000 gal\n- {hose: trunk, length: 10 ft}\n- {pump: twin, throttle: 80 %}'),
    ).toMatchObject([
      { kind: 'tank', tank: expect.closeTo(3.785411784, 9) },
      { kind: 'hose' },
      { kind: 'pump', throttle: 0.8, pump: { points: expect.any(Array) } },
    ]);
    expect(first('- pump: twin')).toMatchObject({ throttle: 1 });
  });

  it('nozzle, as its step sets it', () => {
    expect(layOf('- nozzle: fog')).toMatchObject([
      { kind: 'nozzle', state: 'open', nozzle: { kind: 'fog' } },
    ]);
    expect(layOf('- {nozzle: fog, flow: 30 gpm, state: shut}')).toMatchObject([
      {
        state: 'shut',
        flow: expect.closeTo(0.00189270589, 9),
        nozzle: { flow: expect.closeTo(0.00189270589, 9) },
      },
    ]);
    const [tipped] = layOf('- {nozzle: tips, tip: 3/8 in}');
    expect(tipped).toMatchObject({ nozzle: { kind: 'smooth_bore', bore: expect.closeTo(0.009525, 9) } });
    expect(tipped).not.toHaveProperty('nozzle.tips');
    expect(layOf('- {nozzle: straight, tip: 1/2 in}')).toMatchObject([
      { nozzle: { bore: expect.closeTo(0.0127, 9) } },
    ]);
    expect(layOf('- nozzle: {kind: sharp_orifice, bore: 0.716 in, tee_bore: 1.5 in}')).toMatchObject([
      { nozzle: { kind: 'sharp_orifice', discharge_coefficient: expect.closeTo(0.6213, 4) } },
    ]);
  });

  it('gauge', () => {
    expect(first('- gauge: end of the trunk')).toMatchObject({
      kind: 'gauge',
      gauge: 'end of the trunk',
      name: 'end of the trunk',
      label: 'end of the trunk',
    });
  });
});

describe('repeats', () => {
  it('are written out and counted', () => {
    const steps = layOf(`
- repeat: 3
  steps:
    - {hose: trunk, length: 100 ft}
    - branch: wye
      name: wye {n}
      to: [{name: 'lateral {n}', steps: [{nozzle: fog, name: 'nozzle {n}'}]}]
    - gauge: after {n}
- cap: true`);
    expect(steps.map(({ label }) => label)).toEqual([
      'hose 1 of outlet',
      'wye 1',
      'after 1',
      'hose 2 of outlet',
      'wye 2',
      'after 2',
      'hose 3 of outlet',
      'wye 3',
      'after 3',
      'cap 1 of outlet',
    ]);
    expect(steps[7]).toMatchObject({ to: [{ name: 'lateral 3', steps: [{ name: 'nozzle 3' }] }] });
    expect(steps[6].path).toEqual(['lay', 0, 'steps', 0]);
  });

  it('within repeats count both', () => {
    const steps = layOf(`
- repeat: 2
  steps:
    - repeat: 2
      steps: [{hose: trunk, length: 10 ft, name: 'hose {n}'}]
    - gauge: g{n}`);
    expect(steps.map(({ name }) => name)).toEqual([
      'hose 1.1',
      'hose 1.2',
      'g1',
      'hose 2.1',
      'hose 2.2',
      'g2',
    ]);
  });

  it('reach forty thousand links in little time', () => {
    const start = performance.now();
    expect(layOf('- repeat: 40,000\n  steps: [{hose: trunk, length: 10 ft}]'.replace(',', ''))).toHaveLength(
      40_000,
    );
    expect(performance.now() - start).toBeLessThan(2000);
  });
});

describe('terrain', () => {
  const TERRAIN = 'terrain: [[0 ft, 100 ft], [400 ft, 190 ft], [1,000 ft, 190 ft]]';
  const rises = (steps: string) =>
    layOf(steps, TERRAIN).map((step) =>
      'rise' in step ? Number((step.rise / 0.3048).toFixed(6)) : undefined,
    );

  it('gives a rise to the hose of the main line that has none', () => {
    expect(
      rises(
        '- {hose: trunk, length: 200 ft}\n- {hose: trunk, length: 400 ft}\n- {hose: trunk, length: 400 ft}',
      ),
    ).toEqual([45, 45, 0]);
  });

  it('is passed over by hose that has a rise of its own', () => {
    const text = '- {hose: trunk, length: 200 ft, rise: -7 ft}\n- {hose: trunk, length: 200 ft}';
    expect(rises(text)).toEqual([-7, 45]);
    expect(layOf(text, TERRAIN)).toMatchObject([{ riseBasis: 'stated' }, { riseBasis: 'terrain' }]);
  });

  it('does not bear on branches', () => {
    const [, branch, after] = layOf(
      '- {hose: trunk, length: 100 ft}\n- branch: wye\n  to: [{steps: [{hose: lateral, length: 100 ft}, {cap: true}]}]\n- {hose: trunk, length: 100 ft}',
      TERRAIN,
    );
    expect(branch).toMatchObject({ to: [{ steps: [{ rise: 0, riseBasis: 'level' }, {}] }] });
    expect(after).toMatchObject({ rise: expect.closeTo(22.5 * 0.3048, 9) });
  });

  it('carries lines that part and meet again between the same heights', () => {
    const [siamese, after] = layOf(
      '- siamese: [[{hose: trunk, length: 400 ft}], [{hose: lateral, length: 250 ft}, {hose: lateral, length: 250 ft}]]\n- {hose: trunk, length: 100 ft}',
      TERRAIN,
    );
    const rise = (feet: number) => expect.closeTo(feet * 0.3048, 9);
    expect(siamese).toMatchObject({
      siamese: [[{ rise: rise(90) }], [{ rise: rise(45) }, { rise: rise(45) }]],
    });
    expect(after).toMatchObject({ rise: 0, riseBasis: 'terrain' });
  });

  it('splitting a hose in two changes no height', () => {
    const whole = rises('- {hose: trunk, length: 600 ft}');
    const parts = rises('- {hose: trunk, length: 250 ft}\n- {hose: trunk, length: 350 ft}');
    expect(parts.reduce<number>((sum, rise) => sum + (rise ?? 0), 0)).toBeCloseTo(whole[0] ?? Number.NaN, 9);
  });
});
