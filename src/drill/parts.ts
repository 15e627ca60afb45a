import type { Drafting, Rounding, Setting } from './draft.js';
import { HOSE, type HoseFacts, SECTION } from './equipment.js';
import { figure, worked } from './print.js';
import type { CrossCheck } from './problem.js';
import type { Draw } from './random.js';
import { HOSE_SIZES, type HoseSize } from './rules/rule-set.js';
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

/** A hose of the sum, its bore as `d` and its length as `L` with the number that is given; its length as printed. */
export function giveHose(
  d: Drafting,
  number: '' | '1' | '2',
  name: string,
  { bore, name: size }: HoseFacts,
  lengthName: string,
  length: number,
): string {
  const { unit } = d.setting;
  d.give(`d${number}`, name, bore, unit.bore, size);
  return d.give(`L${number}`, lengthName, length, unit.length);
}

/** One hose of those that there are, its length and its flow. */
export function drawOneHose(draw: Draw, setting: Setting, sizesThere: readonly HoseSize[]) {
  const hose = draw.pick(sizesThere);
  const most = lengths(setting, 300 + 100 * setting.level);
  return {
    hose,
    length: drawLength(draw, setting, lengths(setting, 100), most),
    flow: drawFlow(draw, setting, hose),
  };
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

export { friction } from './friction.js';
