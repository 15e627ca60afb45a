import type { ReachAnswer, RequireAnswer, StagingDemand } from '../../src/study/answer.js';
import { ft, gpm, psi, site, solver } from './answers.js';

/** Field answers made up by hand, as in answers.ts. Nothing here was computed. */

const demand = (staging: StagingDemand['staging'], more: Partial<StagingDemand> = {}): StagingDemand => ({
  staging,
  verdict: 'meets',
  throttle: 0.94,
  pumps: [
    {
      name: 'pump a',
      flow: gpm(55),
      dischargePressure: psi(279),
      inletPressure: psi(-0.4),
      share: 0.5,
      offCurve: false,
    },
    {
      name: 'pump b',
      flow: gpm(55.4),
      dischargePressure: psi(278.6),
      inletPressure: psi(-0.4),
      share: 0.5,
      offCurve: false,
    },
  ],
  totalFlow: gpm(108),
  worst: { name: 'nozzle 3', pressure: psi(100), required: psi(100), margin: 0 },
  highestHose: { at: 'start of hose 1 of left', pressure: psi(277) },
  stops: 0,
  ...more,
});

const short = (staging: StagingDemand['staging'], by: number): StagingDemand =>
  demand(staging, {
    verdict: 'falls_short',
    throttle: 1,
    worst: { name: 'nozzle 3', pressure: psi(100 - by), required: psi(100), margin: psi(-by) },
  });

export function requiring(): RequireAnswer {
  return {
    question: 'require',
    title: 'Two lines up Larkspur Draw',
    engine: 'Engine 614',
    site,
    verdict: 'meets',
    staging: 'series',
    asLaid: 'parallel',
    needs: [
      {
        name: 'nozzle 3',
        kind: 'fog nozzle, 20 gpm',
        pressure: psi(100),
        flow: gpm(20),
        source: 'IFSTA cards',
      },
      { name: 'far nozzle', kind: 'automatic', pressure: psi(100), source: 'stated in the layout' },
    ],
    outlets: [{ name: 'left', flow: gpm(108), pressure: psi(277) }],
    stagings: [short('parallel', 0.3), demand('series'), demand('a', { stops: 2 })],
    rules: [
      {
        rules: 'wildland',
        nozzle: 'nozzle 3',
        outlet: 'left',
        flow: gpm(90),
        nozzlePressure: psi(100),
        friction: psi(79),
        appliances: psi(25),
        applianceCount: 5,
        height: psi(60),
        climb: ft(120),
        pressure: psi(264),
        stamp: {
          template: 'Wildland field rule: {stated_appliance} for each appliance',
          values: { stated_appliance: { value: psi(5), dimension: 'pressure' } },
          source: 'NWCG Firefighter Math 3.4',
        },
      },
    ],
    habits: [{ outlet: 'left', flow: gpm(100), hose: ft(1000), actual: psi(105.6), endToEnd: psi(240) }],
    cautions: [],
    assumptions: [{ template: 'The throttle is searched up to governed speed, the same for both pumps' }],
    solver,
  };
}

export function unable(): RequireAnswer {
  const answer = requiring();
  answer.verdict = 'falls_short';
  answer.staging = 'parallel';
  answer.stagings = [short('parallel', 0.3), short('series', 14)];
  answer.servable = {
    staging: 'parallel',
    served: ['far nozzle'],
    leftOut: ['nozzle 3'],
    exact: false,
    throttle: 1,
  };
  answer.outlets = undefined;
  answer.rules = [];
  answer.rulesOmitted = { template: 'A booster stands in the line' };
  return answer;
}

export function reaching(): ReachAnswer {
  return {
    question: 'reach',
    title: 'Two lines up Larkspur Draw',
    engine: 'Engine 614',
    site,
    throttle: 1,
    hose: '1-1/2 in forestry hose',
    hoseSource: 'purchase specification',
    nozzle: { name: 'fog nozzle', pressure: psi(100), source: 'IFSTA cards' },
    lateral: { hose: '1 in forestry hose', length: ft(100), nozzle: 'fog nozzle', pressure: psi(100) },
    carried: ft(1000),
    longest: ft(20_000),
    asLaid: 'parallel',
    hoseWithoutLimit: [],
    stagings: [
      {
        staging: 'parallel',
        shutPressure: psi(407),
        overHose: { limit: psi(300), source: 'purchase specification' },
        stops: [],
        rows: [
          {
            grade: 0,
            cells: [
              { laterals: 0, length: ft(20_000), height: 0, limit: 'longest_looked_at' },
              { laterals: 4, length: 0, height: 0, limit: 'nozzle' },
            ],
          },
          {
            grade: 0.5,
            cells: [
              { laterals: 0, length: ft(1632), height: ft(730), limit: 'nozzle' },
              { laterals: 4, length: ft(459), height: ft(205), limit: 'nozzle' },
            ],
          },
          {
            grade: -0.2,
            cells: [
              { laterals: 0, length: ft(900), height: ft(-176), limit: 'nozzle' },
              { laterals: 4, length: ft(700), height: ft(-137), limit: 'nozzle' },
            ],
          },
        ],
      },
    ],
    cautions: [],
    assumptions: [],
    solver,
  };
}
