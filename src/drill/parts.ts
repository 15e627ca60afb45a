import type { Drafting, Rounding, Setting } from './draft.js';
import { HOSE, type HoseFacts, REFERENCE_COEFFICIENT, SECTION } from './equipment.js';
import { figure, worked } from './print.js';
import type { CrossCheck } from './problem.js';
import type { Draw } from './random.js';
import { type FrictionRule, HOSE_SIZES, type HoseSize } from './rules/rule-set.js';
import { exactElevation, type LayLine, requiredPressure } from './solver/required-pressure.js';

/** Sizes that the rule set has friction for, of those asked, smallest first. */
export function sizes(setting: Setting, among: readonly HoseSize[] = HOSE_SIZES): HoseSize[] {
  const { hoses } = setting.rules.friction;
  return HOSE_SIZES.filter((size) => among.includes(size) && hoses[size] !== undefined);
}

/** Hose that a hand line is made of; a wildland class works with 1 in and 1-1/2 in mostly. */
export const HAND: readonly HoseSize[] = ['1', '1.5', '1.75', '2', '2.5'];
const WILDLAND: readonly HoseSize[] = ['1', '1.5', '1.75'];

export function handSizes(setting: Setting): HoseSize[] {
  return sizes(setting, setting.rules.appliance.policy === 'each' ? WILDLAND : HAND);
}
export const SUPPLY: readonly HoseSize[] = ['2.5', '3', '3.5', '4', '5'];

export function hoseFacts(setting: Setting, size: HoseSize): HoseFacts {
  return HOSE[setting.units][size];
}

/** A flow that the size usually carries and the rule set has a figure for; rounder at low levels. */
export function drawFlow(draw: Draw, setting: Setting, size: HoseSize, share = 1): number {
  const { friction } = setting.rules;
  const rule = friction.hoses[size];
  if (friction.method === 'table') return draw.pick(friction.hoses[size]?.table ?? [])[0];
  const [least, most, step] = hoseFacts(setting, size).flows;
  const from = Math.max(least * share, rule?.from_flow ?? 0);
  const to = Math.min(most, rule?.to_flow ?? most);
  const coarse = setting.level === 1 && draw.chance(0.7) ? step * 2 : step;
  return draw.stepped(Math.ceil(from / step) * step, to, coarse);
}

/** Whether the rule set has friction for that size at that flow. */
export function covers(setting: Setting, size: HoseSize, flow: number): boolean {
  const { friction } = setting.rules;
  const rule = friction.hoses[size];
  if (rule === undefined) return false;
  if (friction.method === 'table') return friction.hoses[size]?.table.some(([at]) => at === flow) ?? false;
  return flow >= (rule.from_flow ?? 0) && flow <= (rule.to_flow ?? Number.POSITIVE_INFINITY);
}

/** A length in whole sections, in hundreds at level 1. */
export function drawLength(draw: Draw, setting: Setting, least: number, most: number): number {
  const section = SECTION[setting.units] * (setting.level === 1 && draw.chance(0.7) ? 2 : 1);
  return section * draw.whole(Math.max(1, Math.ceil(least / section)), Math.floor(most / section));
}

/** A height, in tens of feet or fives of metres; finer from level 4 on. */
export function drawHeight(draw: Draw, setting: Setting, least: number, most: number): number {
  const metric = setting.units === 'si';
  const step = setting.level >= 4 ? (metric ? 1 : 5) : metric ? 5 : 10;
  const scale = metric ? 0.3 : 1;
  return step * draw.whole(Math.max(1, Math.ceil((least * scale) / step)), Math.floor((most * scale) / step));
}

/** The other units' figure of what is written in feet, psi or gpm for both. */
export const lengths = (setting: Setting, feet: number): number =>
  setting.units === 'us' ? feet : feet * 0.3;
export const pressures = (setting: Setting, psi: number): number => (setting.units === 'us' ? psi : psi * 7);
export const flows = (setting: Setting, gpm: number): number => (setting.units === 'us' ? gpm : gpm * 3.8);

export interface FrictionPart {
  readonly symbol: string;
  readonly say: string;
  readonly size: HoseSize;
  /** The flow's symbol, and its value where a table is read. */
  readonly flow: string;
  readonly flowValue: number;
  readonly length: string;
  /** Put behind the symbols of constants where several hoses need some: `1`. */
  readonly tag?: string;
  /** No slips of its own: another part of the problem is what is taught. */
  readonly quiet?: boolean;
}

/** The friction in a length of hose by the rule set's method, with the slips that go with it. */
export function friction(d: Drafting, part: FrictionPart): void {
  const { setting } = d;
  const { rules, unit } = setting;
  const { symbol, size, flow, length, tag = '', quiet = false } = part;
  const hose = hoseFacts(setting, size).name;
  const hundreds = `(${length} / (100 ${unit.l}))`;
  const q = `(${flow} / (100 ${unit.q}))`;
  const rule = rules.friction.hoses[size];
  if (rule === undefined) throw new Error(`${setting.ruleSet.name} has no friction for ${hose} hose`);
  const formula = frictionFormula(d, rules.friction, part, { q, hundreds, hose, tag });
  d.step(symbol, part.say, formula.right, unit.pressure);
  if (quiet) return;
  d.slip(formula.slip.slip, { formulas: { [symbol]: formula.slip.formula }, set: formula.slip.set });
  const perLength = formula.right.replace(` * ${hundreds}`, ` * (${length} / (10 ${unit.l}))`);
  d.slip('length-not-per-hundred', { formulas: { [symbol]: perLength }, why: perTen(setting) });
  const section = SECTION[setting.units] * 2;
  const short = `((${length} - ${section} ${unit.l}) / (100 ${unit.l}))`;
  d.slip('sections-miscounted', {
    formulas: { [symbol]: formula.right.replace(hundreds, short) },
    why: `${figure(section, unit.length)} of hose was left out.`,
  });
  if (rules.friction.method !== 'coefficient') {
    const mixed = `${REFERENCE_COEFFICIENT[size]} ${unit.p} * ${q}^2 * ${hundreds}`;
    d.slip('method-mixed', { formulas: { [symbol]: mixed } });
  }
  for (const wrong of formula.otherSizes) d.slip('wrong-coefficient', { set: wrong.set, why: wrong.why });
}

function perTen(setting: Setting): string {
  const { length } = setting.unit;
  return `The length was divided by 10 in place of 100: friction figures are for each 100 ${length} of hose.`;
}

interface FrictionFormula {
  readonly right: string;
  readonly slip: {
    readonly slip: 'flow-not-squared' | 'ten-not-taken-off' | 'term-dropped' | 'wrong-row';
    readonly formula: string;
    readonly set?: Record<string, number>;
  };
  readonly otherSizes: { set: Record<string, number>; why: string }[];
}

interface Written {
  readonly q: string;
  readonly hundreds: string;
  readonly hose: string;
  readonly tag: string;
}

function frictionFormula(
  d: Drafting,
  rule: FrictionRule,
  { size, flow, flowValue }: FrictionPart,
  { q, hundreds, hose, tag }: Written,
): FrictionFormula {
  const { setting } = d;
  const { unit } = setting;
  const per = `100 ${unit.length}`;
  const others = <T>(figureOf: (other: HoseSize) => T | undefined): [HoseSize, T][] => {
    const at = HOSE_SIZES.indexOf(size);
    const near = [HOSE_SIZES[at - 1], HOSE_SIZES[at + 1]].filter((other) => other !== undefined);
    return near.flatMap((other) => {
      const found = figureOf(other);
      return found === undefined ? [] : [[other, found] as [HoseSize, T]];
    });
  };
  const why = (other: HoseSize) =>
    `The friction figure of ${hoseFacts(setting, other).name} hose was used for ${hose} hose.`;
  switch (rule.method) {
    case 'coefficient': {
      const own = rule.hoses[size];
      const C = `C${tag}`;
      const name = `coefficient of ${hose} hose: loss of ${per} at 100 ${unit.flow}`;
      d.rule(C, name, own?.coefficient ?? Number.NaN, unit.pressure, own?.source ?? '');
      const right = `${C} * ${q}^2 * ${hundreds}`;
      return {
        right,
        slip: { slip: 'flow-not-squared', formula: `${C} * ${q} * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.coefficient).map(([other, value]) => ({
          set: { [C]: value },
          why: why(other),
        })),
      };
    }
    case 'condensed_q': {
      const own = rule.hoses[size];
      const D = `D${tag}`;
      d.rule(D, `divisor of ${hose} hose`, own?.divisor ?? Number.NaN, '', own?.source ?? '');
      return {
        right: `${q}^2 / ${D} * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'flow-not-squared', formula: `${q} / ${D} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.divisor).map(([other, value]) => ({
          set: { [D]: value },
          why: why(other),
        })),
      };
    }
    case 'drop_ten': {
      d.cite(`loss of ${per} is the flow without its last digit, less 10`, rule.hoses[size]?.source ?? '');
      const tens = `${flow} / (10 ${unit.q})`;
      return {
        right: `(${tens} - 10) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'ten-not-taken-off', formula: `${tens} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: [],
      };
    }
    case 'tenths': {
      const own = rule.hoses[size];
      const N = `N${tag}`;
      d.rule(N, `N of ${hose} hose`, own?.factor ?? Number.NaN, '', own?.source ?? '');
      const tens = `${flow} * ${N} / (10 ${unit.q})`;
      return {
        right: `(${tens} - 10) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'ten-not-taken-off', formula: `${tens} * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.factor).map(([other, value]) => ({
          set: { [N]: value },
          why: why(other),
        })),
      };
    }
    case 'old_square': {
      const own = rule.hoses[size];
      const share = own?.share ?? Number.NaN;
      const S = `share${tag}`;
      const second = flowValue < 100 ? `${q} / 2` : q;
      d.cite(
        `loss of ${per} of 2-1/2 in hose is 2Q² + Q, Q in hundreds of ${unit.flow} (Q/2 in place of Q under 100)`,
        own?.source ?? '',
      );
      d.rule(S, `share of the loss in 2-1/2 in hose, for ${hose} hose`, share, '', own?.source ?? '');
      return {
        right: `${S} * (2 * ${q}^2 + ${second}) * (1 ${unit.p}) * ${hundreds}`,
        slip: { slip: 'term-dropped', formula: `${S} * 2 * ${q}^2 * (1 ${unit.p}) * ${hundreds}` },
        otherSizes: others((other) => rule.hoses[other]?.share).map(([other, value]) => ({
          set: { [S]: value },
          why: why(other),
        })),
      };
    }
    case 'table': {
      const own = rule.hoses[size];
      const rows = own?.table ?? [];
      const at = rows.findIndex(([q1]) => q1 === flowValue);
      if (at < 0) throw new Error(`the table of ${hose} hose has no row for ${flowValue} ${unit.flow}`);
      const F = `F${tag}`;
      const name = `loss of ${per} of ${hose} hose at ${figure(flowValue, unit.flow)}, read off the table`;
      d.rule(F, name, rows[at][1], unit.pressure, own?.source ?? '');
      const wrongRow = rows[at + 1] ?? rows[at - 1];
      return {
        right: `${F} * ${hundreds}`,
        slip: { slip: 'wrong-row', formula: `${F} * ${hundreds}`, set: { [F]: wrongRow[1] } },
        otherSizes: rows
          .filter((_, index) => Math.abs(index - at) === 1 && rows[index] !== wrongRow)
          .map(([, loss]) => ({ set: { [F]: loss }, why: 'The wrong row of the table was read.' })),
      };
    }
  }
}

/** The pressure that a height costs or gives: a step `EL` of the symbol `H`. */
export function elevation(d: Drafting, symbol = 'EL', height = 'H', quiet = false): void {
  const { rules, unit } = d.setting;
  d.rule('e', 'pressure by height', rules.elevation.rate, unit.slope, rules.elevation.source);
  d.step(symbol, 'Pressure of the height', `e * ${height}`, unit.pressure);
  if (!quiet)
    d.slip('feet-and-psi-inverted', { formulas: { [symbol]: `${height} / e * (1 ${unit.p}/${unit.l})^2` } });
}

/** The allowance for appliances at a flow by the rule set, a unit of pressure each. */
export function allowance(setting: Setting, flow: number, master = false): number {
  const rule = setting.rules.appliance;
  if (rule.policy === 'none') return 0;
  if (rule.policy === 'each') return rule.each;
  if (master) return rule.master;
  return flow >= rule.from_flow ? rule.each : rule.below;
}

/** The loss of `count` appliances at a flow: a step `AL`, with the slips of counting. */
export function appliances(
  d: Drafting,
  count: number,
  flow: number,
  name = 'appliances in the line',
  master = false,
): void {
  const { setting } = d;
  const { unit, rules } = setting;
  const each = allowance(setting, flow, master);
  d.give('n', name, count, '');
  d.rule('a', 'allowance for an appliance at this flow', each, unit.pressure, rules.appliance.source);
  d.step('AL', 'Loss in the appliances', 'n * a', unit.pressure);
  const full = pressures(setting, 10);
  if (each === 0)
    d.slip('appliance-miscounted', {
      set: { a: full },
      why: `${figure(full, unit.pressure)} was counted for each appliance, where this rule set allows nothing at this flow.`,
    });
  else {
    d.slip('appliance-dropped', { formulas: { AL: '0 * a' } });
    if (count > 1)
      d.slip('appliance-miscounted', {
        set: { n: 1 },
        why: 'One appliance was counted: each of them costs its allowance.',
      });
  }
}

/** How the rule set rounds a pump pressure. */
export function pumpRounding(setting: Setting): { round?: Rounding } {
  const to = setting.rules.rounding.pump_pressure;
  if (to <= 0) return {};
  return { round: { to, how: 'nearest', text: `to the nearest ${figure(to, setting.unit.pressure)}` } };
}

export type NozzleKind = 'fog' | 'smooth_hand' | 'smooth_master';

export const NOZZLE_NAME: Record<NozzleKind, string> = {
  fog: 'fog nozzle',
  smooth_hand: 'smooth-bore hand line nozzle',
  smooth_master: 'smooth-bore master stream nozzle',
};

/** The nozzle pressure of the rule set as the constant `NP`, with the slip of taking another nozzle's. */
export function nozzlePressure(d: Drafting, kind: NozzleKind, symbol = 'NP', quiet = false): number {
  const { rules, unit } = d.setting;
  const value = rules.nozzle[kind];
  d.rule(symbol, `pressure of a ${NOZZLE_NAME[kind]}`, value, unit.pressure, rules.nozzle.source);
  if (!quiet) {
    const other = kind === 'fog' ? 'smooth_hand' : 'fog';
    d.slip('nozzle-pressure-swapped', {
      set: { [symbol]: rules.nozzle[other] },
      why: `The pressure of a ${NOZZLE_NAME[other]} was used for a ${NOZZLE_NAME[kind]}.`,
    });
  }
  return value;
}

/** Hand answer beside the solver's, with what each rule of thumb puts on or takes off. */
export function besideSolver(
  setting: Setting,
  hand: number,
  lay: readonly LayLine[],
  rules: { readonly elevation?: number; readonly rise?: number; readonly appliances?: number },
): CrossCheck {
  const { units, unit } = setting;
  const solver = requiredPressure(lay, units);
  const print = (value: number) => worked(value, unit.pressure);
  const reasons: string[] = [];
  const rise = rules.rise ?? 0;
  const height = (rules.elevation ?? 0) - exactElevation(rise, units);
  const near = pressures(setting, 0.5);
  if (Math.abs(height) >= near)
    reasons.push(
      `the rule of ${figure(setting.rules.elevation.rate, unit.slope)} in place of the weight of water ${height > 0 ? 'adds' : 'takes off'} ${print(Math.abs(height))}`,
    );
  const fixtures = rules.appliances ?? 0;
  if (fixtures >= near)
    reasons.push(`the allowance for appliances, which the solver leaves out, adds ${print(fixtures)}`);
  const rest = hand - solver - height - fixtures;
  if (Math.abs(rest) >= near) {
    const rounding = setting.rules.rounding.pump_pressure;
    const what =
      setting.rules.friction.method === 'coefficient' && setting.units === 'us'
        ? 'rounding'
        : rounding > 0
          ? 'the hand method’s friction and rounding'
          : 'the hand method’s friction';
    reasons.push(`${what} ${rest > 0 ? 'adds' : 'takes off'} ${print(Math.abs(rest))}`);
  }
  const reason =
    reasons.length === 0
      ? 'The rules leave nothing out here that the solver counts.'
      : `${reasons.join('; ').replace(/^./, (first) => first.toUpperCase())}.`;
  return {
    hand: { value: hand, unit: unit.pressure },
    solver: { value: solver, unit: unit.pressure },
    handText: print(hand),
    solverText: print(solver),
    reason,
  };
}

/** What a line ends in, with its pressure as `NP`: a nozzle, or, where the hose is supply hose, the next engine. */
export interface LineEnd {
  readonly pressure: number;
  /** `a fog nozzle flowing 60 gpm`. */
  readonly words: string;
  readonly label: string;
}

export function lineEnd(d: Drafting, hose: HoseSize, flow: string, quiet = false): LineEnd {
  const { rules, unit } = d.setting;
  if (HAND.includes(hose))
    return {
      pressure: nozzlePressure(d, 'fog', 'NP', quiet),
      words: `a fog nozzle flowing ${flow}`,
      label: `fog nozzle, ${flow}`,
    };
  const { residual, source } = rules.relay;
  d.rule('NP', 'pressure to keep at the next intake', residual, unit.pressure, source);
  if (!quiet)
    d.slip('nozzle-pressure-swapped', {
      set: { NP: rules.nozzle.fog },
      why: 'A nozzle’s pressure was used, where the line feeds an intake.',
    });
  return {
    pressure: residual,
    words: `the intake of the next engine, which takes ${flow}`,
    label: `next engine, ${flow}`,
  };
}

/** Sizes for a line from a pump to a nozzle, or, where the rule set knows none of those, to the next engine. */
export function lineSizes(setting: Setting): HoseSize[] {
  const hand = handSizes(setting);
  return hand.length > 0 ? hand : sizes(setting, SUPPLY);
}
