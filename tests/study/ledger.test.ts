import { describe, expect, test } from 'vitest';
import type { LedgerLine } from '../../src/study/engine-answer.js';
import { changed, checked, type Loose, sound } from '../caution/sound.js';

const PSI = 6894.757293168361;
const FOOT = 0.3048;

/** Cautions that a line of the ledger past its limit shows up as; hose has one for each of its limits, suction for each degree. */
const SPEAKS = (code: string) =>
  code === 'hose_near_limit'
    ? /^hose_/
    : code === 'suction_short'
      ? /^(suction_short|inlet_below_vapour)$/
      : new RegExp(`^${code}$`);

const VARIANTS: [string, (d: Loose) => void][] = [
  ['as it is', () => {}],
  ['in series', (d) => Object.assign(d, { staging: 'series' })],
  [
    'in series without relief',
    (d) => Object.assign(d, { staging: 'series', engine: { ...d.engine, relief: undefined } }),
  ],
  ['with a small dial', (d) => Object.assign(d.engine.plumbing.manifold[1], { range: '300 psi' })],
  ['with weak hose', (d) => Object.assign(d.lay[0].hose.limits, { service_test: '350 psi' })],
  ['with hose of a working pressure', (d) => Object.assign(d.lay[0].hose.limits, { working: '250 psi' })],
  ['on a weak casing', (d) => Object.assign(d.engine.pumps.a.model.limits, { casing: '390 psi' })],
  [
    'on a weak seal in series',
    (d) => {
      d.staging = 'series';
      d.engine.pumps.b.model.limits.inlet = '100 psi';
    },
  ],
  [
    'short of suction',
    (d) => Object.assign(d.engine.pumps.b.model, { npsh_required: [['40 gpm', '40 ft']] }),
  ],
  [
    'with water that boils in the suction',
    (d) => {
      d.engine.plumbing.suction[0].pipe.inside_diameter = '1 in';
      d.engine.plumbing.suction[0].length = '20 ft';
    },
  ],
  ['overweight', (d) => Object.assign(d.engine, { gross_weight_rating: '15000 lb' })],
  ['with a low relief', (d) => Object.assign(d.engine.relief, { opens_at: '250 psi' })],
];

describe('the ledger', () => {
  for (const [name, change] of VARIANTS) {
    test(`${name}: a line is past its limit just where a caution speaks of it`, async () => {
      const { ledger, cautions } = await checked(changed(change));
      const past = ledger.lines.filter(({ margin }) => margin < 0);
      for (const { code, at } of past) {
        const heard = cautions.some(
          (one) => SPEAKS(code).test(one.code) && (code === 'hose_near_limit' || one.at === at),
        );
        expect(heard, `${code} at ${at}`).toBe(true);
      }
      const known = new Set(ledger.lines.map(({ code }) => code));
      for (const caution of cautions) {
        const lines = [...known].filter((code) => SPEAKS(code).test(caution.code));
        if (lines.length === 0) continue;
        expect(
          past.some(({ code }) => lines.includes(code)),
          caution.code,
        ).toBe(true);
      }
      const worst = ledger.lines[0].margin;
      expect(worst < 0).toBe(past.length > 0);
    });
  }

  test('has every kind of limit, each with its source, tightest first', async () => {
    const { lines, of } = (await checked(sound())).ledger;
    expect(lines).toHaveLength(of);
    const kinds = new Set(lines.map(({ limit }) => limit.split(',')[0]));
    for (const kind of [
      'casing',
      'inlet and seal',
      'engine power',
      'suction head',
      'hose',
      'gauge range',
      'setting',
      'relief setting',
      'axle',
      'gross weight',
    ])
      expect([...kinds]).toContain(kind);
    for (let i = 1; i < lines.length; i++)
      expect(lines[i].margin).toBeGreaterThanOrEqual(lines[i - 1].margin);
    for (const { source } of lines) expect(source.length).toBeGreaterThan(0);
  });

  test('shows the three tightest unless all are asked for', async () => {
    const { ledger } = await checked(sound(), 'tightest');
    expect(ledger.lines).toHaveLength(3);
    expect(ledger.of).toBeGreaterThan(3);
    const all = (await checked(sound())).ledger.lines;
    expect(ledger.lines).toEqual(all.slice(0, 3));
  });

  test('the casing at work and in the worst case is what the gauges there read', async () => {
    const answer = await checked(sound());
    const line = answer.ledger.lines.find(
      ({ code, at }) => code === 'casing_over_limit' && at === 'pump a',
    ) as LedgerLine;
    expect(line.operating).toBeCloseTo(answer.pumps[0].dischargePressure, 0);
    // Shut off at 400 psi by the curve, less the cooling line's flow.
    expect(line.worst / PSI).toBeGreaterThan(395);
    expect(line.worst / PSI).toBeLessThan(402);
    expect(line.margin).toBeCloseTo(1 - line.worst / (900 * PSI), 9);
  });

  test('a relief setting is held against the required flow alone, and says so', async () => {
    const { ledger } = await checked(sound());
    const line = ledger.lines.find(({ code }) => code === 'relief_opens');
    expect(line?.limit).toBe('relief setting, which is to stay shut at the required flow');
    expect(line?.worst).toBe(line?.operating);
  });

  test('suction is held against every case: a lay that draws more than the rating is the worst of it', async () => {
    const { ledger } = await checked(
      changed((d) => {
        d.typing.custom.flow = '20 gpm';
        d.lay[1].nozzle.bore = '5/8 in';
      }),
    );
    const line = ledger.lines.find(({ code, at }) => code === 'suction_short' && at === 'pump a');
    expect(line?.worstWhen).toBe('with the lay as it stands');
    expect(line?.allowed.value).toBeGreaterThan(5 * FOOT);
  });
});
