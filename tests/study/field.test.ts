import { expect, test } from 'vitest';
import { operateLayout } from '../../src/study/operation.js';
import { nozzleStates, UnknownNozzle } from '../../src/study/valves.js';
import { engine, FAR_FOG, FOOT, GPM, lay, layoutOf, PSI } from './support.js';

const TWO = [1, 2].map(() => ({ feet: 200, lateral: { feet: 100, gpm: 20 } }));
const layout = layoutOf(engine() + lay([...TWO, { feet: 200 }], FAR_FOG));
const open = async (asked: Parameters<typeof nozzleStates>[1], given = layout) => {
  const { nozzles } = await operateLayout(given, { nozzleState: nozzleStates(given, asked) });
  return nozzles.filter(({ flow }) => flow > 0).map(({ name }) => name);
};

test('nozzles are opened and shut by their names or by those of their lines', async () => {
  expect(await open({ shut: ['nozzle 1'] })).toEqual(['nozzle 2', 'far']);
  expect(await open({ shut: ['lateral 2', 'far'] })).toEqual(['nozzle 1']);
});

test('all comes before any name, whichever way round it is said', async () => {
  expect(await open({ shut: ['all'], open: ['lateral 2'] })).toEqual(['nozzle 2']);
  expect(await open({ open: ['all'], shut: ['far'] })).toEqual(['nozzle 1', 'nozzle 2']);
  expect(await open({ shut: ['all'] })).toEqual([]);
});

test('a nozzle that the file has shut can be opened', async () => {
  const shut = layoutOf(
    engine() + lay([{ feet: 100, lateral: { feet: 50, gpm: 20, state: 'shut' } }], FAR_FOG),
  );
  expect(await open({}, shut)).toEqual(['far']);
  expect(await open({ open: ['lateral 1'] }, shut)).toEqual(['nozzle 1', 'far']);
});

test('an unknown name is refused with the nearest one, a name on both sides with itself', () => {
  expect(() => nozzleStates(layout, { open: ['latteral 2'] })).toThrow(/did you mean lateral 2\?/);
  expect(() => nozzleStates(layout, { open: ['zzzz'] })).toThrow(/nozzle 1/);
  expect(() => nozzleStates(layout, { open: ['far'], shut: ['far'] })).toThrow(UnknownNozzle);
  expect(() => nozzleStates(layout, { open: ['all'], shut: ['all'] })).toThrow(UnknownNozzle);
});

test('every nozzle shut is always run: shutoff stands in the hose, and the caution says so', async () => {
  const forestry = layoutOf(
    `${engine()}lay:\n  left:\n    - {hose: forestry-1.5, length: 200 ft}\n    - ${FAR_FOG}\n`,
  );
  const { cases, cautions } = await operateLayout(forestry);
  const shut = cases.find(({ code }) => code === 'all_shut');
  expect((shut?.highestHose?.pressure ?? 0) / PSI).toBeCloseTo(400, 6);
  expect(shut?.breaks).toContain('hose_over_service_test');
  expect(cautions.map(({ code }) => code)).toContain('hose_over_service_test');
});

test('a case that breaks no limit is told only when all are asked for', async () => {
  const easy = layoutOf(
    engine('plumbing: {cooling: {orifice: 1/8 in}}') + lay([{ feet: 100 }], '{nozzle: tip-1/4, name: far}'),
  );
  const codes = async (allCases: boolean) =>
    (await operateLayout({ ...easy, throttle: { by: 'speed', a: 0.5, b: 0.5 } }, { allCases })).cases.map(
      ({ code }) => code,
    );
  expect(await codes(false)).not.toContain('all_shut');
  expect(await codes(true)).toContain('all_shut');
});

test('the far line burst open runs free, and starves the nozzle beside it', async () => {
  const { cases, totalFlow, cautions } = await operateLayout(layout, { allCases: true });
  const burst = cases.find(({ code }) => code === 'far_line_burst');
  expect(burst?.title).toContain('far');
  expect(burst?.totalFlow ?? 0).toBeGreaterThan(totalFlow);
  expect(cautions.some(({ code, at }) => code === 'nozzle_short_when_burst' && at !== 'far')).toBe(true);
});

test('one pump out is run for either, and moves less than both', async () => {
  const { cases, totalFlow } = await operateLayout(layout, { allCases: true });
  const out = cases.filter(({ code }) => code === 'one_pump_out');
  expect(out.map(({ title }) => title)).toEqual(['pump b out', 'pump a out']);
  for (const one of out) expect(one.totalFlow).toBeLessThan(totalFlow);
});

test('a case is run at the throttle of the question, not at full', async () => {
  const slow = { ...layout, throttle: { by: 'speed' as const, a: 0.5, b: 0.5 } };
  const { cases } = await operateLayout(slow, { allCases: true });
  const shut = cases.find(({ code }) => code === 'all_shut');
  // By the affinity law shutoff falls with the square of speed.
  expect((shut?.highestHose?.pressure ?? 0) / PSI).toBeCloseTo(400 / 4, 6);
});

const over = (
  terrain: string,
  steps = '[{hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft}, {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft}]',
) => layoutOf(`${engine()}terrain: ${terrain}\nlay:\n  left: ${steps.replace(/\]$/, `, ${FAR_FOG}]`)}\n`);

test('a ridge in the middle is named with the pressure on it, between couplings too', async () => {
  // The crest lies 300 ft out, in the middle of a 500 ft length.
  const { profiles, nozzles, lines } = await operateLayout(
    over('[[0 ft, 0 ft], [300 ft, 120 ft], [1000 ft, 20 ft]]'),
  );
  const [profile] = profiles;
  expect(profile.overRidge).toBe(true);
  expect(profile.highest.height / FOOT).toBeCloseTo(120, 6);
  expect(profile.highest.distance / FOOT).toBeCloseTo(300, 6);
  expect(profile.climb / FOOT).toBeCloseTo(20, 6);
  // By hand: what stands at the start, less 3/5 of the first length's friction, less 120 ft of water.
  const [first] = lines.filter(({ name }) => name.startsWith('hose'));
  const water = 998.967 * 9.80665;
  const byHand = first.inletPressure - 0.6 * first.loss - water * 120 * FOOT;
  expect(profile.highest.pressure / PSI).toBeCloseTo(byHand / PSI, 1);
  expect(nozzles[0].flow / GPM).toBeGreaterThan(0);
});

test('the far nozzle is that at the end of the trunk, though a lateral before it has more hose; of two legs the longer', async () => {
  const trunk = layoutOf(
    engine() + lay([{ feet: 200, lateral: { feet: 50, gpm: 20 } }, { feet: 20 }], FAR_FOG),
  );
  expect((await operateLayout(trunk)).profiles[0].to).toBe('far');
  const fork = layoutOf(`${engine()}lay:
  left:
    - {hose: forestry-1.5, length: 100 ft}
    - branch: gated-wye
      to:
        - {name: long, steps: [{hose: forestry-1, length: 300 ft}, {nozzle: fog-20, name: long nozzle}]}
        - {name: short, steps: [{hose: forestry-1, length: 100 ft}, {nozzle: fog-20, name: short nozzle}]}
`);
  expect((await operateLayout(fork)).profiles[0].to).toBe('long nozzle');
});

test('a line that only climbs goes over no ridge', async () => {
  const { profiles } = await operateLayout(over('[[0 ft, 0 ft], [1000 ft, 200 ft]]'));
  expect(profiles[0].overRidge).toBe(false);
  expect(profiles[0].highest.distance / FOOT).toBeCloseTo(1000, 6);
});

const ridge = (throttle: number) =>
  layoutOf(`${engine()}throttle: ${throttle} %
terrain: [[0 ft, 0 ft], [500 ft, 390 ft], [1000 ft, 0 ft]]
lay:
  left:
    - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 500 ft}
    - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 500 ft}
    - {nozzle: {kind: fog, flow: 30 gpm, pressure: 50 psi}, name: far}
`);

test('hose on a ridge that stands below the air is warned of, and more throttle lifts it over', async () => {
  const slack = await operateLayout(ridge(66));
  expect(slack.profiles[0].highest.pressure).toBeLessThan(0);
  expect(slack.cautions.map(({ code }) => code)).toContain('hose_below_air');
  const firm = await operateLayout(ridge(100));
  expect(firm.profiles[0].highest.pressure).toBeGreaterThan(0);
  expect(
    firm.cautions.some(({ code, message }) => code === 'hose_below_air' && message.includes('as it stands')),
  ).toBe(false);
});

test('hose that would have to stand below the vapour of water is no answer, and is stopped', async () => {
  const thirsty = layoutOf(`${engine()}terrain: [[0 ft, 0 ft], [500 ft, 390 ft], [1000 ft, 0 ft]]
lay:
  left:
    - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 500 ft}
    - {hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 500 ft}
    - {nozzle: {kind: fog, flow: 200 gpm, pressure: 50 psi}, name: far}
`);
  const { cautions, profiles, site } = await operateLayout(thirsty);
  expect(profiles[0].highest.pressure).toBeLessThan(site.vapourPressure - site.atmosphericPressure);
  expect(cautions.find(({ code }) => code === 'hose_below_air')?.level).toBe('stop');
});

test('a downhill lay is held to its lowest point with every nozzle shut', async () => {
  const down = layoutOf(
    `${engine()}throttle: 80 %\nterrain: [[0 ft, 0 ft], [900 ft, -300 ft], [1000 ft, -290 ft]]\nlay:\n  left: [{hose: forestry-1.5, length: 1000 ft}, ${FAR_FOG}]\n`,
  );
  const { cases, cautions } = await operateLayout(down);
  const low = cases.find(({ code }) => code === 'lowest_point');
  // Shutoff at 80 % of speed, and 300 ft of water under it.
  const water = (998.967 * 9.80665 * 300 * FOOT) / PSI;
  expect((low?.highestHose?.pressure ?? 0) / PSI).toBeCloseTo(400 * 0.64 + water, 1);
  expect(low?.breaks).toContain('hose_over_service_test');
  const stop = cautions.find(({ code }) => code === 'hose_over_service_test');
  expect((stop?.value?.value ?? 0) / PSI).toBeCloseTo(400 * 0.64 + water, 1);
});

test('distances off a map are less than the hose that lies on the slope: 300 across and 400 up take 500', async () => {
  const onMap = over('{on_map: [[0 ft, 0 ft], [300 ft, 400 ft], [900 ft, 400 ft]]}');
  const { profiles } = await operateLayout(onMap);
  expect(profiles[0].climb / FOOT).toBeCloseTo(400, 6);
  expect(profiles[0].hose / FOOT).toBeCloseTo(1000, 6);
  expect(profiles[0].onMap / FOOT).toBeCloseTo(300 + 500, 6);
  const along = over('{along_slope: [[0 ft, 0 ft], [500 ft, 400 ft], [1000 ft, 400 ft]]}');
  expect((await operateLayout(along)).profiles[0]).toEqual(profiles[0]);
});

test('one grade all the way is height over level distance, not over hose', async () => {
  const { profiles } = await operateLayout(over('75 %'));
  // 3 up for 4 across is 5 along the slope.
  expect(profiles[0].climb / FOOT).toBeCloseTo(600, 3);
  expect(profiles[0].onMap / FOOT).toBeCloseTo(800, 3);
});

test('hose of which nothing is said lies level, and the answer says how much', async () => {
  const { profiles } = await operateLayout(
    layoutOf(
      `${engine()}lay:\n  left: [{hose: forestry-1.5, length: 300 ft}, {hose: forestry-1.5, length: 200 ft, rise: 20 ft}, ${FAR_FOG}]\n`,
    ),
  );
  expect(profiles[0].takenLevel / FOOT).toBeCloseTo(300, 6);
});
