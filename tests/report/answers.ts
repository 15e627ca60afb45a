import type { CheckAnswer, FlowAnswer, Loss, SiteConditions, SolverReport } from '../../src/study/answer.js';

/** Answers made up by hand, so that reports can be tested apart from the hydraulics. Nothing here was computed. */

export const psi = (value: number): number => value * 6894.757293168361;
export const gpm = (value: number): number => (value * 0.003785411784) / 60;
export const ft = (value: number): number => value * 0.3048;
export const inch = (value: number): number => value * 0.0254;
export const gal = (value: number): number => value * 0.003785411784;
export const lb = (value: number): number => value * 0.45359237;
const degF = (value: number): number => ((value - 32) * 5) / 9 + 273.15;

const TYPING = 'NWCG Standards for Wildland Fire Resource Typing, PMS 200';

export const site: SiteConditions = {
  elevation: ft(4300),
  airTemperature: degF(85),
  waterTemperature: degF(60),
  waterDensity: 999,
  vapourPressure: 1768,
  atmosphericPressure: 86_500,
};

export const solver: SolverReport = { iterations: 7, flowResidual: 1.3e-13, energyResidual: 2.4e-6 };

const loss = (where: string, kind: string, flow: number, lost: number): Loss => ({
  where,
  kind,
  flow: gpm(flow),
  loss: psi(lost),
});

export function meeting(): CheckAnswer {
  return {
    question: 'check',
    leftOut: [],
    returns: [{ name: 'relief valve', flow: gpm(3) }],
    title: 'Proof of rating, both pumps side by side',
    engine: 'Engine 614',
    site,
    verdict: 'meets',
    pumpVerdict: 'meets',
    requirement: {
      scheme: 'nwcg',
      class: 'engine-3',
      title: 'NWCG engine type 3',
      flow: gpm(150),
      pressure: psi(250),
      points: [{ name: '', flow: gpm(150), pressure: psi(250), net: false }],
      source: TYPING,
      edition: 'current table',
    },
    staging: 'parallel',
    judgedAt: 'the gauge tee of the test orifice',
    atRequiredFlow: { pressure: psi(271.3), margin: psi(21.3) },
    atRequiredPressure: { flow: gpm(161.2), margin: gpm(11.2) },
    testOrifice: {
      bore: inch(0.716),
      dischargeCoefficient: 0.62,
      reading: psi(263.4),
      flow: gpm(154.2),
      margin: psi(13.4),
      grades: [
        { grade: 'excellent', from: psi(375) },
        { grade: 'good', from: psi(312.5) },
        { grade: 'acceptable', from: psi(250) },
      ],
      grade: 'acceptable',
      source: 'USDA Forest Service, Water Handling Equipment solicitation template, draft of 20 March 2009',
    },
    heat: [
      {
        name: 'pump a',
        flow: gpm(73.9),
        leaving: degF(62),
        basis: 'efficiency',
        powerAtShutoff: 745.7 * 10,
        leastFlow: gpm(3.4),
        roughLeastFlow: gpm(30),
        shutFlow: gpm(1.4),
        shutLeaving: degF(100),
        cooling: 'own',
        coolsShutOut: true,
        trapped: gal(0.6),
        untilScald: 57,
        untilBoiling: 108,
      },
      {
        name: 'pump b',
        flow: gpm(76.1),
        basis: 'not_known',
        shutFlow: 0,
        cooling: 'behind_check',
        coolsShutOut: false,
      },
    ],
    pumpsOut: [
      {
        out: 'pump a',
        staging: 'b',
        verdict: 'falls_short',
        types: [
          {
            class: 'engine-4',
            title: 'Type 4 wildland engine',
            flow: gpm(50),
            pressure: psi(100),
            margin: psi(240),
            inventory: 'falls_short',
            missing: ['1 in hose'],
          },
        ],
        standing: [
          {
            staging: 'parallel',
            check: 'works',
            reaches: true,
            flow: gpm(78),
            shutoff: psi(405),
            backflowShut: 0,
            backflow: 0,
          },
          {
            staging: 'parallel',
            check: 'stuck_open',
            reaches: false,
            shutoff: psi(190),
            backflowShut: gpm(86),
          },
        ],
      },
    ],
    life: {
      pumps: [
        {
          name: 'pump a',
          hours: 212 * 3600,
          wear: 0.03,
          services: [
            { service: 'oil', at: 200 * 3600, left: -12 * 3600 },
            { service: 'test', on: '2027-05-01' },
          ],
          bears: 0.05,
        },
        { name: 'pump b', hours: 187 * 3600, wear: 0, services: [] },
      ],
      lead: { name: 'pump b', behind: 25 * 3600 },
      unworn: { margin: psi(25), cost: psi(3.7) },
      bothBear: 0.04,
      short: false,
      sameModel: true,
    },
    axles: {
      cases: [
        { tank: 1, crew: true, gross: lb(23_170), front: lb(8000), rear: lb(15_170), leftOfMiddle: inch(-1) },
        { tank: 0, crew: false, gross: lb(18_000) },
      ],
      ratings: { gross: lb(26_000), rear: lb(15_000) },
      leftOut: [],
      unplaced: ['hose'],
      wheelbaseStated: true,
      rules: [{ template: 'Crew as the layout states its weight', source: 'stated in the layout' }],
    },
    pairCost: {
      against: 'one larger pump',
      rows: [
        { of: 'weight', pair: lb(330), single: lb(410) },
        { of: 'fuel', pair: gal(4.2) / 3600, single: gal(3) / 3600 },
        { of: 'price', pair: 9000, single: 12_500 },
      ],
    },
    ledger: {
      lines: [
        {
          code: 'axle_over_rating',
          limit: 'axle',
          at: 'the rear axle',
          allowed: { value: lb(15_000), dimension: 'mass' },
          atLeast: false,
          operating: lb(15_170),
          worst: lb(15_170),
          worstWhen: 'with the tank full, crew aboard',
          margin: -0.0113,
          source: 'rating stated in the layout',
        },
      ],
      of: 9,
      notKnown: [],
    },
    stagings: [
      {
        staging: 'parallel',
        verdict: 'meets',
        atRequiredFlow: { pressure: psi(271.3), margin: psi(21.3) },
        atRequiredPressure: { flow: gpm(161.2), margin: gpm(11.2) },
        shutoff: psi(402),
        reachable: true,
        shares: [
          { pump: 'a', flow: gpm(73.9), share: 73.9 / 150 },
          { pump: 'b', flow: gpm(76.1), share: 76.1 / 150 },
        ],
      },
      {
        staging: 'series',
        verdict: 'falls_short',
        atRequiredPressure: { flow: gpm(96), margin: gpm(-54) },
        shutoff: psi(798),
        reachable: false,
        limit: {
          template: 'pump a runs off its curve at {flow}',
          values: { flow: { value: gpm(105), dimension: 'flow' } },
        },
        shares: [
          { pump: 'a', flow: gpm(150), share: 1 },
          { pump: 'b', flow: gpm(150), share: 1 },
        ],
      },
      {
        staging: 'a',
        verdict: 'falls_short',
        shutoff: psi(240),
        reachable: false,
        shares: [{ pump: 'a', flow: gpm(150), share: 1 }],
      },
    ],
    inventory: [
      {
        item: 'tank',
        required: { value: gal(500), dimension: 'volume' },
        carried: { value: gal(500), dimension: 'volume' },
        atMost: false,
        verdict: 'meets',
        source: TYPING,
      },
      {
        item: '1-1/2 in hose',
        required: { value: ft(1000), dimension: 'length' },
        carried: { value: ft(1000), dimension: 'length' },
        atMost: false,
        verdict: 'meets',
        source: TYPING,
      },
      {
        item: 'crew',
        required: { value: 3, dimension: 'ratio' },
        carried: { value: 3, dimension: 'ratio' },
        atMost: false,
        verdict: 'meets',
        source: TYPING,
      },
      {
        item: 'gross weight',
        required: { value: lb(26_000), dimension: 'mass' },
        carried: { value: lb(23_170), dimension: 'mass' },
        atMost: true,
        verdict: 'meets',
        note: {
          template: 'water weighs {water}',
          values: { water: { value: lb(4169), dimension: 'mass' } },
        },
        source: 'NWCG, page "Engines": within the rating, fully loaded',
      },
    ],
    losses: [
      loss('hose 1 of the test line', 'hose', 150, 27.1),
      loss('discharge a', 'check valve', 74, 6.2),
      loss('manifold', 'pipe', 150, 3.44),
      loss('rise to the outlet', 'elevation', 150, -0.9),
    ],
    pumps: [],
    across: [],
    points: [
      { name: 'panel', pressure: psi(299.2), reads: 'static', elevation: ft(3) },
      { name: 'tank', pressure: psi(-1.3), reads: 'static', elevation: 0 },
    ],
    cautions: [
      {
        code: 'hose_near_service_test',
        level: 'warn',
        at: 'hose 1 of the test line',
        value: { value: psi(369.7), dimension: 'pressure' },
        limit: { value: psi(360), dimension: 'pressure' },
        message: 'Pressure in {at} reaches {value} at shutoff, above {limit}',
        action: 'Keep the nozzle moving off shut, or carry hose of a higher service test pressure',
        source: 'common practice, no source',
      },
      {
        code: 'verdict_thinner_than_gauge',
        level: 'note',
        at: 'gauge tee of the test orifice',
        message: 'A gauge of grade 1A may be off by {error}',
        action: 'Bring a gauge that was calibrated this year',
        values: { error: { value: psi(4), dimension: 'pressure' } },
        source: 'Water Handling Equipment Guide, PMS 447-1, Appendix C',
      },
    ],
    assumptions: [
      {
        template: 'Hose loses 2 C Q^2 L with C from the catalogue',
        source: 'NWCG Firefighter Math 3.4',
      },
      { template: 'Both engines run at governed speed' },
    ],
    solver,
  };
}

/** 249.6 against 250: the whole figure would say that it meets. */
export function short(): CheckAnswer {
  const answer = meeting();
  answer.verdict = 'falls_short';
  answer.pumpVerdict = 'falls_short';
  answer.atRequiredFlow = { pressure: psi(249.6), margin: psi(-0.4) };
  answer.atRequiredPressure = { flow: gpm(149.9), margin: gpm(-0.1) };
  answer.stagings[0] = {
    ...answer.stagings[0],
    verdict: 'falls_short',
    atRequiredFlow: { pressure: psi(249.6), margin: psi(-0.4) },
    atRequiredPressure: { flow: gpm(149.9), margin: gpm(-0.1) },
  };
  answer.cautions = [
    {
      code: 'casing_over_limit',
      level: 'stop',
      at: 'pump b',
      value: { value: psi(600.2), dimension: 'pressure' },
      limit: { value: psi(600), dimension: 'pressure' },
      message: 'The casing of {at} stands above what its maker allows at shutoff',
      action: 'Set a relief valve below the limit, or do not stage in series',
      source: "the pump's own limits in the layout",
    },
    ...answer.cautions,
  ];
  return answer;
}

export function shortOnTank(): CheckAnswer {
  const answer = meeting();
  answer.verdict = 'falls_short';
  answer.inventory[0] = {
    ...answer.inventory[0],
    carried: { value: gal(480), dimension: 'volume' },
    verdict: 'falls_short',
  };
  return answer;
}

export function outOfReach(): CheckAnswer {
  const answer = short();
  answer.staging = 'a';
  answer.atRequiredFlow = undefined;
  answer.atRequiredPressure = undefined;
  answer.testOrifice = undefined;
  answer.cautions = [];
  return answer;
}

export function flowing(): FlowAnswer {
  return {
    question: 'flow',
    returns: [],
    title: 'Two lines up Larkspur Draw',
    engine: 'Engine 614',
    site,
    staging: 'parallel',
    points: [{ name: 'panel', pressure: psi(186.2), reads: 'static', elevation: ft(3) }],
    lines: [
      {
        name: 'hose 1 of left',
        kind: 'hose',
        flow: gpm(44.2),
        velocity: ft(8),
        loss: psi(31.2),
        inletPressure: psi(186),
        outletPressure: psi(112),
      },
      {
        name: 'wye',
        kind: 'appliance',
        flow: gpm(44.2),
        loss: psi(5),
        inletPressure: psi(112),
        outletPressure: psi(107),
      },
    ],
    nozzles: [
      {
        name: 'left',
        kind: 'fog',
        state: 'open',
        flow: gpm(22.1),
        pressure: psi(96.8),
        reads: 'total',
        reaction: 49,
        inRange: true,
        range: { from: psi(75), to: psi(125), source: 'common practice, no source' },
      },
      {
        name: 'right',
        kind: 'smooth bore',
        state: 'open',
        flow: gpm(22.1),
        pressure: psi(31.2),
        reads: 'total',
        reaction: 30,
        reach: ft(41),
        inRange: false,
        range: { from: psi(40), source: 'common practice, no source' },
      },
      { name: 'spare', kind: 'fog', state: 'shut', flow: 0, pressure: psi(186), reads: 'total' },
    ],
    pumps: [
      {
        name: 'pump a',
        model: 'demo-highlift',
        state: 'running',
        flow: gpm(44.2),
        delivered: gpm(44.2),
        headRise: psi(186.4),
        inletPressure: psi(-0.4),
        dischargePressure: psi(186),
        speed: 6500,
        power: 9_800,
        powerAvailable: 15_100,
        ofRatedSpeed: 1,
        limitedBy: 'governor',
        npshAvailable: ft(27.4),
        npshRequired: ft(9.1),
        share: 1,
        offCurve: false,
      },
      {
        name: 'pump b',
        model: 'demo-highlift',
        state: 'shut_out',
        flow: gpm(1.2),
        delivered: 0,
        cooling: gpm(1.2),
        headRise: psi(172.6),
        inletPressure: psi(0.4),
        dischargePressure: psi(173),
        speed: 6100,
        ofRatedSpeed: 1,
        limitedBy: 'governor',
        npshAvailable: ft(28),
        share: 0,
        offCurve: false,
      },
    ],
    supply: {
      kind: 'relay',
      flow: gpm(44.2),
      intake: psi(18.2),
      floor: { pressure: psi(20), source: 'relay lesson' },
      relay: { pressure: psi(60), reliefAt: psi(70), relief: psi(75), source: 'study cards' },
    },
    lineControl: {
      reliefIdle: false,
      lineShut: { nozzle: 'nozzle 1', at: 'nozzle 2', rise: psi(41), held: true },
      surges: [
        {
          nozzle: 'nozzle 1',
          velocity: 4,
          waveSpeed: 400,
          stated: false,
          rise: psi(232),
          peak: psi(332),
          hoseLimit: {
            pressure: psi(300),
            rule: 'service_test',
            what: 'its service test pressure',
            source: 'tests',
          },
        },
      ],
    },
    portableTanks: [{ name: 'tank 1', capacity: gal(1000), inflow: gpm(40), outflow: gpm(60) }],
    profiles: [
      {
        outlet: 'left',
        to: 'right',
        hose: ft(800),
        onMap: ft(784),
        climb: ft(40),
        highest: { name: 'end of hose 2', distance: ft(400), height: ft(160), pressure: psi(12) },
        lowest: { name: 'start of hose 1', distance: 0, height: ft(-20), pressure: psi(186) },
        overRidge: true,
        takenLevel: ft(100),
      },
    ],
    habits: [{ outlet: 'left', flow: gpm(100), hose: ft(1000), actual: psi(105.6), endToEnd: psi(240) }],
    cases: [
      {
        code: 'all_shut',
        title: 'every nozzle shut',
        totalFlow: 0,
        highestHose: { at: 'hose 1 of left', pressure: psi(402) },
        breaks: ['hose_over_service_test'],
      },
    ],
    totalFlow: gpm(44.2),
    tank: {
      capacity: gal(500),
      reserve: gal(50),
      hoseFill: gal(40),
      usable: gal(410),
      flowFull: gpm(44.2),
      flowLow: gpm(43.1),
      surfaceFull: ft(3),
      surfaceLow: ft(0.3),
      endurance: 563,
      flowTimesMinutes: 557,
      source: 'Interagency Standards, chapter 14: 10 % kept',
    },
    impossible: [],
    hoseWithoutLimit: [],
    heat: [],
    cautions: [
      {
        code: 'pump_shut_out',
        level: 'stop',
        at: 'pump b',
        value: { value: 0, dimension: 'flow' },
        message: '{at} is shut out by its check valve and heats its own water',
        action: 'Bring both pumps to the same speed, or open the cooling line',
        source: 'common practice, no source',
      },
    ],
    assumptions: [{ template: 'Hose loses 2 C Q^2 L', source: 'NWCG Firefighter Math 3.4' }],
    solver,
  };
}

/** A rating of engines whose power no file gives. */
export function powerUntold(): CheckAnswer {
  const answer = meeting();
  const pumps = [{ name: 'pump a', limitedBy: 'not_known' as const }];
  return {
    ...answer,
    highestPlace: {
      stands: 'up_to',
      upTo: 308,
      cases: [
        { engine: 'power_to_spare', stands: 'everywhere', upTo: 6000 },
        { engine: 'constant_power', stands: 'up_to', upTo: 386 },
        { engine: 'flat_torque', stands: 'up_to', upTo: 308 },
      ],
    },
    hotDay: {
      airTemperature: 316,
      verdict: 'falls_short',
      cases: [
        { engine: 'power_to_spare', verdict: 'meets' },
        { engine: 'constant_power', verdict: 'falls_short' },
        { engine: 'flat_torque', verdict: 'falls_short' },
      ],
    },
    across: [
      {
        of: 'elevation',
        given: [],
        rows: [{ value: 3000, verdict: 'meets', pumps }],
      },
    ],
  };
}
