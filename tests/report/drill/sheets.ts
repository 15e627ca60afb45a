import type { Marking } from '../../../src/drill/marking/marking.js';
import type { Problem, SketchPart } from '../../../src/drill/problem.js';
import type { PrintedSheet } from '../../../src/report/drill/printed-sheet.js';

const common = { level: 2, rules: 'wildland', units: 'us', seed: 7, version: '0.0.0', choices: [] } as const;

const hose = (label: string, rise?: string): SketchPart => ({ kind: 'hose', label, ...(rise && { rise }) });
const nozzle = (label: string): SketchPart => ({ kind: 'nozzle', label });

/** The sums are worked by hand with the field rules of 0.5 psi/ft and C = 24 in 1.5 in hose. */
export const singleLine = (): Problem => ({
  ...common,
  id: 'single-line-up.2.wildland.us.1',
  number: 1,
  topic: 'single-line-up',
  topicTitle: 'A single line uphill',
  question:
    'Engine Juniper 4 pumps through 300 ft of 1-1/2 in hose to a fog nozzle that flows 60 gpm at 100 psi, 40 ft above the pump. What must the pump discharge pressure be?',
  given: [
    { symbol: 'Q', name: 'flow', value: 60, unit: 'gpm', text: '60 gpm' },
    { symbol: 'L', name: 'length of hose', value: 300, unit: 'ft', text: '300 ft' },
    { symbol: 'H', name: 'height of the nozzle above the pump', value: 40, unit: 'ft', text: '40 ft' },
    { symbol: 'NP', name: 'nozzle pressure', value: 100, unit: 'psi', text: '100 psi' },
  ],
  constants: [
    {
      symbol: 'C',
      name: 'coefficient of 1-1/2 in hose',
      value: 24,
      unit: '',
      text: '24',
      source: 'fire department slides on friction loss in hose lays',
    },
  ],
  find: { symbol: 'PDP', name: 'pump discharge pressure', unit: 'psi' },
  rulesUsed: [{ text: 'Elevation 0.5 psi per foot', source: 'NWCG Firefighter Math 3.4' }],
  sketch: {
    parts: [
      { kind: 'source', what: 'tank', label: 'tank' },
      { kind: 'pump', label: 'pump' },
      { kind: 'gauge', label: 'panel gauge' },
      hose('300 ft of 1-1/2 in', 'up 40 ft'),
      nozzle('60 gpm at 100 psi'),
    ],
    words: 'tank - pump - panel gauge - 300 ft of 1-1/2 in, up 40 ft - nozzle 60 gpm at 100 psi',
  },
  steps: [
    {
      say: 'Friction loss in the hose',
      symbol: 'FL',
      formula: 'C * (Q / (100 gpm))^2 * (L / (100 ft)) * 1 psi',
      substitution: '24 * (60 gpm / (100 gpm))^2 * (300 ft / (100 ft)) * 1 psi',
      value: 25.92,
      unit: 'psi',
      text: '25.9 psi',
      rounding: 'shown to 0.1 psi',
    },
    {
      say: 'Elevation pressure',
      symbol: 'EP',
      formula: '0.5 psi/ft * H',
      substitution: '0.5 psi/ft * 40 ft',
      value: 20,
      unit: 'psi',
      text: '20 psi',
      rounding: '',
    },
    {
      say: 'Pump discharge pressure',
      symbol: 'PDP',
      formula: 'NP + FL + EP',
      substitution: '100 psi + 25.92 psi + 20 psi',
      value: 145.92,
      unit: 'psi',
      text: '146 psi',
      rounding: 'to the nearest psi',
    },
  ],
  answer: {
    kind: 'number',
    value: 145.92,
    unit: 'psi',
    text: '146 psi',
    tolerance: 7.3,
    toleranceText: '± 7.3 psi',
  },
  crossCheck: {
    hand: { value: 145.92, unit: 'psi' },
    solver: { value: 143.3, unit: 'psi' },
    handText: '146 psi',
    solverText: '143 psi',
    reason: 'The field rule of 0.5 psi per foot is 15 % above the 0.434 psi per foot of water',
  },
  slips: [
    {
      slip: 'elevation_sign',
      why: 'Elevation was taken off instead of added: the nozzle is above the pump.',
      value: 105.92,
      text: '106 psi',
    },
    { slip: 'no_elevation', why: 'Elevation was left out.', value: 125.92, text: '126 psi' },
  ],
});

export const staging = (): Problem => ({
  ...common,
  id: 'parallel-series.2.wildland.us.2',
  number: 2,
  topic: 'parallel-series',
  topicTitle: 'Two pumps in parallel or in series',
  question:
    'Each of two like pumps makes 75 gpm at 125 psi. The nozzle needs 75 gpm at 240 psi at the pump. Series or parallel?',
  given: [{ symbol: 'Q', name: 'flow of each pump', value: 75, unit: 'gpm', text: '75 gpm' }],
  constants: [],
  find: { symbol: 'staging', name: 'how to stage the pumps', unit: '' },
  rulesUsed: [],
  steps: [
    {
      say: 'Pressure in series',
      symbol: 'P',
      formula: 'Pa + Pb',
      substitution: '125 psi + 125 psi',
      value: 250,
      unit: 'psi',
      text: '250 psi',
      rounding: '',
    },
  ],
  answer: { kind: 'word', word: 'series', text: 'series', options: ['series', 'parallel'] },
  slips: [
    {
      slip: 'swapped',
      why: 'Parallel adds flow and not pressure.',
      value: 'parallel',
      text: 'parallel',
    },
  ],
  choices: [
    { letter: 'A', text: 'parallel', value: 'parallel', right: false, slip: 'swapped' },
    { letter: 'B', text: 'series', value: 'series', right: true },
  ],
});

const lateral = (n: number): SketchPart[] => [
  hose('200 ft of 1-1/2 in', n % 2 === 0 ? 'up 20 ft' : undefined),
  { kind: 'branch', label: `wye ${n}`, legs: [[hose('100 ft of 1 in'), nozzle('20 gpm at 100 psi')]] },
];

export const progressive = (laterals = 4): Problem => ({
  ...singleLine(),
  id: 'progressive.4.wildland.us.3',
  number: 3,
  level: 4,
  topic: 'progressive',
  topicTitle: 'A progressive lay',
  question: '<b>Five</b> laterals & "more" of 20 gpm hang on a trunk | of 1-1/2 in hose.',
  sketch: {
    parts: [
      { kind: 'source', what: 'draft', label: 'lake, lift 10 ft' },
      { kind: 'pump', label: 'pump' },
      ...Array.from({ length: laterals }, (_, i) => lateral(i + 1)).flat(),
      hose('200 ft of 1-1/2 in'),
      hose('100 ft of 1 in'),
      nozzle('20 gpm at 100 psi'),
    ],
    words: `draft - pump - ${laterals} laterals - nozzle`,
  },
});

/** Every kind of part that a sketch has. */
export const everyPart = (): SketchPart[] => [
  { kind: 'source', what: 'hydrant', label: 'hydrant' },
  {
    kind: 'joined',
    label: 'manifold',
    legs: [
      [
        { kind: 'pump', label: 'pump a' },
        { kind: 'appliance', label: 'check valve' },
      ],
      [{ kind: 'pump', label: 'pump b' }],
    ],
  },
  { kind: 'gauge', label: 'gauge' },
  { kind: 'hose', label: '800 ft of 3 in', lines: 2 },
  {
    kind: 'branch',
    label: 'gated wye',
    legs: [
      [hose('150 ft of 1-3/4 in', 'up 30 ft'), nozzle('leg A')],
      [hose('100 ft of 1-3/4 in'), { kind: 'nozzle', label: 'leg B', shut: true }],
    ],
  },
];

export const printed = (problems: Problem[] = [singleLine(), staging(), progressive()]): PrintedSheet => ({
  sheet: {
    seed: 7,
    level: 2,
    units: 'us',
    rules: { name: 'wildland', title: 'Wildland field rules', source: 'NWCG Firefighter Math ch. 3' },
    version: '0.0.0',
    problems,
  },
  code: '9F3A-1C2B',
  command: 'pumpyoke drill --mix --level 2 --count 3 --seed 7 --rules wildland --units us',
});

export function marked(): Marking {
  const [line, pumps] = [singleLine(), staging()];
  const slip = { slip: 'elevation_sign', why: line.slips[0].why };
  const bea: Marking['students'][number] = {
    student: 'Bea =1+1',
    right: 1,
    of: 2,
    answers: [
      { student: 'Bea =1+1', problem: line, text: '106 psi', verdict: 'wrong', read: 106, slip },
      { student: 'Bea =1+1', problem: pumps, text: 'b', verdict: 'right', read: 'series' },
    ],
    topics: [
      {
        topic: line.topic,
        topicTitle: line.topicTitle,
        right: 0,
        wrong: 1,
        blank: 0,
        slips: [{ ...slip, count: 1 }],
      },
      { topic: pumps.topic, topicTitle: pumps.topicTitle, right: 1, wrong: 0, blank: 0, slips: [] },
    ],
    teachAgain: ['A single line uphill: elevation is added where the nozzle is above the pump.'],
  };
  return {
    students: [bea],
    topics: bea.topics,
    teachAgain: bea.teachAgain,
    notes: ['row 5 holds too many cells'],
  };
}
