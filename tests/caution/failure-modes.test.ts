import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { figuresIn } from '../../src/report/figures.js';
import { cautionText } from '../../src/report/sentence.js';
import type { Caution } from '../../src/study/answer.js';
import { changed, checked, hose, type Loose, nozzle, operated, sound } from './sound.js';

/**
 * The failure modes that builders, crews and inspectors are warned of, each provoked by a layout of its own that differs from a
 * sound one in that alone. The sound one gets no caution at all.
 */

/** In series without a relief valve, nothing laid, and pump b with limits of its own. */
function inSeries(document: Loose, limits: Record<string, string>): void {
  document.staging = 'series';
  document.engine.relief = undefined;
  document.lay = [];
  Object.assign(document.engine.pumps.b.model.limits, limits);
}

const MODES: {
  mode: string;
  code: string;
  at?: string;
  change: (document: Loose) => void;
  laid?: boolean;
  /** Looked for beside the lay alone: what a burst hose or a lost pump would make of it. */
  besideLay?: boolean;
}[] = [
  {
    mode: '1 the weaker pump in parallel is shut out behind its check valve',
    code: 'pump_shut_out',
    at: 'pump b',
    change: (d) => {
      d.throttle = { a: '100 %', b: '70 %' };
      d.engine.plumbing.cooling = undefined;
    },
  },
  {
    mode: '1 both pumps are dead-headed with every nozzle shut',
    code: 'pump_dead_headed',
    change: (d) => {
      d.engine.plumbing.cooling = undefined;
    },
  },
  {
    mode: '1 a cooling line too thin lets a pump scald',
    code: 'pump_runs_hot',
    change: (d) => {
      d.engine.plumbing.cooling = { orifice: '3/64 in' };
      d.engine.relief = undefined;
    },
  },
  {
    mode: '2 one cooling line for both, at the manifold',
    code: 'cooling_behind_check',
    change: (d) => {
      d.engine.plumbing.cooling.at = 'manifold';
    },
  },
  {
    mode: '2 cooling lines behind the check valves',
    code: 'cooling_behind_check',
    change: (d) => {
      d.engine.plumbing.cooling.at = 'discharge';
    },
  },
  {
    mode: '2 a cooling line that is shut',
    code: 'cooling_shut',
    change: (d) => {
      d.engine.plumbing.cooling.state = 'shut';
    },
  },
  {
    mode: '3 parallel where only series has the pressure',
    code: 'wrong_staging',
    change: (d) => {
      d.typing = { custom: { flow: '80 gpm', pressure: '500 psi' } };
      d.engine.relief = undefined;
      d.lay = [];
    },
  },
  {
    mode: '3 series where only parallel has the flow',
    code: 'wrong_staging',
    change: (d) => {
      d.typing = { custom: { flow: '160 gpm', pressure: '200 psi' } };
      d.staging = 'series';
      d.lay = [];
    },
  },
  {
    mode: '4 the inlet of the second pump in series over its limit',
    code: 'inlet_over_limit',
    at: 'pump b',
    change: (d) => inSeries(d, { inlet: '150 psi' }),
  },
  {
    mode: '4 a casing over its limit in series',
    code: 'casing_over_limit',
    at: 'pump b',
    change: (d) => inSeries(d, { casing: '600 psi' }),
  },
  {
    mode: '4 hose over its service test in series',
    code: 'hose_over_service_test',
    change: (d) => {
      d.staging = 'series';
      d.engine.relief = undefined;
    },
  },
  {
    mode: '4 a gauge past its dial',
    code: 'gauge_past_range',
    at: 'panel',
    change: (d) => {
      d.engine.plumbing.manifold[1].range = '300 psi';
    },
  },
  {
    mode: '4 a relief valve where no water comes to it, with an outlet for each pump',
    code: 'relief_not_in_use',
    change: (d) => {
      d.staging = 'separate';
      d.engine.outlets = { left: { pump: 'a' }, right: { pump: 'b' } };
      d.typing = { custom: { flow: '60 gpm', pressure: '200 psi' } };
      d.lay = {
        left: d.lay,
        right: [
          { hose: hose(), length: '300 ft' },
          { ...nozzle(), name: 'other tip' },
        ],
      };
    },
    laid: true,
  },
  {
    mode: '12 a relief valve too small for what the pumps push through it',
    code: 'rise_over_setting',
    at: 'the relief valve',
    change: (d) => {
      d.engine.relief = { opens_at: '340 psi', flow: '30 gpm' };
    },
    laid: true,
  },
  {
    mode: '12 a line shut on a crew that shares its trunk',
    code: 'line_shut_rise',
    change: (d) => {
      d.lay = twoLines();
    },
    laid: true,
  },
  {
    mode: '5 a pump without a check valve',
    code: 'no_check_valve',
    at: 'pump b',
    change: (d) => {
      const { discharge } = d.engine.plumbing;
      d.engine.plumbing.discharge = { a: discharge, b: [discharge[0]] };
    },
  },
  {
    mode: '6 a line from the tank that is too thin',
    code: 'suction_short',
    change: (d) => {
      d.engine.plumbing.suction[0].pipe.inside_diameter = '1.25 in';
      d.engine.plumbing.suction[0].length = '28 ft';
    },
  },
  {
    mode: '6 a line from the tank so thin that the water would boil in it',
    code: 'inlet_below_vapour',
    change: (d) => {
      d.engine.plumbing.suction[0].pipe.inside_diameter = '1 in';
      d.engine.plumbing.suction[0].length = '20 ft';
    },
  },
  {
    mode: '6 a tank that starves the pumps as it empties',
    code: 'suction_short',
    change: (d) => {
      d.engine.tank.depth = '10 ft';
      for (const name of ['a', 'b']) d.engine.pumps[name].model.npsh_required = [['40 gpm', '31 ft']];
    },
  },
  {
    mode: '7 a pass at this height that fails a little higher',
    code: 'thin_air',
    change: (d) => {
      for (const name of ['a', 'b']) {
        d.engine.pumps[name].model.power = { rated: '17.6 hp', aspiration: 'natural', fuel: 'gasoline' };
      }
      d.typing = { custom: { flow: '120 gpm', pressure: '256 psi' } };
    },
  },
  {
    mode: '7 a pass on a cool day that fails on a hot one',
    code: 'hot_day',
    change: (d) => {
      for (const name of ['a', 'b']) {
        d.engine.pumps[name].model.power = { rated: '17.6 hp', aspiration: 'natural', fuel: 'diesel' };
      }
      d.typing = { custom: { flow: '120 gpm', pressure: '256 psi' } };
    },
  },
  {
    mode: '7 a pass of engines whose power no file gives, that fails a little higher if they were at their limit',
    code: 'thin_air',
    change: (d) => {
      for (const name of ['a', 'b']) d.engine.pumps[name].model.power = undefined;
      d.typing = { custom: { flow: '120 gpm', pressure: '330 psi' } };
    },
  },
  {
    mode: '7 a pass of engines whose power no file gives, that fails on a hot day if they were at their limit',
    code: 'hot_day',
    change: (d) => {
      for (const name of ['a', 'b']) d.engine.pumps[name].model.power = undefined;
      d.typing = { custom: { flow: '120 gpm', pressure: '330 psi' } };
    },
  },
  {
    mode: '7 a pass that stands only if engines whose power no file gives have some to spare',
    code: 'verdict_rests_on_power',
    at: 'pump b',
    change: (d) => {
      d.site = { elevation: '6000 ft', air_temperature: '95 degF' };
      for (const name of ['a', 'b']) d.engine.pumps[name].model.power = undefined;
      d.typing = { custom: { flow: '120 gpm', pressure: '300 psi' } };
    },
  },
  {
    mode: '7 an engine that has not the power to hold its speed',
    code: 'power_limited',
    at: 'pump a',
    change: (d) => {
      d.engine.pumps.a.model.power = { rated: '15 hp', aspiration: 'natural', fuel: 'gasoline' };
    },
  },
  {
    mode: '8 the panel reads a pass and the orifice does not',
    code: 'judged_at_panel',
    at: 'panel',
    change: (d) => {
      d.typing = { custom: { flow: '120 gpm', pressure: '320 psi' } };
      d.lay = [
        { hose: hose(), length: '100 ft' },
        { nozzle: { kind: 'sharp_orifice', bore: '0.716 in', tee_bore: '1.5 in' }, name: 'plate' },
      ];
    },
  },
  {
    mode: '9 a pass within what a gauge may be out by',
    code: 'margin_within_error',
    change: (d) => {
      d.typing = { custom: { flow: '120 gpm', pressure: '330 psi' } };
    },
  },
  {
    mode: '10 laterals that starve the far nozzle of a progressive lay',
    code: 'nozzle_starved',
    at: 'tip',
    change: (d) => {
      const lateral = (n: number) => ({
        branch: { inside_diameter: '1.5 in', k: 1 },
        to: [
          {
            name: `lateral ${n}`,
            steps: [
              { hose: hose(), length: '10 ft' },
              { nozzle: { kind: 'smooth_bore', bore: '1/2 in' }, name: `open tip ${n}` },
            ],
          },
        ],
      });
      d.lay = [
        { hose: hose(), length: '300 ft', rise: '20 ft' },
        lateral(1),
        { hose: hose(), length: '600 ft', rise: '40 ft' },
        lateral(2),
        { hose: hose(), length: '900 ft', rise: '60 ft' },
        nozzle(),
      ];
    },
    laid: true,
  },
  {
    mode: '11 the length along the slope taken for its height',
    code: 'slope_as_height',
    change: (d) => {
      d.lay[0].rise = '250 ft';
    },
    laid: true,
  },
  {
    mode: '11 a climb on which the field rule and the true figure part',
    code: 'field_rule_gap',
    change: (d) => {
      d.lay[0].length = '600 ft';
      d.lay[0].rise = '200 ft';
    },
    laid: true,
  },
  {
    mode: '12 a lay downhill that stands over its hose when shut',
    code: 'hose_over_service_test',
    change: (d) => {
      d.lay[0].length = '900 ft';
      d.lay[0].rise = '-500 ft';
    },
    laid: true,
  },
  {
    mode: '12 a relief valve set over 90 % of the hose test',
    code: 'relief_above_hose',
    change: (d) => {
      d.lay[0].hose.limits.service_test = '440 psi';
    },
  },
  {
    mode: '12 a relief valve that opens at work',
    code: 'relief_opens',
    change: (d) => {
      d.engine.relief.opens_at = '300 psi';
    },
  },
  {
    mode: '13 a tank that runs out',
    code: 'tank_runs_out',
    change: (d) => {
      d.engine.tank.capacity = '100 gal';
    },
    laid: true,
  },
  {
    mode: '14 the rear axle over its rating with the tank full',
    code: 'axle_over_rating',
    at: 'the rear axle',
    change: (d) => {
      d.engine.axle_ratings.rear = '7000 lb';
    },
  },
  {
    mode: '14 the truck over its gross rating',
    code: 'over_gross_rating',
    change: (d) => {
      d.engine.gross_weight_rating = '17000 lb';
    },
  },
  {
    mode: '15 friction laws mixed in one lay',
    code: 'mixed_friction_laws',
    change: (d) => {
      d.lay.unshift({
        hose: { ...hose(), name: 'other', coefficient: undefined, hazen_williams: 140 },
        length: '50 ft',
      });
    },
    laid: true,
  },
  {
    mode: '15 an edition of the typing that has been replaced',
    code: 'old_edition',
    change: (d) => {
      d.typing = { scheme: 'nwcg-pre-2008', class: 'engine-6', pressure: '100 psi' };
    },
  },
  {
    mode: '15 a coefficient stated per gpm',
    code: 'coefficient_slip',
    change: (d) => {
      d.lay[0].hose.coefficient = 0.24;
    },
    laid: true,
  },
];

/** Two lines on one trunk. */
const twoLines = () => [
  { hose: hose(), length: '400 ft' },
  {
    branch: { inside_diameter: '1.5 in', k: 1 },
    to: [
      {
        name: 'lateral',
        steps: [
          { hose: hose(), length: '50 ft' },
          { ...nozzle(), name: 'the other tip' },
        ],
      },
    ],
  },
  { hose: hose(), length: '50 ft' },
  nozzle(),
];

/** Hazards that no failure mode names, each provoked in the same way. */
const BESIDES: typeof MODES = [
  {
    mode: 'water hammer past what the hose is tested to, by the wave speed that the layout states',
    code: 'surge_over_hose',
    at: 'tip',
    change: (d) => {
      d.surge = { wave_speed: '4000 ft/s' };
    },
  },
  {
    mode: 'a curve that droops, in parallel',
    code: 'drooping_curve',
    at: 'pump a',
    change: (d) => {
      d.engine.pumps.a.model.points[0] = ['0 gpm', '360 psi'];
    },
  },
  {
    mode: 'nozzles that ask for more than the curves tell of',
    code: 'pump_off_curve',
    change: (d) => {
      d.lay = [
        { hose: { ...hose(), coefficient: 2 }, length: '20 ft' },
        { nozzle: { kind: 'smooth_bore', bore: '1-1/4 in' }, name: 'tip' },
      ];
    },
    laid: true,
  },
  {
    mode: 'a curve that was not measured at no flow',
    code: 'shutoff_not_measured',
    change: (d) => {
      d.engine.pumps.a.model.points[0] = ['10 gpm', '398 psi'];
    },
    laid: true,
  },
  {
    mode: 'an intake under pressure that falls below its floor',
    code: 'intake_below_floor',
    change: (d) => {
      d.supply = { relay: { pressure: '10 psi' } };
    },
    laid: true,
  },
  {
    mode: 'an intake relief under the pressure of the relay',
    code: 'relay_relief_low',
    change: (d) => {
      d.supply = { relay: { pressure: '60 psi', relief: '50 psi' } };
    },
    laid: true,
  },
  {
    mode: 'an intake relief far over the pressure of the relay',
    code: 'relay_relief_high',
    change: (d) => {
      d.supply = { relay: { pressure: '60 psi', relief: '90 psi' } };
    },
    laid: true,
  },
  {
    mode: 'a lift over what is attained',
    code: 'lift_over_attainable',
    change: (d) => {
      const step = { hose: { inside_diameter: '4 in', coefficient: 0.2 }, length: '25 ft' };
      d.supply = { draft: { lift: '24 ft', suction: [step] } };
    },
    laid: true,
  },
  {
    mode: 'hose that falls flat on a ridge',
    code: 'hose_below_air',
    change: (d) => {
      d.lay = [
        { hose: hose(), length: '1500 ft', rise: '300 ft' },
        { hose: hose(), length: '600 ft', rise: '-300 ft' },
        { open_end: true },
      ];
    },
    laid: true,
  },
  {
    mode: 'the far line burst, which leaves the other crew short',
    code: 'nozzle_short_when_burst',
    at: 'the other tip',
    change: (d) => {
      d.lay = twoLines();
      d.lay[1].to[0].steps[1].nozzle.working.from = '150 psi';
    },
    besideLay: true,
  },
  {
    mode: 'a nozzle short on one pump',
    code: 'nozzle_short_on_one_pump',
    at: 'tip',
    change: (d) => {
      d.lay.at(-1).nozzle.working.from = '300 psi';
    },
    besideLay: true,
  },
  {
    mode: 'an engine short of power at its height',
    code: 'power_limited',
    change: (d) => {
      d.site.elevation = '8,000 ft';
      for (const name of ['a', 'b']) {
        d.engine.pumps[name].model.power = { rated: '20 hp', aspiration: 'natural', fuel: 'gasoline' };
      }
    },
  },
  {
    mode: 'an engine short of power where its efficiency drops steeply',
    code: 'steep_efficiency',
    at: 'pump a',
    change: (d) => {
      const { model } = d.engine.pumps.a;
      model.power = { rated: '14 hp', aspiration: 'turbocharged', fuel: 'diesel' };
      model.efficiency = [
        ['40 gpm', '65 %'],
        ['55 gpm', '65 %'],
        ['62 gpm', '15 %'],
        ['120 gpm', '15 %'],
      ];
    },
  },
  {
    mode: 'a verdict that rests on power that no file tells',
    code: 'verdict_rests_on_power',
    change: (d) => {
      d.site.elevation = '8,000 ft';
      d.typing = { custom: { flow: '120 gpm', pressure: '300 psi' } };
      for (const name of ['a', 'b']) {
        d.engine.pumps[name].model.power = undefined;
        d.engine.pumps[name].model.efficiency = undefined;
      }
    },
  },
  {
    mode: 'a governor set under what is asked',
    code: 'governor_below_requirement',
    change: (d) => {
      d.throttle = { discharge_pressure: '150 psi' };
    },
  },
  {
    mode: 'a reading past a common gauge',
    code: 'past_the_gauge',
    change: (d) => {
      for (const name of ['a', 'b']) {
        d.engine.pumps[name].model.points = [
          ['0 gpm', '600 psi'],
          ['40 gpm', '580 psi'],
          ['80 gpm', '540 psi'],
          ['120 gpm', '470 psi'],
        ];
      }
      d.engine.relief = undefined;
      d.typing = { scheme: 'nwcg', class: 'engine-3' };
    },
  },
  {
    mode: 'hose over its working pressure',
    code: 'hose_over_working_pressure',
    change: (d) => {
      d.lay[0].hose.limits.working = '350 psi';
    },
    laid: true,
  },
  {
    mode: 'hose is carried that the engine bursts when it is charged and shut, and nothing relieves it',
    code: 'carried_hose_over_limit',
    change: (d) => {
      d.engine.relief = undefined;
      d.lay = [];
      d.engine.hose_carried = [
        { hose: { ...hose(), limits: { service_test: '300 psi' } }, length: '100 ft' },
      ];
    },
  },
  {
    mode: 'hose of which nothing says what it bears',
    code: 'hose_limit_not_known',
    change: (d) => {
      d.lay[0].hose.limits = undefined;
    },
    laid: true,
  },
  {
    mode: 'a curve that its own casing does not bear',
    code: 'curve_over_casing',
    at: 'pump b',
    change: (d) => {
      d.engine.pumps.b.model.limits.casing = '350 psi';
    },
  },
  {
    mode: 'a curve that puts more power into the water than its engine has',
    code: 'curve_over_power',
    at: 'pump b',
    change: (d) => {
      d.engine.pumps.b.model.power.rated = '10 hp';
    },
  },
  {
    mode: 'a weight without a place hides what an axle carries',
    code: 'axle_place_not_stated',
    at: 'the rear axle',
    change: (d) => {
      d.engine.weights.crew = '750 lb';
    },
  },
  {
    mode: 'an axle is over its rating whatever has no place',
    code: 'axle_over_rating',
    at: 'the front axle',
    change: (d) => {
      d.engine.weights.crew = '750 lb';
      d.engine.axle_ratings.front = '7000 lb';
    },
  },
  {
    mode: 'axles are rated and no wheelbase is stated',
    code: 'axle_place_not_stated',
    at: 'the axles',
    change: (d) => {
      d.engine.wheelbase = undefined;
    },
  },
  {
    mode: 'hose near its service test pressure',
    code: 'hose_near_service_test',
    change: (d) => {
      d.lay[0].hose.limits.service_test = '420 psi';
    },
    laid: true,
  },
];

/** Every code that a hazard may speak with, as the sources have them. */
const FOLDER = join(import.meta.dirname, '../../src/caution');
const SPOKEN = readdirSync(FOLDER)
  .map((file) => readFileSync(join(FOLDER, file), 'utf8'))
  .flatMap((source) => [
    // Of `low ? 'one' : 'other'` as well, and of lines of the ledger.
    ...[...source.matchAll(/\bcode: ([^,\n]*)/g)].flatMap(([, value]) => [...value.matchAll(/'(\w+_\w+)'/g)]),
    ...source.matchAll(/pastLimit\(facts, '(\w+)'/g),
    ...[...source.matchAll(/\[((?:'\w+',? ?)+)\]\.flatMap\(\(code\)/g)].flatMap(([, list]) => [
      ...list.matchAll(/'(\w+)'/g),
    ]),
  ])
  .map(([, code]) => code);

const codes = (cautions: readonly Caution[]) => cautions.map(({ code }) => code);

describe('a sound engine', () => {
  test('is met with silence by check', async () => {
    const answer = await checked(sound());
    expect(answer.verdict).toBe('meets');
    expect(codes(answer.cautions)).toEqual([]);
  });

  test('is met with silence by flow', async () => {
    expect(codes((await operated(sound())).cautions)).toEqual([]);
  });
});

describe('each failure mode is found', () => {
  for (const { mode, code, at, change, laid, besideLay } of [...MODES, ...BESIDES]) {
    test(mode, async () => {
      const document = changed(change);
      const { cautions } = besideLay ? await operated(document) : await checked(document);
      const found = cautions.find(
        (caution) => caution.code === code && (at === undefined || caution.at === at),
      );
      expect(codes(cautions)).toContain(code);
      expect(found).toBeDefined();
      if (!found) return;
      expect(cautionText(found, 'message', figuresIn('us'))).not.toMatch(/[{}]|NaN|undefined/);
      expect(cautionText(found, 'action', figuresIn('si'))).not.toMatch(/[{}]|NaN|undefined/);
      expect(found.source.length).toBeGreaterThan(0);
      if (laid) expect(codes((await operated(document)).cautions)).toContain(code);
    });
  }

  test('every code that a hazard may speak with is provoked', () => {
    const provoked = new Set([...MODES, ...BESIDES].map(({ code }) => code));
    expect(SPOKEN.length).toBeGreaterThan(45);
    expect([...new Set(SPOKEN)].filter((code) => !provoked.has(code))).toEqual([]);
    expect([...provoked].filter((code) => !SPOKEN.includes(code))).toEqual([]);
  });

  test('all fifteen of them', () => {
    const seen = new Set(MODES.map(({ mode }) => Number.parseInt(mode, 10)));
    expect([...seen].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
  });
});
