import { describe, expect, test } from 'vitest';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { FOOT, GALLON_PER_MINUTE, INCH_OF_MERCURY, PSI } from '../../src/physics/customary.js';
import { answerDocument } from '../../src/report/answer-document.js';
import { toJson } from '../../src/report/json.js';
import { checkJson } from '../../src/report/json-schema.js';
import { textOf } from '../../src/report/text.js';
import type { CheckAnswer } from '../../src/study/answer.js';
import { checkLayout } from '../../src/study/rating.js';

/** An engine of our own invention; the parts that a test changes stand in words of their own. */
function engine(changes: Record<string, string> = {}): string {
  const part = (name: string, usual: string) => changes[name] ?? usual;
  return `
site: {elevation: ${part('elevation', '0 ft')}, water_temperature: ${part('water', '60 degF')}}
engine:
  tank: {capacity: 500 gal, outlet_height: ${part('height', '1 ft')}, depth: 3 ft}
  pumps:
    a:
      model: &pump
        rated_speed: 6500 rpm
        points: [[0 gpm, 415 psi], [30 gpm, 385 psi], [60 gpm, 318 psi], [85 gpm, 228 psi], [105 gpm, 110 psi]]
        power: {rated: 30 hp, aspiration: natural, fuel: gasoline}
        efficiency: [[30 gpm, 38 %], [60 gpm, 55 %], [85 gpm, 56 %]]
        ${part('npsh', 'npsh_required: [[30 gpm, 8 ft], [85 gpm, 15 ft]]')}
        limits: {inlet: 150 psi, casing: 600 psi}
    b: {model: *pump, wear: ${part('wear', '0 %')}}
  plumbing:
    intake:
      - pipe: {inside_diameter: ${part('intake', '3 in')}, roughness: 0.0018 in}
        length: 6 ft
    discharge:
      - check_valve: swing
        name: its own check valve
      - pipe: {inside_diameter: 1.5 in, roughness: 0.0018 in}
        length: 3 ft
  ${part('relief', 'relief: {opens_at: 260 psi}')}
  hose_carried: [{hose: {inside_diameter: 1.5 in, coefficient: 24, limits: {service_test: 300 psi}}, length: 1000 ft}]
staging: ${part('staging', 'parallel')}
${part('throttle', '')}
typing: {custom: {flow: ${part('flow', '150 gpm')}, pressure: 200 psi, not_checked: [{item: draft, requirement: primes from 10 ft}]}}
${part('lay', '')}
`;
}

const check = (changes: Record<string, string> = {}): Promise<CheckAnswer> =>
  checkLayout(
    readLayoutText(
      engine(changes)
        .replace('        name: its own check valve\n', '')
        .replace('check_valve: swing', 'check_valve: {k: 2, inside_diameter: 1.5 in}'),
      'layout.yaml',
    ).layout,
  );

describe('suction', () => {
  test('what a pump has is atmosphere less vapour plus height less loss, and its gauge shows the vacuum of it', async () => {
    const { suction, site, pumps } = await check();
    const [a] = suction?.pumps ?? [];
    const air = (site.atmosphericPressure - site.vapourPressure) / (site.waterDensity * 9.80665);
    // The gauge reads static: what the loss and the velocity of the intake take off the foot of water over the pump.
    expect(a.available).toBeLessThan(air + 1 * FOOT);
    expect(a.available).toBeGreaterThan(air - 3 * FOOT);
    expect(a.vacuum).toBe(-pumps[0].inletPressure);
    expect(a.basis).toBe('file');
    expect(a.needed / FOOT).toBeCloseTo(8 + (7 * (pumps[0].flow / GALLON_PER_MINUTE - 30)) / 55, 6);
  });

  test('a pump without a file is held against the lift practice: a third of the theoretical lift has to be left', async () => {
    const [a] = (await check({ npsh: '' })).suction?.pumps ?? [];
    expect(a.basis).toBe('lift_practice');
    expect(a.needed / FOOT).toBeCloseTo(33.93 / 3, 1);
  });

  test('a thin intake makes the pumps cavitate from a flow that is told, and the verdict falls with it', async () => {
    const wide = await check();
    const npsh = 'npsh_required: [[30 gpm, 18 ft], [85 gpm, 27 ft]]';
    const thin = await check({ intake: '1.5 in', npsh });
    expect(wide.pumpVerdict).toBe('meets');
    expect(wide.suction?.pumps[0].cavitatesFrom).toBeUndefined();
    const from = thin.suction?.pumps[0].cavitatesFrom ?? Number.NaN;
    expect(from).toBeLessThan(150 * GALLON_PER_MINUTE);
    expect(thin.atRequiredFlow).toBeUndefined();
    // Far enough past that flow water boils as well, which is then said first.
    expect(['suction_short', 'water_parts']).toContain(thin.refusal?.code);
    expect(thin.pumpVerdict).toBe('falls_short');
    expect(thin.stagings[0].limit?.template).toMatch(/would cavitate|boils/);
    // Just under that flow it has as much as it needs; in so thin an intake the static pressure of fast water ends it.
    const bound = 1;
    const gallons = (from / GALLON_PER_MINUTE).toFixed(4);
    const there = await check({ intake: '1.5 in', npsh, flow: `${gallons} gpm` });
    const [a] = there.suction?.pumps ?? [];
    expect(a.available - a.needed).toBeGreaterThan(-0.001);
    expect(a.available - a.needed).toBeLessThan(bound);
  });

  test('hot water and height take suction away', async () => {
    const head = async (changes: Record<string, string>) =>
      (await check(changes)).suction?.pumps[0].available ?? Number.NaN;
    const cool = await head({});
    expect(await head({ water: '120 degF' })).toBeLessThan(cool);
    expect(await head({ elevation: '8000 ft' })).toBeLessThan(cool);
    // 14.696 less 10.916 psi is 8.7 ft of water at 60 degF.
    expect((cool - (await head({ elevation: '8000 ft' }))) / FOOT).toBeCloseTo(8.73, 1);
  });

  test('four fifths drawn from a tank 3 ft deep takes 2.4 ft of suction head', async () => {
    const [full, drawn] = (await check({ relief: '' })).suction?.tank ?? [];
    expect(full.level).toBe(1);
    expect(drawn.level).toBe(0.2);
    expect(((full.margin ?? Number.NaN) - (drawn.margin ?? Number.NaN)) / FOOT).toBeCloseTo(2.4, 3);
    expect(((drawn.vacuum ?? Number.NaN) - (full.vacuum ?? Number.NaN)) / INCH_OF_MERCURY).toBeCloseTo(
      2.4 / 1.134,
      2,
    );
  });

  test('the lift of 10 ft is worked out for both pumps through the header, and for each alone', async () => {
    const { suction } = await check();
    expect(suction?.lift?.lift).toBeCloseTo(10 * FOOT, 9);
    expect(suction?.lift?.rows.map(({ staging }) => staging)).toEqual(['parallel', 'a', 'b']);
    const [both, a] = suction?.lift?.rows ?? [];
    expect(both.most).toBeGreaterThan(a.most);
    // 10 ft alone are 8.8 inHg; the intake takes more.
    expect((a.vacuum ?? Number.NaN) / INCH_OF_MERCURY).toBeGreaterThan(10 / 1.134);
    expect((suction?.lift?.attainable ?? 0) / FOOT).toBeCloseTo(22.6, 1);
  });
});

describe('pressure control', () => {
  test('the weakest hose sets the highest setting, 90 % of its service test pressure', async () => {
    const { pressureControl } = await check();
    expect((pressureControl?.highest?.pressure ?? 0) / PSI).toBeCloseTo(270, 6);
    expect(pressureControl?.highest?.rule).toBe('part_of_service_test');
  });

  test('a relief valve holds the pressure near its setting with the outlets shut, where without one it climbs to shutoff', async () => {
    const held = (await check()).pressureControl;
    const free = (await check({ relief: '' })).pressureControl;
    expect(held?.device).toMatchObject({ kind: 'relief', set: expect.closeTo(260 * PSI, 3) });
    expect(free?.device).toBeUndefined();
    expect((free?.shut ?? 0) / PSI).toBeGreaterThan(410);
    expect((held?.shut ?? 0) / PSI).toBeLessThan(260 * 1.3);
    // Fully lifted at 286 psi the valve passes 100 gpm; two pumps at rest push more than that through it.
    expect((held?.shut ?? 0) / PSI).toBeGreaterThan(286);
    expect((held?.overSetting ?? 0) / PSI).toBeCloseTo((held?.shut ?? 0) / PSI - 260, 6);
  });

  test('a larger valve rises less over its setting', async () => {
    const rise = async (bore: string) =>
      (await check({ relief: `relief: {opens_at: 260 psi, bore: ${bore}}` })).pressureControl?.overSetting ??
      0;
    expect(await rise('1.5 in')).toBeLessThan(await rise('3/4 in'));
  });

  test('a governor turns the pumps down to its setting with the outlets shut', async () => {
    const { pressureControl } = await check({
      relief: '',
      throttle: 'throttle: {discharge_pressure: 230 psi}',
    });
    expect(pressureControl?.device).toEqual({ kind: 'governor', set: expect.closeTo(230 * PSI, 3) });
    expect((pressureControl?.shut ?? 0) / PSI).toBeCloseTo(230, 1);
  });

  test('series stands above the inlet limit of the second pump, which is said whatever the staging', async () => {
    const { pressureControl } = await check({ relief: '' });
    const [series] = pressureControl?.series ?? [];
    expect(series.second).toBe('pump b');
    // What the first pump makes shut off, 415 psi, and what both do.
    expect(series.shut / PSI).toBeGreaterThan(400);
    expect(series.shut / PSI).toBeLessThan(420);
    expect((series.limit ?? 0) / PSI).toBeCloseTo(150, 6);
    expect(series.discharge / PSI).toBeGreaterThan(820);
  });

  const lay = (surge: string) => `
surge: ${surge}
lay:
  - hose: {inside_diameter: 1.5 in, coefficient: 24, limits: {service_test: 300 psi}}
    length: 300 ft
    rise: -100 ft
  - branch: {k: 0, inside_diameter: 1.5 in}
    to:
      - name: lateral
        steps:
          - hose: {inside_diameter: 1 in, coefficient: 150}
            length: 100 ft
          - nozzle: {kind: smooth_bore, bore: 3/8 in, discharge_coefficient: 0.97}
            name: side
  - nozzle: {kind: smooth_bore, bore: 1/2 in, discharge_coefficient: 0.97}
    name: far
`;

  test('hose below the pumps sees the height too: 100 ft take 43 psi off the setting', async () => {
    const { pressureControl } = await check({ lay: lay('{wave_speed: 200 m/s}') });
    expect((pressureControl?.highest?.pressure ?? 0) / PSI).toBeCloseTo(270 - 43.3, 1);
  });

  test('the surge is Joukowsky with the stated wave speed, and less where the nozzle takes its time', async () => {
    const slammed = (await check({ lay: lay('{wave_speed: 200 m/s}') })).pressureControl?.surges ?? [];
    const far = slammed.find(({ nozzle }) => nozzle === 'far');
    expect(far?.stated).toBe(true);
    expect(far?.rise).toBeCloseTo(999.0 * 200 * (far?.velocity ?? 0), -3);
    // 300 ft out and back at 200 m/s take 0.91 s; in 2 s less than half of the rise is left.
    const slow = (await check({ lay: lay('{wave_speed: 200 m/s, closing_time: 2 s}') })).pressureControl
      ?.surges;
    const slowFar = slow?.find(({ nozzle }) => nozzle === 'far');
    expect((slowFar?.rise ?? 0) / (far?.rise ?? 1)).toBeCloseTo((2 * 300 * FOOT) / 200 / 2, 6);
  });

  test('a wave speed that is not stated is taken as 400 m/s, the upper end of what is recalled for hose', async () => {
    const { pressureControl } = await check({ lay: lay('').replace(/surge:.*\n/, '') });
    const far = pressureControl?.surges.find(({ nozzle }) => nozzle === 'far');
    expect(far?.stated).toBe(false);
    expect(far?.rise).toBeCloseTo(999.0 * 400 * (far?.velocity ?? 0), -3);
  });

  test('a wye takes nothing off the column of water that a nozzle shut in some time stops', async () => {
    const hose = (bore: string, feet: number) =>
      `{hose: {inside_diameter: ${bore}, coefficient: 24}, length: ${feet} ft}`;
    const tip = '{nozzle: {kind: smooth_bore, bore: 1/4 in}, name: tip}';
    const wye = `{branch: {k: 0, inside_diameter: 1.5 in}, to: [{name: side, steps: [${hose('1 in', 50)}, ${tip}]}]}`;
    const rises = async (steps: string) => {
      const surge = '\nsurge: {wave_speed: 400 m/s, closing_time: 4 s}\n';
      const { pressureControl } = await check({ lay: `${surge}lay: [${hose('1.5 in', 1000)}, ${steps}]` });
      return pressureControl?.surges[0];
    };
    const line = await rises(`${hose('1 in', 50)}, ${tip}`);
    const branched = await rises(`${wye}, {cap: true}`);
    expect(branched?.velocity).toBeCloseTo(line?.velocity ?? 0, 2);
    // rho v (2 L / T), 1,050 ft of it.
    expect(branched?.rise).toBeCloseTo((999.0 * (branched?.velocity ?? 0) * 2 * 1050 * FOOT) / 4, -3);
    expect(line?.rise).toBeCloseTo(branched?.rise ?? 0, -3);
  });

  test('narrower line on the way counts by its own velocity', async () => {
    const hose = (bore: string, feet: number) =>
      `{hose: {inside_diameter: ${bore}, coefficient: 24}, length: ${feet} ft}`;
    const surge = '\nsurge: {wave_speed: 400 m/s, closing_time: 4 s}\n';
    const { pressureControl } = await check({
      lay: `${surge}lay: [${hose('1 in', 100)}, ${hose('1.5 in', 200)}, {nozzle: {kind: smooth_bore, bore: 1/4 in}, name: tip}]`,
    });
    const [tip] = pressureControl?.surges ?? [];
    expect(tip.rise).toBeCloseTo((999.0 * tip.velocity * 2 * (200 + 100 * 1.5 ** 2) * FOOT) / 4, -3);
  });

  test('a portable tank ends the column: no pressure passes its surface', async () => {
    const hose = (feet: number) => `{hose: {inside_diameter: 1.5 in, coefficient: 24}, length: ${feet} ft}`;
    const pump = '{pump: {points: [[0 gpm, 200 psi], [50 gpm, 150 psi], [100 gpm, 40 psi]]}}';
    const surge = '\nsurge: {wave_speed: 400 m/s, closing_time: 4 s}\n';
    const { pressureControl } = await check({
      lay: `${surge}lay: [${hose(1000)}, {valve: ball, open: 30 %}, {tank: 500 gal}, ${hose(10)}, ${pump}, ${hose(200)}, {nozzle: {kind: smooth_bore, bore: 1/4 in}, name: tip}]`,
    });
    const [tip] = pressureControl?.surges ?? [];
    expect(tip.rise).toBeCloseTo((999.0 * tip.velocity * 2 * 210 * FOOT) / 4, -3);
  });

  test('shutting one line raises the other, by what is told', async () => {
    const { lineShut } = (await check({ lay: lay('{wave_speed: 200 m/s}') })).pressureControl ?? {};
    expect(lineShut?.nozzle).toBe('far');
    expect(lineShut?.rise).toBeGreaterThan(0);
  });
});

describe('staging', () => {
  test('parallel suits where flow is short, and no other makes it', async () => {
    const { stagingAdvice } = await check();
    expect(stagingAdvice?.best).toBe('parallel');
    expect(stagingAdvice?.verdict).toBe('meets');
  });

  test('series is advised where pressure is short, unless it goes over the limits of its pumps', async () => {
    const { stagingAdvice } = await check({ flow: '30 gpm' });
    expect(stagingAdvice?.verdict).toBe('meets');
    expect(['parallel', 'a', 'b']).toContain(stagingAdvice?.best);
  });

  test('a worn pump is the weaker one, and turning the other down brings both to one share', async () => {
    const { stagingAdvice } = await check({ wear: '8 %', relief: '' });
    const parallel = stagingAdvice?.parallel;
    expect(parallel?.weaker).toBe('pump b');
    expect(parallel?.shutOutAtRest).toBe(true);
    expect((parallel?.shutOutFrom ?? 0) / PSI).toBeCloseTo(415 * 0.92, -1);
    expect(parallel?.shares[1].share).toBeLessThan(0.485);
    expect(parallel?.balance?.pump).toBe('pump a');
    // Both then stand alike: by the affinity laws near the square root of what wear has left.
    expect(parallel?.balance?.throttle).toBeGreaterThan(0.92);
    expect(parallel?.balance?.throttle).toBeLessThan(1);
    const set = await check({
      wear: '8 %',
      relief: '',
      throttle: `throttle: {a: ${((parallel?.balance?.throttle ?? 1) * 100).toFixed(4)} %, b: 100 %}`,
    });
    const shares = set.stagingAdvice?.parallel?.shares ?? [];
    expect(shares[0].share).toBeCloseTo(0.5, 3);
  });

  test('when the first pump of a series stops, less can be drawn through it than it passed', async () => {
    const { stagingAdvice } = await check();
    const [series] = stagingAdvice?.series ?? [];
    expect(series.first).toBe('pump a');
    expect(series.firstStops?.most).toBeLessThan(series.flow);
  });
});

describe('what is printed', () => {
  for (const units of ['us', 'si'] as const) {
    test(`every part has its place in JSON, and no line of the text is wider than 40 columns, in ${units}`, async () => {
      const answer = await check({ wear: '8 %' });
      const json = toJson(answer, units);
      expect(checkJson.parse(json)).toEqual(json);
      const text = textOf(answerDocument(answer, units), { width: 40 });
      for (const title of ['How high it stands', 'Which staging suits', 'Suction at', 'Pressure control'])
        expect(text).toContain(title);
      for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(40);
    });
  }
});
