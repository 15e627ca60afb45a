import { describe, expect, it } from 'vitest';
import { whyImpossible } from '../../src/limits/impossible.js';
import { toJson } from '../../src/report/json.js';
import { requireDocument } from '../../src/report/require-document.js';
import { textOf } from '../../src/report/text.js';
import { Throttled } from '../../src/study/governor.js';
import { operateLayout } from '../../src/study/operation.js';
import { reachOf } from '../../src/study/reach.js';
import { requireOf } from '../../src/study/require.js';
import { Rig } from '../../src/study/rig.js';
import { engine, FOOT, GPM, layoutOf, PSI } from './support.js';

const HOSE = '{inside_diameter: 1.5 in, coefficient: 24}';
const AUTOMATIC = '{kind: automatic, pressure: 100 psi, flow_from: 20 gpm, flow_to: 60 gpm}';

describe('an automatic nozzle', () => {
  const layout = layoutOf(
    `${engine()}lay:\n  left:\n    - {hose: ${HOSE}, length: 500 ft}\n    - {nozzle: ${AUTOMATIC}, name: far}\n`,
  );

  it('has what it is laid for where it begins to regulate', async () => {
    const { needs, verdict, totalLeast } = await asked(layout);
    expect(needs[0].pressure / PSI).toBeCloseTo(99, 9);
    expect(verdict).toBe('meets');
    expect(totalLeast / GPM).toBeCloseTo(20, 3);
  });

  it('holds a pressure and not a head, so that warm water makes it no shorter', async () => {
    const warm = { ...layout, site: { ...layout.site, water_temperature: 305 } };
    const { totalLeast } = await asked(warm);
    expect(totalLeast / GPM).toBeCloseTo(20, 3);
  });

  it('is reached for as far as it regulates: 5 times as far as for the middle of its range', async () => {
    const { stagings } = await reachOf(layout, { grades: [0], laterals: [0] });
    const cell = stagings.find(({ staging }) => staging === 'a')?.rows[0].cells[0];
    // At its 20 gpm 1-1/2 in hose of C 24 loses 0.96 psi in 100 ft, so that 292 of 391 psi are lost in some 30,000 ft.
    expect((cell?.length ?? 0) / FOOT).toBeGreaterThan(19_000);
  });

  async function asked(one: typeof layout) {
    const answer = await requireOf(one);
    const own = answer.stagings.find(({ staging }) => staging === 'parallel');
    return { ...answer, totalLeast: own?.totalFlow ?? 0 };
  }
});

it('a large tip is a master stream at 80 psi, a small one a hand line at 50', async () => {
  const big = '{points: [[0 gpm, 200 psi], [800 gpm, 180 psi], [1500 gpm, 100 psi]]}';
  const tip = (bore: string) =>
    layoutOf(
      `${engine('', big)}lay:\n  left:\n    - {nozzle: {kind: smooth_bore, bore: ${bore}}, name: gun}\n`,
    );
  const need = async (bore: string) => (await requireOf(tip(bore))).needs[0];
  expect((await need('1-3/8 in')).pressure / PSI).toBeCloseTo(80, 9);
  expect((await need('2 in')).source).toContain('master stream');
  expect((await need('1-1/4 in')).pressure / PSI).toBeCloseTo(50, 9);
  expect((await need('35 mm')).pressure / PSI).toBeCloseTo(80, 9);
});

const FOG = '{kind: fog, flow: 60 gpm, pressure: 50 psi}';
const RIDGE = layoutOf(`${engine()}terrain: [[0 ft, 0 ft], [400 ft, 250 ft], [800 ft, -150 ft]]
lay:
  left:
    - {hose: ${HOSE}, length: 400 ft, rise: 250 ft}
    - {hose: ${HOSE}, length: 400 ft, rise: -400 ft}
    - {nozzle: ${FOG}, name: far}
`);
const DOWNHILL = layoutOf(`${engine()}lay:
  left:
    - {hose: ${HOSE}, length: 300 ft, rise: -300 ft}
    - {nozzle: {kind: fog, flow: 60 gpm, pressure: 50 psi}, name: far}
`);

describe('no CAN is said of a state that cannot be', () => {
  for (const [what, layout] of [
    ['over a ridge', RIDGE],
    ['300 ft downhill', DOWNHILL],
  ] as const) {
    it(`${what} it is the least throttle at which the whole state can be`, async () => {
      const answer = await requireOf(layout);
      const rig = await Rig.of({ ...layout, throttle: { by: 'speed', a: 1, b: 1 } });
      const able = answer.stagings.filter(({ verdict }) => verdict === 'meets');
      expect(able.length).toBeGreaterThan(0);
      for (const { staging, throttle, worst } of able) {
        const throttled = new Throttled(rig, staging);
        expect(whyImpossible(throttled.at(throttle)), staging).toBeUndefined();
        expect(worst.margin).toBeGreaterThanOrEqual(0);
        const less = throttled.at(throttle * 0.995);
        const stillServes = less.totalPressure(less.assembly.nozzles[0].inlet) >= 50 * PSI;
        // Less throttle is either too little for the nozzle or a state that cannot be.
        expect(stillServes && whyImpossible(less) === undefined, staging).toBe(false);
        const fed = await operateLayout({
          ...layout,
          staging,
          throttle: { by: 'speed', a: throttle, b: throttle },
        });
        expect(fed.impossible).toEqual([]);
      }
    });
  }

  it('where no throttle makes it, the answer is no, with why and without a figure', async () => {
    // The curve ends at 15 gpm, and the nozzle asks for 60.
    const short = layoutOf(
      `${engine('', '{points: [[0 gpm, 400 psi], [10 gpm, 395 psi], [15 gpm, 390 psi]]}')}lay:
  left:
    - {hose: ${HOSE}, length: 100 ft}
    - {nozzle: ${FOG}, name: far}
`,
    );
    const answer = await requireOf(short);
    expect(answer.verdict).toBe('falls_short');
    expect(answer.stagings.every(({ impossible }) => impossible?.code === 'past_curve')).toBe(true);
    const json = toJson(answer, 'us');
    for (const staging of json.stagings) {
      expect(staging.throttle).toBeNull();
      expect(staging.worst).toBeNull();
      expect(staging.pumps).toEqual([]);
      expect(staging.impossible?.reason).toContain('where its curve ends');
    }
    const text = textOf(requireDocument(answer, 'us'));
    expect(text).toMatch(/^CANNOT serve the nozzle/m);
    expect(text).not.toMatch(/CAN serve/);
  });

  it('a window of throttles below the end of a curve is found', async () => {
    // Uphill a pump moves the more of its curve the faster it turns: full throttle is past its end, less is not.
    const window = layoutOf(
      `${engine('', '{points: [[0 gpm, 400 psi], [40 gpm, 350 psi], [62 gpm, 300 psi]]}')}staging: a
lay:
  left:
    - {hose: ${HOSE}, length: 300 ft, rise: 200 ft}
    - {nozzle: {kind: fog, flow: 40 gpm, pressure: 75 psi}, name: far}
`,
    );
    const answer = await requireOf(window);
    const own = answer.stagings.find(({ staging }) => staging === 'a');
    expect(own?.verdict).toBe('meets');
    expect(own?.throttle).toBeLessThan(1);
    expect(own?.impossible).toBeUndefined();
  });
});
