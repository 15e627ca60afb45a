import { describe, expect, it } from 'vitest';
import type { Caution } from '../../src/study/answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import {
  columnPressure,
  type Document,
  engineOf,
  FREE_CHECK,
  layoutFrom,
  parabola,
  parabolic,
} from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

const A = parabolic(400, 75, 250);
const CHECKED = { discharge: [FREE_CHECK], cooling: { orifice: '1/16 in' } };
/** Hose without limits of its own. */
const HOSE = {
  hose: { inside_diameter: '1.5 in', coefficient: 24, limits: { service_test: '900 psi' } },
  length: '200 ft',
};
const tip = (bore: string): Document => ({ nozzle: { kind: 'smooth_bore', bore }, name: 'tip' });

/** Hose with limits of its own. */
const tested = (limits: Document, rise = '0 ft'): Document => ({
  hose: { inside_diameter: '1.5 in', coefficient: 24, limits },
  length: '200 ft',
  rise,
  name: 'hose',
});

/** An engine whose cautions have nothing to say of. */
const SOUND = engineOf(A, A, { plumbing: CHECKED });

async function checked(document: Document, flow = 120, pressure = 200): Promise<Caution[]> {
  const custom = { flow: `${flow} gpm`, pressure: `${pressure} psi` };
  return (await checkLayout(layoutFrom({ engine: SOUND, typing: { custom }, ...document }))).cautions;
}

async function flowing(document: Document): Promise<Caution[]> {
  return (await operateLayout(layoutFrom({ engine: SOUND, ...document }))).cautions;
}

function only(cautions: readonly Caution[], code: string, at?: string): Caution {
  const found = cautions.filter((one) => one.code === code && (at === undefined || one.at === at));
  if (found.length !== 1)
    throw new Error(
      `${found.length} of ${code} among ${cautions.map((one) => `${one.code} at ${one.at}`).join(', ')}`,
    );
  return found[0];
}

const codes = (cautions: readonly Caution[]) => cautions.map(({ code }) => code);
const psi = (measure: Caution['value']) => (measure?.value as number) / PSI;
const gpm = (measure: Caution['value']) => (measure?.value as number) / GPM;

describe('a nozzle shut fast', () => {
  it('is cautioned where the layout states how, and only where its hose is thrown over its test', async () => {
    const laid = (surge: Document | undefined) =>
      flowing({ lay: [tested({ service_test: '600 psi' }), tip('0.375 in')], surge });
    const found = only(await laid({ wave_speed: '4000 ft/s' }), 'surge_over_hose');
    expect(found).toMatchObject({ at: 'tip', level: 'warn' });
    expect(psi(found.limit)).toBeCloseTo(600, 6);
    expect(psi(found.value)).toBeGreaterThan(600);
    for (const surge of [
      undefined,
      { wave_speed: '300 ft/s' },
      { wave_speed: '4000 ft/s', closing_time: '20 s' },
    ])
      expect(codes(await laid(surge))).not.toContain('surge_over_hose');
  });
});

describe('one pump out', () => {
  it('is told of a nozzle that two pumps serve and one does not', async () => {
    // 5/8 in passes 11.66 sqrt(P): by P = 400 - (150/75^2) Q^2 two pumps hold 210 psi on it and one 86.
    const laid = (from: string) => [
      { nozzle: { kind: 'smooth_bore', bore: '5/8 in', working: { from, to: '300 psi' } }, name: 'tip' },
    ];
    const found = only(await flowing({ lay: laid('100 psi') }), 'nozzle_short_on_one_pump');
    expect(found).toMatchObject({ at: 'tip', level: 'note' });
    expect(Math.abs(psi(found.value) - 86)).toBeLessThan(2);
    expect(psi(found.limit)).toBeCloseTo(100, 6);
    expect(codes(await flowing({ lay: laid('80 psi') }))).not.toContain('nozzle_short_on_one_pump');
    // One that is short with both has lost nothing by it.
    expect(codes(await flowing({ lay: laid('220 psi') }))).not.toContain('nozzle_short_on_one_pump');
  });
});

describe('a sound engine', () => {
  for (const staging of ['parallel', 'series', 'series_reversed', 'a', 'b'] as const) {
    it(`in ${staging} gives rise to no caution but that nothing holds the pressure of its one line, checked or flowing`, async () => {
      const lay = [HOSE, tip('0.45 in')];
      for (const cautions of [await checked({ staging, lay }, 60), await flowing({ staging, lay })]) {
        expect(codes(cautions)).toEqual(['line_shut_rise']);
        const [rise] = cautions;
        expect(rise.level).toBe('note');
        expect(rise.message).toContain('no relief valve or governor');
        expect(psi(rise.limit)).toBeCloseTo(30, 6);
      }
    });
  }

  it('whose pumps work apart gives rise to none', async () => {
    const outlets = { left: { pump: 'a' }, right: { pump: 'b' } };
    const engine = engineOf(A, A, { plumbing: CHECKED, outlets });
    expect(codes(await checked({ engine, staging: 'separate' }, 60))).toEqual([]);
  });

  it('every caution there can be says where, how much, what to do and on what authority', async () => {
    const limits = { inlet: '60 psi', casing: '300 psi' };
    const engine = engineOf(
      parabolic(400, 75, 250, 120, { limits }),
      parabolic(368, 75, 218, 110, { limits }),
    );
    const found = await flowing({
      engine,
      staging: 'parallel',
      lay: [{ ...HOSE, hose: 'forestry-1.5' }, tip('1/8 in')],
    });
    expect(found.length).toBeGreaterThan(4);
    for (const caution of found) {
      expect(caution.at).not.toBe('');
      expect(caution.message).not.toBe('');
      expect(caution.action).not.toBe('');
      expect(caution.source).not.toBe('');
      const text = `${caution.message} ${caution.action}`;
      const filled = { at: '', value: caution.value, limit: caution.limit, ...caution.values };
      for (const [, name] of text.matchAll(/\{(\w+)\}/g)) expect(filled).toHaveProperty(name);
      for (const [, name] of text.matchAll(/\{(\w+)\}/g))
        expect(filled[name as keyof typeof filled], `${caution.code} ${name}`).toBeDefined();
    }
  });
});

describe('a pump shut out', () => {
  const weak = parabolic(368, 75, 218);
  /** One tip of 1/8 in passes so little that the header stands near the stronger pump's shutoff. */
  const lay = [HOSE, tip('1/8 in')];

  it('without a cooling line is a stop, with the pressure of the header that holds its check valve', async () => {
    const engine = engineOf(A, weak, { plumbing: { discharge: [FREE_CHECK] } });
    const answer = await operateLayout(layoutFrom({ engine, lay }));
    const caution = only(answer.cautions, 'pump_shut_out');
    expect(caution).toMatchObject({ level: 'stop', at: 'pump b' });
    expect(gpm(caution.value)).toBeCloseTo(0, 6);
    const header = psi(caution.values?.header as Caution['value']);
    expect(header).toBeCloseTo(parabola(400, 75, 250, answer.pumps[0].flow / GPM), 2);
    expect(header).toBeGreaterThan(368);
  });

  it('with a cooling line is a warning: it gives nothing, though it does not boil', async () => {
    const engine = engineOf(A, weak, { plumbing: CHECKED });
    const caution = only(await flowing({ engine, lay }), 'pump_shut_out');
    expect(caution).toMatchObject({ level: 'warn', at: 'pump b' });
    expect(caution.message).toContain('cooling line');
  });

  it('without a check valve has water driven back through it, and the figure is said to be a guess', async () => {
    const engine = engineOf(A, weak);
    const cautions = await flowing({ engine, lay });
    const caution = only(cautions, 'pump_shut_out');
    expect(caution.level).toBe('stop');
    expect(caution.message).not.toContain('its check valve is held shut');
    expect(gpm(caution.value)).toBeGreaterThan(1);
    expect(codes(cautions)).toContain('no_check_valve');
  });

  it('is found at the required flow of a check as well', async () => {
    const engine = engineOf(A, weak, { plumbing: { discharge: [FREE_CHECK] } });
    const caution = only(await checked({ engine }, 20), 'pump_shut_out');
    expect(caution).toMatchObject({ level: 'stop', at: 'pump b' });
    expect(caution.message).toContain('at the required flow');
  });

  it('is not said of a pump that is only idle with everything shut, relief valve open or not', async () => {
    const engine = engineOf(A, weak, {
      plumbing: { discharge: [FREE_CHECK] },
      relief: { opens_at: '380 psi' },
    });
    const cautions = await checked({ engine, lay: [HOSE, tip('0.45 in')] });
    expect(codes(cautions)).not.toContain('pump_shut_out');
    expect(only(cautions, 'pump_dead_headed').at).toBe('pump b');
  });

  it('is not said of the pump whose own outlet is shut while the other works apart', async () => {
    const outlets = { left: { pump: 'a' }, right: { pump: 'b' } };
    const cautions = await checked({ engine: engineOf(A, A, { outlets }), staging: 'separate' }, 60);
    expect(codes(cautions)).not.toContain('pump_shut_out');
    expect(cautions.every(({ level }) => level !== 'stop')).toBe(true);
  });

  it('is not said of a pump behind a shut valve, which is dead-headed', async () => {
    const valve = { valve: { k: 0.2, inside_diameter: '2 in' }, open: '0 %' };
    const engine = engineOf(A, A, { plumbing: { discharge: { a: [FREE_CHECK], b: [valve, FREE_CHECK] } } });
    const cautions = await flowing({ engine, lay: [HOSE, tip('0.4 in')] });
    expect(codes(cautions)).not.toContain('pump_shut_out');
    expect(cautions.some(({ code, at }) => code === 'pump_dead_headed' && at === 'pump b')).toBe(true);
  });
});

describe('a pump dead-headed', () => {
  it('without a cooling line is told, with everything shut', async () => {
    const cautions = await checked({ engine: engineOf(A) }, 60);
    const caution = only(cautions, 'pump_dead_headed');
    expect(caution).toMatchObject({ level: 'warn', at: 'pump a' });
    expect(gpm(caution.value)).toBeCloseTo(0, 6);
    expect(caution.message).toContain('with the outlets shut');
  });

  it('a booster is told of too', async () => {
    const lay = [HOSE, { pump: parabolic(100, 60, 50), name: 'booster' }, HOSE, tip('0.4 in')];
    const caution = only(await flowing({ lay }), 'pump_dead_headed');
    expect(caution.at).toBe('booster');
    expect(caution.message).toContain('every nozzle');
  });
});

describe('casing and inlet', () => {
  const limited = (limits: Document) => parabolic(400, 75, 250, 120, { limits });

  it('a casing over its limit at shutoff, with the pressure that it stands at', async () => {
    const engine = engineOf(limited({ casing: '390 psi' }));
    const caution = only(await checked({ engine }, 60), 'casing_over_limit');
    expect(caution).toMatchObject({ level: 'stop', at: 'pump a' });
    expect(psi(caution.value)).toBeCloseTo(400, 2);
    expect(psi(caution.limit)).toBeCloseTo(390, 6);
    expect(caution.message).toContain('with the outlets shut');
  });

  it('a casing at its limit exactly is sound', async () => {
    const engine = engineOf(limited({ casing: '400.001 psi' }));
    expect(codes(await checked({ engine }, 60))).not.toContain('casing_over_limit');
  });

  it('in series the second casing stands at both pressures, and its inlet at the first', async () => {
    const limits = { inlet: '150 psi', casing: '600 psi' };
    const engine = engineOf(limited(limits), limited(limits));
    const cautions = await checked({ engine, staging: 'series' }, 60);
    expect(psi(only(cautions, 'casing_over_limit').value)).toBeCloseTo(800, 2);
    expect(only(cautions, 'casing_over_limit').at).toBe('pump b');
    expect(psi(only(cautions, 'inlet_over_limit').value)).toBeCloseTo(400, 2);
    expect(only(cautions, 'inlet_over_limit')).toMatchObject({ at: 'pump b', level: 'stop' });
  });

  it('reversed it is the other pump', async () => {
    const engine = engineOf(limited({ inlet: '150 psi' }), limited({ inlet: '150 psi' }));
    const cautions = await checked({ engine, staging: 'series_reversed' }, 60);
    expect(only(cautions, 'inlet_over_limit').at).toBe('pump a');
  });

  it('each hazard is told once a place, by its worst state', async () => {
    const engine = engineOf(limited({ casing: '100 psi' }));
    const caution = only(await checked({ engine, lay: [HOSE, tip('0.4 in')] }, 60), 'casing_over_limit');
    expect(psi(caution.value)).toBeCloseTo(400, 2);
  });

  it('a booster has its limits too', async () => {
    const booster = { pump: parabolic(100, 60, 50, 80, { limits: { inlet: '200 psi' } }), name: 'booster' };
    const caution = only(await flowing({ lay: [HOSE, booster, HOSE, tip('0.4 in')] }), 'inlet_over_limit');
    expect(caution.at).toBe('booster');
  });
});

describe('hose', () => {
  const engine = engineOf(A);

  it('above its service test pressure is a stop', async () => {
    const lay = [tested({ service_test: '300 psi' }), tip('0.4 in')];
    const caution = only(await flowing({ engine, lay }), 'hose_over_service_test');
    expect(caution).toMatchObject({ level: 'stop', at: 'hose' });
    expect(psi(caution.value)).toBeCloseTo(400, 2);
    expect(psi(caution.limit)).toBeCloseTo(300, 6);
    expect(caution.message).toContain('every nozzle');
  });

  it('above 90 % of it is a warning: 400 of 420 psi', async () => {
    const lay = [tested({ service_test: '420 psi' }), tip('0.4 in')];
    const caution = only(await flowing({ engine, lay }), 'hose_near_service_test');
    expect(caution).toMatchObject({ level: 'warn', at: 'hose' });
    expect(psi(caution.limit)).toBeCloseTo(378, 6);
  });

  it('that is over its limit in one state is not told of again as near it in another', async () => {
    // Some 365 psi with the nozzle open, over 90 % of 390; 400 with it shut.
    const lay = [tested({ service_test: '390 psi' }), tip('0.25 in')];
    const cautions = await flowing({ engine, lay });
    expect(codes(cautions).filter((code) => code.startsWith('hose'))).toEqual(['hose_over_service_test']);
  });

  it('at 90 % or below is sound: 400 of 450 psi', async () => {
    const lay = [tested({ service_test: '450 psi' }), tip('0.4 in')];
    expect(codes(await flowing({ engine, lay })).filter((code) => code.startsWith('hose'))).toEqual([]);
  });

  it('above its working pressure is a stop', async () => {
    const lay = [tested({ working: '350 psi' }), tip('0.4 in')];
    const caution = only(await flowing({ engine, lay }), 'hose_over_working_pressure');
    expect(caution.level).toBe('stop');
    expect(psi(caution.limit)).toBeCloseTo(350, 6);
  });

  it('downhill is judged at its foot', async () => {
    const lay = [tested({ service_test: '430 psi' }, '-100 ft'), tip('0.4 in')];
    const caution = only(await flowing({ engine, lay }), 'hose_over_service_test');
    expect(psi(caution.value)).toBeCloseTo(400 + columnPressure(100), 1);
  });

  it('alike lengths are counted, not listed', async () => {
    const lay = [
      { repeat: 5, steps: [{ ...tested({ service_test: '300 psi' }), name: 'length {n}' }] },
      tip('0.4 in'),
    ];
    const caution = only(await flowing({ engine, lay }), 'hose_over_service_test');
    expect(caution.message).toContain('4 more');
  });

  it('a relief valve below its limit makes it sound', async () => {
    const lay = [tested({ service_test: '400 psi' }), tip('0.4 in')];
    const relieved = engineOf(A, undefined, { relief: { opens_at: '320 psi' } });
    expect(codes(await flowing({ engine: relieved, lay })).filter((code) => code.startsWith('hose'))).toEqual(
      [],
    );
  });

  it('past a booster is judged with what the booster adds', async () => {
    const booster = { pump: parabolic(150, 60, 100), name: 'booster' };
    const lay = [HOSE, booster, tested({ service_test: '500 psi' }), tip('0.4 in')];
    const caution = only(await flowing({ engine, lay }), 'hose_over_service_test');
    expect(psi(caution.value)).toBeCloseTo(550, 2);
  });
});

describe('no check valve', () => {
  it('is told of each pump in parallel that has none', async () => {
    const engine = engineOf(A, A, { plumbing: { discharge: { a: [FREE_CHECK], b: [] } } });
    expect(only(await checked({ engine }), 'no_check_valve')).toMatchObject({ level: 'warn', at: 'pump b' });
  });

  for (const staging of ['series', 'a'] as const) {
    it(`is nothing in ${staging}`, async () => {
      const engine = engineOf(A, A);
      expect(codes(await checked({ engine, staging }, 60))).not.toContain('no_check_valve');
    });
  }

  for (const [what, step] of [
    ['an appliance that is one', { appliance: { loss: '1 psi', one_way: true } }],
    [
      'a fitting that is one',
      {
        pipe: { inside_diameter: '2 in', hazen_williams: 140 },
        length: '1 ft',
        fittings: { swing_check: 1 },
      },
    ],
  ] as const) {
    it(`${what} will do`, async () => {
      const engine = engineOf(A, A, { plumbing: { discharge: [step] } });
      expect(codes(await checked({ engine }))).not.toContain('no_check_valve');
    });
  }
});

describe('curves', () => {
  it('a drooping one in parallel is a warning, alone it is none', async () => {
    const points = [
      ['0 gpm', '300 psi'],
      ['20 gpm', '320 psi'],
      ['60 gpm', '280 psi'],
      ['90 gpm', '200 psi'],
    ];
    const engine = engineOf({ points }, A, { plumbing: CHECKED });
    expect(only(await checked({ engine }, 100, 100), 'drooping_curve')).toMatchObject({
      level: 'warn',
      at: 'pump a',
    });
    expect(codes(await checked({ engine, staging: 'a' }, 60))).not.toContain('drooping_curve');
  });

  it('one that is run past its end is a warning, with the flow and where it ends', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 60));
    const lay = [HOSE, tip('1/2 in')];
    const answer = await operateLayout(layoutFrom({ engine, lay }));
    const caution = only(await checked({ engine, lay }, 40), 'pump_off_curve');
    expect(caution).toMatchObject({ level: 'warn', at: 'pump a' });
    expect(caution.value?.value).toBe(answer.pumps[0].flow);
    expect(gpm(caution.limit)).toBeCloseTo(60, 6);
  });

  it('at part throttle ends earlier', async () => {
    const engine = engineOf(parabolic(400, 75, 250, 60));
    const caution = only(
      await flowing({ engine, throttle: '80 %', lay: [HOSE, tip('1/2 in')] }),
      'pump_off_curve',
    );
    expect(gpm(caution.limit)).toBeCloseTo(48, 6);
  });

  it('one short of power on rows of efficiency too steep to hold is a warning, with the flows between which', async () => {
    const steep = (rated: string, last: string) =>
      engineOf({
        ...A,
        power: { rated, lugging: 'flat_torque' },
        efficiency: [
          ['36 gpm', '70 %'],
          ['72 gpm', last],
          ['108 gpm', '60 %'],
        ],
      });
    const lay = [tip('0.34 in')];
    const caution = only(await flowing({ engine: steep('14 hp', '15 %'), lay }), 'steep_efficiency');
    expect(caution).toMatchObject({ level: 'warn', at: 'pump a' });
    // The power of those rows grows faster than the square of flow from about 45 gpm; head rises with flow up to 108 gpm.
    expect(gpm(caution.values?.from as Caution['value'])).toBeGreaterThan(36);
    expect(gpm(caution.values?.from as Caution['value'])).toBeLessThan(60);
    expect(gpm(caution.values?.to as Caution['value'])).toBeCloseTo(108, 6);
    const codesOf = async (engine: Document) => codes(await flowing({ engine, lay }));
    expect(await codesOf(steep('14 hp', '65 %'))).not.toContain('steep_efficiency');
    expect(await codesOf(steep('90 hp', '15 %'))).not.toContain('steep_efficiency');
  });

  it('one that does not start at no flow has a guessed shutoff', async () => {
    const points = [
      ['20 gpm', '300 psi'],
      ['60 gpm', '280 psi'],
      ['90 gpm', '200 psi'],
    ];
    const engine = engineOf({ points });
    const caution = only(await checked({ engine }, 60), 'shutoff_not_measured');
    expect(caution).toMatchObject({ level: 'note', at: 'pump a' });
    expect(gpm(caution.limit)).toBeCloseTo(20, 6);
  });
});

describe('an inlet below vapour pressure', () => {
  const suction = [{ hose: { inside_diameter: '2 in', coefficient: 6 }, length: '20 ft' }];

  it('is a stop: the flow cannot be had', async () => {
    const engine = engineOf(parabolic(400, 150, 250));
    const supply = { draft: { lift: '25 ft', suction } };
    const caution = only(await checked({ engine, supply }, 150, 100), 'inlet_below_vapour');
    expect(caution).toMatchObject({ level: 'stop', at: 'pump a' });
    // 0.256 psi of vapour at 60 degF (steam tables) less 14.696 of air.
    expect(psi(caution.limit)).toBeCloseTo(0.256 - 14.696, 2);
    // What the equations give there, 15.1 psi below the air, is no pressure of water and is not told.
    expect(caution.value).toBeUndefined();
    expect(caution.message).not.toContain('{value}');
  });

  it('is silent at a lift of 10 ft', async () => {
    const engine = engineOf(parabolic(400, 150, 250), undefined, {
      plumbing: { cooling: { orifice: '1/16 in' } },
    });
    const supply = { draft: { lift: '10 ft', suction } };
    expect(codes(await checked({ engine, supply }, 150, 100))).toEqual([]);
  });

  it('comes sooner higher up', async () => {
    const engine = engineOf(parabolic(400, 150, 250));
    const supply = { draft: { lift: '15 ft', suction } };
    const at = async (elevation: string) =>
      codes(await checked({ engine, supply, site: { elevation } }, 150, 100));
    expect(await at('0 ft')).not.toContain('inlet_below_vapour');
    expect(await at('9,000 ft')).toContain('inlet_below_vapour');
  });
});

describe('a nozzle that is laid for a pressure', () => {
  for (const { laidForNone, ...nozzle } of [
    { nozzle: { kind: 'smooth_bore', bore: '0.45 in' }, name: 'tip', laidForNone: 50 },
    { nozzle: { kind: 'sharp_orifice', bore: '0.5 in' }, name: 'tip', laidForNone: undefined },
  ]) {
    it(`${nozzle.nozzle.kind}: is short below what it is laid for, by the rule of every other question`, async () => {
      const far = { ...HOSE, length: '9,000 ft' };
      const unstated = (await flowing({ lay: [far, nozzle] })).find(({ code }) => code === 'nozzle_starved');
      // A bore of a hand line is laid for 50 psi; of an orifice of a test nobody asks for any.
      expect(unstated?.limit && Math.round(psi(unstated.limit))).toBe(laidForNone);
      const caution = only(
        await flowing({ lay: [far, { ...nozzle, pressure: '600 psi' }] }),
        'nozzle_starved',
      );
      expect(caution.at).toBe('tip');
      expect(psi(caution.limit)).toBeCloseTo(600, 6);
    });
  }
});

describe('one fault of suction', () => {
  /** Needs more than a flooded suction gives at any flow. */
  const thirsty = parabolic(400, 75, 250, 120, { npsh_required: [['10 gpm', '60 ft']] });
  const needy = (cautions: readonly Caution[], at: string) =>
    cautions
      .filter(({ at: place }) => place === at)
      .map(({ code }) => code)
      .filter((code) => /suction|npsh|vapour|lift/.test(code));

  it('is told once of a pump short of what its file asks for, and stops', async () => {
    const engine = engineOf(A, thirsty, { plumbing: CHECKED });
    for (const cautions of [
      await checked({ engine, lay: [HOSE, tip('0.45 in')] }),
      await flowing({ engine, lay: [HOSE, tip('0.45 in')] }),
    ]) {
      expect(needy(cautions, 'pump b')).toEqual(['suction_short']);
      expect(only(cautions, 'suction_short').level).toBe('stop');
    }
  });

  it('is told as boiling where the water would boil, and as nothing else', async () => {
    const engine = engineOf(parabolic(400, 150, 250, 200, { npsh_required: [['10 gpm', '20 ft']] }));
    const suction = [{ hose: { inside_diameter: '2 in', coefficient: 6 }, length: '20 ft' }];
    const cautions = await checked({ engine, supply: { draft: { lift: '25 ft', suction } } }, 150, 100);
    expect(needy(cautions, 'pump a')).toEqual(['inlet_below_vapour']);
  });

  it('is told of the lift alone where that is what is too much by the same rule', async () => {
    const suction = [{ hose: { inside_diameter: '4 in', coefficient: 0.2 }, length: '20 ft' }];
    const supply = { draft: { lift: '24 ft', suction } };
    const cautions = await checked({ engine: engineOf(A), supply }, 60);
    expect(codes(cautions).filter((code) => /suction|vapour|lift/.test(code))).toEqual([
      'lift_over_attainable',
    ]);
  });
});

describe('a thin margin', () => {
  const engine = engineOf(A, undefined, { plumbing: { cooling: { orifice: '1/16 in' } } });
  /** The cautions of a check whose margin is just so, psi. */
  const withMargin = async (margin: number) => {
    const custom = { flow: '60 gpm', pressure: '300 psi' };
    const { atRequiredFlow } = await checkLayout(layoutFrom({ engine, typing: { custom } }));
    const made = (atRequiredFlow?.pressure as number) / PSI;
    return checked({ engine }, 60, made - margin);
  };

  for (const margin of [2, -2, 3.9]) {
    it(`of ${margin} psi is less than a test gauge may be out by, 4 psi: a warning`, async () => {
      const caution = only(await withMargin(margin), 'margin_within_error');
      expect(caution.level).toBe('warn');
      expect(psi(caution.value)).toBeCloseTo(margin, 2);
      expect(psi(caution.limit)).toBeCloseTo(4, 6);
    });
  }

  for (const margin of [4.1, -7, 9.5]) {
    it(`of ${margin} psi is less than a prediction may be out by, 3.4 % of the pressure: a note`, async () => {
      const caution = only(await withMargin(margin), 'margin_within_error');
      expect(caution.level).toBe('note');
      expect(psi(caution.limit)).toBeCloseTo(0.034 * (300 - margin), 1);
    });
  }

  it('of 20 psi is silent', async () => {
    expect(codes(await withMargin(20))).not.toContain('margin_within_error');
  });

  it('a reading past 400 psi lies past a common gauge', async () => {
    const strong = engineOf(parabolic(600, 150, 500, 220));
    const { cautions, testOrifice } = await checkLayout(
      layoutFrom({ engine: strong, typing: { scheme: 'nwcg', class: 'engine-3' } }),
    );
    const caution = only(cautions, 'past_the_gauge');
    expect(caution.value?.value).toBe(testOrifice?.reading);
    expect(psi(caution.limit)).toBeCloseTo(400, 6);
  });
});

describe('their order', () => {
  it('is stop, warn, note, and the worst first among alike', async () => {
    const limits = { inlet: '60 psi', casing: '300 psi' };
    const engine = engineOf(
      parabolic(400, 75, 250, 120, { limits }),
      parabolic(400, 75, 250, 120, { limits }),
    );
    const found = await checked({ engine, staging: 'series' }, 60);
    const order = { stop: 0, warn: 1, note: 2 };
    const levels = found.map(({ level }) => order[level]);
    expect(levels).toEqual([...levels].sort());
    expect(found[0]).toMatchObject({ code: 'inlet_over_limit', at: 'pump b' });
  });
});
