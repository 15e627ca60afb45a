import type { Problem } from '../../src/drill/problem.js';
import type { HoseSize, UnitRules } from '../../src/drill/rules/rule-set.js';

/**
 * The answers again, in plain arithmetic of bare numbers: no formula, step or helper of the drill is used, only what
 * the question gives and the figures of the rule set.
 */
export function recompute(problem: Problem, rules: UnitRules): number | string {
  const sum = SUMS[problem.topic];
  if (sum === undefined) throw new Error(`no independent sum for topic ${problem.topic}`);
  const figures = new Map(problem.given.map(({ symbol, value }) => [symbol, value]));
  const at = (symbol: string): number => {
    const value = figures.get(symbol);
    if (value === undefined) throw new Error(`${problem.id} gives no ${symbol}`);
    return value;
  };
  return sum({
    at,
    has: (symbol) => figures.has(symbol),
    rules,
    us: problem.units === 'us',
    find: problem.find.symbol,
  });
}

interface Facts {
  at: (symbol: string) => number;
  has: (symbol: string) => boolean;
  rules: UnitRules;
  us: boolean;
  find: string;
}

const SIZE_OF_BORE: Record<string, HoseSize> = {
  '1': '1',
  '1.5': '1.5',
  '1.75': '1.75',
  '2': '2',
  '2.5': '2.5',
  '3': '3',
  '3.5': '3.5',
  '4': '4',
  '5': '5',
  '25': '1',
  '38': '1.5',
  '45': '1.75',
  '51': '2',
  '65': '2.5',
  '77': '3',
  '90': '3.5',
  '100': '4',
  '125': '5',
};

/** Friction in a length of hose of a bore at a flow. */
function loss({ rules }: Facts, bore: number, flow: number, length: number): number {
  const size = SIZE_OF_BORE[String(bore)];
  const rule = rules.friction;
  const tens = Math.round(flow * 1e6) / 1e7;
  const each = (() => {
    switch (rule.method) {
      case 'coefficient':
        return (rule.hoses[size]?.coefficient ?? Number.NaN) * flow * flow * 1e-4;
      case 'condensed_q':
        return (flow * flow) / 10_000 / (rule.hoses[size]?.divisor ?? Number.NaN);
      case 'drop_ten':
        return size === '2.5' ? tens - 10 : Number.NaN;
      case 'tenths':
        return tens * (rule.hoses[size]?.factor ?? Number.NaN) - 10;
      case 'old_square': {
        const q = flow / 100;
        return (rule.hoses[size]?.share ?? Number.NaN) * q * (2 * q + (q < 1 ? 0.5 : 1));
      }
      case 'table':
        return rule.hoses[size]?.table.find(([q]) => q === flow)?.[1] ?? Number.NaN;
    }
  })();
  return (each * length) / 100;
}

function allowance({ rules: { appliance } }: Facts, flow: number, master = false): number {
  if (appliance.policy === 'none') return 0;
  if (appliance.policy === 'each') return appliance.each;
  return master ? appliance.master : flow < appliance.from_flow ? appliance.below : appliance.each;
}

function atPump({ rules }: Facts, pressure: number): number {
  const step = rules.rounding.pump_pressure;
  return step > 0 ? Math.floor(pressure / step + 0.5 + 1e-9) * step : pressure;
}

const isHandLine = (bore: number) => ['1', '1.5', '1.75', '2', '2.5'].includes(SIZE_OF_BORE[String(bore)]);

const endPressure = ({ rules }: Facts, bore: number) =>
  isHandLine(bore) ? rules.nozzle.fog : rules.relay.residual;

function slope(facts: Facts, sign: 1 | -1): number {
  const { at, has, rules } = facts;
  const height = has('S')
    ? (at('S') - 1) * rules.storey.loss
    : rules.elevation.rate * (has('G') ? (at('G') * at('L')) / 100 : at('H'));
  return atPump(facts, endPressure(facts, at('d')) + loss(facts, at('d'), at('Q'), at('L')) + sign * height);
}

/** Water in a length of hose, in gal or L. */
const inHose = ({ at, us }: Facts) =>
  us ? ((Math.PI / 4) * at('d') ** 2 * at('L') * 12) / 231 : ((Math.PI / 4) * at('d') ** 2 * at('L')) / 1000;

const rise = ({ at, has, rules }: Facts, symbol = 'H') =>
  has(symbol) ? rules.elevation.rate * at(symbol) : 0;

/** Flow of a pump S - b (Q/100)^2 against a pressure; none where it is shut out. */
const against = (shutoff: number, fall: number, pressure: number) =>
  shutoff <= pressure ? 0 : 100 * ((shutoff - pressure) / fall) ** 0.5;

/** Where a falling curve crosses a rising one, by halving. */
function crossing(spare: (flow: number) => number, most: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const straight = (x: number, x1: number, y1: number, x2: number, y2: number) =>
  ((x2 - x) * y1 + (x - x1) * y2) / (x2 - x1);

const SUMS: Record<string, (facts: Facts) => number | string> = {
  volume(f) {
    const { at, has, rules, us } = f;
    const fill = us ? 1728 / 231 : 1000;
    if (f.find === 'R') return at('T') - inHose(f);
    if (has('d')) return inHose(f);
    const cubic = has('D')
      ? (Math.PI / 4) * at('D') ** 2 * at('H')
      : has('B')
        ? at('L') * at('B') * at('H')
        : 0;
    const volume = has('V') ? at('V') : cubic * fill;
    return f.find === 'W' ? volume * rules.water.mass : volume;
  },
  'water-minutes'(f) {
    const { at, has, rules } = f;
    const usable = at('T') - at('T') * rules.tank.reserve - (has('d') ? inHose(f) : 0);
    return usable / at('q') / at('n');
  },
  'friction-loss': (f) => loss(f, f.at('d'), f.at('Q'), f.at('L')),
  'single-line': (f) => atPump(f, loss(f, f.at('d'), f.at('Q'), f.at('L')) + endPressure(f, f.at('d'))),
  'line-uphill': (f) => slope(f, 1),
  'line-downhill': (f) => slope(f, -1),
  'smooth-bore-flow'({ at, rules, find }) {
    const area = at('d') * at('d');
    if (find === 'R') return rules.reaction.smooth * area * at('NP');
    const k = rules.smooth_bore.constant * area;
    return find === 'Q' ? k * at('NP') ** 0.5 : (at('Q') / k) ** 2;
  },
  appliances: (f) =>
    atPump(
      f,
      f.at('n') * allowance(f, f.at('Q')) +
        loss(f, f.at('d'), f.at('Q'), f.at('L')) +
        endPressure(f, f.at('d')) +
        rise(f),
    ),
  'two-sizes'(f) {
    const { at, has } = f;
    const hose = [1, 2].map((i) => loss(f, at(`d${i}`), at('Q'), at(`L${i}`)));
    const appliance = has('n') ? at('n') * allowance(f, at('Q')) : 0;
    return atPump(f, hose[0] + hose[1] + appliance + rise(f) + endPressure(f, at('d2')));
  },
  'wye-equal'(f) {
    const { at } = f;
    const all = at('q') * at('N');
    const feeder = loss(f, at('d1'), all, at('L1'));
    return atPump(
      f,
      endPressure(f, at('d2')) + loss(f, at('d2'), at('q'), at('L2')) + feeder + allowance(f, all),
    );
  },
  'wye-unequal'(f) {
    const { at } = f;
    const legs = ['A', 'B'].map(
      (leg) => endPressure(f, at('d2')) + loss(f, at('d2'), at('q'), at(`L${leg}`)) + rise(f, `H${leg}`),
    );
    if (f.find === 'G') return Math.abs(legs[0] - legs[1]);
    const both = 2 * at('q');
    return atPump(f, Math.max(...legs) + loss(f, at('d1'), both, at('L1')) + allowance(f, both));
  },
  siamese(f) {
    const { at, rules } = f;
    const quarter = loss(f, at('d'), at('Q') / 2, at('L'));
    return atPump(f, rules.nozzle.smooth_master + quarter + allowance(f, at('Q'), true) + rise(f));
  },
  'progressive-lay'(f) {
    const { at, rules } = f;
    const n = at('N');
    // 1 + 4 + 9 + ...: the trunk's loss by the square of the laterals that each section carries.
    const squares = (n * (n + 1) * (2 * n + 1)) / 6;
    const trunk = squares * loss(f, at('d1'), at('q'), at('L1'));
    const lateral = loss(f, at('d2'), at('q'), at('L2'));
    return atPump(f, rules.nozzle.fog + trunk + lateral + n * allowance(f, n * at('q')) + rise(f));
  },
  draft({ at, has, rules, find }) {
    const v = rules.draft.length_per_vacuum;
    return find === 'V' ? (at('H') + at('F')) / v : at('V') * v - (has('F') ? at('F') : 0);
  },
  'net-pressure'({ at, has, rules }) {
    if (has('IP')) return at('PDP') - at('IP');
    const height = has('V') ? at('V') * rules.draft.length_per_vacuum : at('L') + at('F');
    return at('PDP') + height / rules.draft.feet_per_psi;
  },
  'altitude-draft'({ at, rules: { draft }, find }) {
    const air = draft.atmosphere - (at('E') / 1000) * draft.atmosphere_loss_per_1000;
    return air * draft.feet_per_psi * (find === 'H' ? draft.attainable : 1);
  },
  relay(f) {
    const { at, rules } = f;
    const spare = at('PDP') - rules.relay.residual - rise(f);
    return crossing((length) => spare - loss(f, at('d'), at('Q'), length), 1e6);
  },
  'tender-shuttle'({ at, has, rules: { shuttle } }) {
    const trip = has('c')
      ? at('c')
      : at('f') + at('g') + 2 * shuttle.fixed + 2 * at('D') * shuttle.per_distance;
    return (at('T') * at('n') * shuttle.usable) / trip;
  },
  'typing-orifice'(f) {
    const { at, has, us, find } = f;
    const k = (us ? 29.9 : 0.0668) * at('Cd') * at('d') ** 2;
    if (find === 'Q') return k * at('P') ** 0.5;
    const reading = (at('Q') / k) ** 2;
    return has('L') ? reading + loss(f, at('dh'), at('Q'), at('L')) : reading;
  },
  'operating-point'({ at, has, find }) {
    if (find === 'P') return straight(at('Q'), at('Q1'), at('P1'), at('Q2'), at('P2'));
    if (has('P')) return straight(at('P'), at('P1'), at('Q1'), at('P2'), at('Q2'));
    const height = has('E') ? at('E') : 0;
    const spare = [1, 2].map((i) => at(`P${i}`) - height - at('K') * (at(`Q${i}`) / 100) ** 2);
    return straight(0, spare[0], at('Q1'), spare[1], at('Q2'));
  },
  'parallel-pumps'({ at, has }) {
    if (has('P')) return 2 * against(at('S'), at('b'), at('P'));
    const height = has('E') ? at('E') : 0;
    return crossing((q) => at('S') - at('b') * (q / 200) ** 2 - height - at('K') * (q / 100) ** 2, 1e5);
  },
  'series-pumps'({ at, has }) {
    const both = (q: number) => at('SA') + at('SB') - (at('bA') + at('bB')) * (q / 100) ** 2;
    if (has('Q')) return both(at('Q'));
    return crossing((q) => both(q) - (has('E') ? at('E') : 0) - at('K') * (q / 100) ** 2, 1e5);
  },
  'weak-pump': ({ at, has }) =>
    has('P')
      ? against(at('SA'), at('bA'), at('P')) + against(at('SB'), at('bB'), at('P'))
      : against(at('SA'), at('bA'), at('SB')),
  'one-pump-out'({ at, find }) {
    const flow = crossing((q) => at('S') - (at('b') + at('K')) * (q / 100) ** 2, 1e5);
    return find === 'Q' ? flow : at('S') - at('b') * (flow / 100) ** 2;
  },
  'staging-choice'({ at, has }) {
    const need = at('NP') + at('FL') + (has('EL') ? at('EL') : 0);
    const one = Math.max(0, at('S') - at('b') * (at('Q') / 100) ** 2);
    const parallel = Math.max(0, at('S') - at('b') * (at('Q') / 200) ** 2);
    if (one >= need) return 'one pump alone';
    const best = Math.max(parallel, 2 * one);
    if (best < need) return 'neither staging';
    return parallel >= 2 * one ? 'two in parallel' : 'two in series';
  },
  'gauge-faults'({ at }) {
    const shutoff = (at('D0') - at('I0')) / at('A0') - 1;
    const flowing = (at('D1') - at('I1')) / at('A1') - 1;
    if (shutoff > 0.05) return 'wrong impeller or too high a speed';
    if (shutoff < -0.05) return 'worn impeller or wear ring, or low speed';
    return flowing < -0.05 ? 'starved suction' : 'no fault in the pump';
  },
};

/** Topics that are recomputed here. */
export const RECOMPUTED = Object.keys(SUMS);
