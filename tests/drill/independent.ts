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
    // Hose that is counted out in sections.
    if (symbol === 'L' && figures.has('n0')) return at('n0') * at('s0');
    const value = figures.get(symbol);
    if (value === undefined) throw new Error(`${problem.id} gives no ${symbol}`);
    return value;
  };
  return sum({
    at,
    has: (symbol) => figures.has(symbol) || (symbol === 'L' && figures.has('n0')),
    or: (symbol, sum) => figures.get(symbol) ?? sum(),
    rules,
    us: problem.units === 'us',
    find: problem.find.symbol,
  });
}

interface Facts {
  at: (symbol: string) => number;
  has: (symbol: string) => boolean;
  /** What the question says was worked out already, or else what a sum gives. */
  or: (symbol: string, sum: () => number) => number;
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
  const { at, has, or, rules } = facts;
  const height = () =>
    has('S')
      ? (at('S') - 1) * rules.storey.loss
      : rules.elevation.rate * or('H', () => (at('G') * at('L')) / 100);
  const friction = or('FL', () => loss(facts, at('d'), at('Q'), at('L')));
  return atPump(facts, endPressure(facts, at('d')) + friction + sign * or('EL', height));
}

/** Water in a length of hose, in gal or L. */
const inHose = ({ at, us }: Facts) =>
  us ? ((Math.PI / 4) * at('d') ** 2 * at('L') * 12) / 231 : ((Math.PI / 4) * at('d') ** 2 * at('L')) / 1000;

const rise = ({ at, has, or, rules }: Facts, symbol = 'H') =>
  has(symbol) ? or(symbol.replace('H', 'EL'), () => rules.elevation.rate * at(symbol)) : 0;

const hoseLoss = (f: Facts) => f.or('FL', () => loss(f, f.at('d'), f.at('Q'), f.at('L')));

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
    const { at, has, or, rules, us } = f;
    const fill = us ? 1728 / 231 : 1000;
    const hose = () => or('V', () => inHose(f));
    if (f.find === 'R') return at('T') - hose();
    if (has('d')) return hose();
    const cubic = () =>
      or('A', () => (has('D') ? (Math.PI / 4) * at('D') ** 2 * at('H') : at('L') * at('B') * at('H')));
    const volume = or('V', () => cubic() * fill);
    return f.find === 'W' ? volume * rules.water.mass : volume;
  },
  'water-minutes'(f) {
    const { at, has, or, rules } = f;
    const usable = or('U', () => at('T') - at('T') * rules.tank.reserve);
    const filling = has('d') ? or('F', () => inHose(f)) : 0;
    return (usable - filling) / or('Q', () => at('q') * at('n'));
  },
  'friction-loss': (f) => hoseLoss(f),
  'single-line': (f) => atPump(f, hoseLoss(f) + endPressure(f, f.at('d'))),
  'line-uphill': (f) => slope(f, 1),
  'line-downhill': (f) => slope(f, -1),
  'smooth-bore-flow'({ at, has, or, rules, find }) {
    const area = at('d') * at('d');
    const k = rules.smooth_bore.constant * area;
    const needed = () => or('NP', () => (at('Q') / k) ** 2);
    if (find === 'R') return rules.reaction.smooth * area * needed();
    return find === 'Q' && has('NP') ? k * at('NP') ** 0.5 : needed();
  },
  appliances: (f) =>
    atPump(
      f,
      f.or('AL', () => f.at('n') * allowance(f, f.at('Q'))) +
        hoseLoss(f) +
        endPressure(f, f.at('d')) +
        rise(f),
    ),
  'two-sizes'(f) {
    const { at, has, or } = f;
    const hose = [1, 2].map((i) => or(`FL${i}`, () => loss(f, at(`d${i}`), at('Q'), at(`L${i}`))));
    const appliance = has('n') ? or('AL', () => at('n') * allowance(f, at('Q'))) : 0;
    return atPump(f, hose[0] + hose[1] + appliance + rise(f) + endPressure(f, at('d2')));
  },
  'wye-equal'(f) {
    const { at, or } = f;
    const all = or('Q', () => at('q') * at('N'));
    const feeder = or('FL1', () => loss(f, at('d1'), all, at('L1')));
    const leg = or('FL2', () => loss(f, at('d2'), at('q'), at('L2')));
    return atPump(
      f,
      endPressure(f, at('d2')) + leg + feeder + or('AL', () => allowance(f, at('q') * at('N'))),
    );
  },
  'wye-unequal'(f) {
    const { at, or } = f;
    const leg = (name: string) =>
      or(
        `P${name}`,
        () =>
          endPressure(f, at('d2')) +
          or(`FL${name}`, () => loss(f, at('d2'), at('q'), at(`L${name}`))) +
          rise(f, `H${name}`),
      );
    if (f.find === 'G') return Math.abs(leg('A') - leg('B'));
    const both = () => or('Q', () => 2 * at('q'));
    const higher = or('P', () => Math.max(leg('A'), leg('B')));
    const feeder = or('FL', () => loss(f, at('d1'), both(), at('L1')));
    return atPump(f, higher + feeder + or('AL', () => allowance(f, 2 * at('q'))));
  },
  siamese(f) {
    const { at, or, rules } = f;
    const each = or('FL', () =>
      loss(
        f,
        at('d'),
        or('q', () => at('Q') / 2),
        at('L'),
      ),
    );
    return atPump(
      f,
      rules.nozzle.smooth_master + each + or('AL', () => allowance(f, at('Q'), true)) + rise(f),
    );
  },
  'progressive-lay'(f) {
    const { at, has, or, rules } = f;
    const n = at('N');
    let trunk = 0;
    for (let i = 1; i <= n && !has('FL1'); i++)
      trunk += or(`T${i}`, () =>
        loss(
          f,
          at('d1'),
          or(`Q${i}`, () => (n - i + 1) * at('q')),
          at('L1'),
        ),
      );
    const lateral = or('FL2', () => loss(f, at('d2'), at('q'), at('L2')));
    const wyes = or('AL', () => n * allowance(f, n * at('q')));
    return atPump(f, rules.nozzle.fog + or('FL1', () => trunk) + lateral + wyes + rise(f));
  },
  draft({ at, has, or, rules, find }) {
    const v = rules.draft.length_per_vacuum;
    return find === 'V' ? (at('H') + at('F')) / v : or('T', () => at('V') * v) - (has('F') ? at('F') : 0);
  },
  'net-pressure'({ at, has, or, rules }) {
    if (has('IP')) return at('PDP') - at('IP');
    const height = () =>
      or('H', () => (has('V') ? at('V') * rules.draft.length_per_vacuum : at('L') + at('F')));
    return at('PDP') + or('PC', () => height() / rules.draft.feet_per_psi);
  },
  'altitude-draft'({ at, or, rules: { draft }, find }) {
    const air = () => or('B', () => draft.atmosphere - (at('E') / 1000) * draft.atmosphere_loss_per_1000);
    return or('T', () => air() * draft.feet_per_psi) * (find === 'H' ? draft.attainable : 1);
  },
  relay(f) {
    const { at, or, rules } = f;
    const spare = or('X', () => at('PDP') - rules.relay.residual - rise(f));
    return (spare / or('FL', () => loss(f, at('d'), at('Q'), 100))) * 100;
  },
  'tender-shuttle'({ at, or, rules: { shuttle } }) {
    const leg = () => or('w', () => shuttle.fixed + at('D') * shuttle.per_distance);
    const trip = or('c', () => at('f') + at('g') + 2 * leg());
    return (at('T') * at('n') * shuttle.usable) / trip;
  },
  'typing-orifice'(f) {
    const { at, has, or, us, find } = f;
    const k = (us ? 29.9 : 0.0668) * at('Cd') * at('d') ** 2;
    if (find === 'Q') return k * at('P') ** 0.5;
    const reading = or('P', () => (at('Q') / k) ** 2);
    return has('L') ? reading + or('FL', () => loss(f, at('dh'), at('Q'), at('L'))) : reading;
  },
  'operating-point'({ at, has, or, find }) {
    if (find === 'P') return straight(at('Q'), at('Q1'), at('P1'), at('Q2'), at('P2'));
    if (has('P')) return straight(at('P'), at('P1'), at('Q1'), at('P2'), at('Q2'));
    const height = has('E') ? at('E') : 0;
    const need = (i: number) => or(`N${i}`, () => height + at('K') * (at(`Q${i}`) / 100) ** 2);
    const one = or('X1', () => at('P1') - need(1));
    const two = or('X2', () => need(2) - at('P2'));
    return straight(0, one, at('Q1'), -two, at('Q2'));
  },
  'parallel-pumps'({ at, has, or }) {
    if (has('P')) return 2 * or('q', () => against(at('S'), at('b'), at('P')));
    const height = has('E') ? at('E') : 0;
    const fall = or('c', () => at('b') / 4);
    return crossing((q) => at('S') - fall * (q / 100) ** 2 - height - at('K') * (q / 100) ** 2, 1e5);
  },
  'series-pumps'({ at, has, or }) {
    if (has('Q')) {
      const [a, b] = ['A', 'B'].map((name) =>
        or(`P${name}`, () => at(`S${name}`) - at(`b${name}`) * (at('Q') / 100) ** 2),
      );
      return a + b;
    }
    const shutoff = or('S', () => at('SA') + at('SB'));
    const fall = or('c', () => at('bA') + at('bB'));
    const height = has('E') ? at('E') : 0;
    return crossing((q) => shutoff - height - (fall + at('K')) * (q / 100) ** 2, 1e5);
  },
  'weak-pump'({ at, has, or }) {
    if (!has('P') && !has('QA')) return against(at('SA'), at('bA'), at('SB'));
    const flow = (name: string) =>
      or(`Q${name}`, () => {
        const left = or(`X${name}`, () => Math.max(0, at(`S${name}`) - at('P')));
        return 100 * (left / at(`b${name}`)) ** 0.5;
      });
    return flow('A') + flow('B');
  },
  'one-pump-out'({ at, or, find }) {
    const flow = or('Q', () => crossing((q) => at('S') - (at('b') + at('K')) * (q / 100) ** 2, 1e5));
    return find === 'Q' ? flow : at('K') * (flow / 100) ** 2;
  },
  'staging-choice'({ at, has, or }) {
    const need = or('R', () => at('NP') + at('FL') + (has('EL') ? at('EL') : 0));
    const one = or('P1', () => Math.max(0, at('S') - at('b') * (at('Q') / 100) ** 2));
    const parallel = or('PP', () => Math.max(0, at('S') - at('b') * (at('Q') / 200) ** 2));
    if (one >= need) return 'one pump alone';
    const best = Math.max(parallel, 2 * one);
    if (best < need) return 'neither staging';
    return parallel >= 2 * one ? 'two in parallel' : 'two in series';
  },
  'gauge-faults'({ at, or }) {
    const part = (i: number) =>
      or(`X${i}`, () => or(`N${i}`, () => at(`D${i}`) - at(`I${i}`)) / at(`A${i}`)) - 1;
    if (part(0) > 0.05) return 'wrong impeller or too high a speed';
    if (part(0) < -0.05) return 'worn impeller or wear ring, or low speed';
    return part(1) < -0.05 ? 'starved suction' : 'no fault in the pump';
  },
};

/** Topics that are recomputed here. */
export const RECOMPUTED = Object.keys(SUMS);
