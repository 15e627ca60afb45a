import { figure } from './print.js';
import type {
  Constant,
  CrossCheck,
  DrillUnits,
  Figure,
  Given,
  Level,
  PrintedUnit,
  RuleUsed,
  SketchPart,
} from './problem.js';
import type { Draw } from './random.js';
import type { RuleSet, UnitRules } from './rules/rule-set.js';
import type { SlipId } from './slips.js';
import { TRADE_UNITS, type TradeUnits } from './trade-units.js';

/** What a topic poses its problem under. */
export interface Setting {
  readonly level: Level;
  readonly units: DrillUnits;
  readonly ruleSet: RuleSet;
  /** The rule set's figures in these units. */
  readonly rules: UnitRules;
  readonly unit: TradeUnits;
  /** For the wording and the invented names only, so that figures can be posed without it. */
  readonly wording: Draw;
  /** Name of the trainer's own rig, in place of an invented one. */
  readonly rig?: string;
}

/** How a step's figure is rounded before it goes on, as a rule set or a source has it. */
export interface Rounding {
  readonly to: number;
  readonly how: 'nearest' | 'down';
  readonly text: string;
}

export interface SumStep {
  readonly symbol: string;
  readonly say: string;
  /** A mathjs expression over the symbols before it. */
  readonly formula: string;
  readonly unit: PrintedUnit;
  readonly decimals?: number;
  readonly round?: Rounding;
}

/** A way to go wrong: other figures, or other formulae for some steps; the sum is then redone. */
export interface Alteration {
  readonly slip: SlipId;
  /** Said in place of the slip's usual words, where this problem needs its own. */
  readonly why?: string;
  readonly set?: Readonly<Record<string, number>>;
  readonly formulas?: Readonly<Record<string, string>>;
}

export interface WordDecision {
  readonly options: readonly string[];
  /** The words of the question that list the options; left out where they are printed below it as choices. */
  readonly listed: string;
  readonly decide: (value: (symbol: string) => number) => string;
  /** The word with its reason, for the key. */
  readonly text: (word: string, value: (symbol: string) => number) => string;
  /** What the figures say against a wrong option that no redone sum gives. */
  readonly against: (option: string, value: (symbol: string) => number) => { slip: SlipId; why: string };
}

/** A problem before it is worked. The last step is the answer. */
export interface Draft {
  readonly question: string;
  readonly given: readonly Given[];
  readonly constants: readonly Constant[];
  readonly rulesUsed: readonly RuleUsed[];
  readonly sketch?: readonly SketchPart[];
  readonly sum: readonly SumStep[];
  /** Steps that the question does for the student: worked first, rounded as they are printed, and out of reach of slips. */
  readonly done?: readonly SumStep[];
  readonly find: string;
  /** A number that is not the pump's pressure is not rounded as one. */
  readonly word?: WordDecision;
  /** What equipment and hose bear, by symbol, in the step's unit: outside of it the draw is thrown away. */
  readonly bounds: Readonly<Record<string, readonly [least: number, most: number]>>;
  readonly alterations: readonly Alteration[];
  readonly crossCheck?: (value: (symbol: string) => number) => CrossCheck | undefined;
  /** Marked right within this part of the answer in place of the rule set's, where reading a table costs more. */
  readonly relativeTolerance?: number;
  /** The solver's answer has to lie within the tolerance too: a draw where it does not is thrown away. */
  readonly keyedBySolver?: boolean;
  /** Marked right within this, in the answer's unit, in place of the rule set's band: where what is taught is smaller than that. */
  readonly tolerance?: number;
}

/**
 * A kind of problem: `draw` makes the figures, `pose` a question of them. Any figures can be posed: those of a published
 * example, or of a trainer's own lay.
 */
export interface Topic<Facts = unknown> {
  readonly id: string;
  readonly title: string;
  /** Levels that it has, by the steps that its problems take. */
  readonly levels: readonly Level[];
  /** The most steps that its problems have under a rule set, where that is fewer. */
  readonly reach?: (setting: Setting) => number;
  /** Why a rule set cannot have this topic; undefined where it can. */
  readonly lacks?: (setting: Setting) => string | undefined;
  readonly draw: (draw: Draw, setting: Setting) => Facts;
  readonly pose: (facts: Facts, setting: Setting) => Draft;
}

/** Keeps the type of the facts within a topic, and hides it from the list. */
export function topic<Facts>(definition: Topic<Facts>): Topic<Facts> {
  return definition;
}

/** Collects a draft piece by piece. */
export class Drafting {
  readonly setting: Setting;
  readonly given: Given[] = [];
  readonly constants: Constant[] = [];
  readonly rulesUsed: RuleUsed[] = [];
  readonly sum: SumStep[] = [];
  readonly alterations: Alteration[] = [];
  readonly bounds: Record<string, readonly [number, number]> = {};

  constructor(setting: Setting) {
    this.setting = setting;
  }

  give(symbol: string, name: string, value: number, unit: PrintedUnit, text = figure(value, unit)): string {
    this.given.push({ symbol, name, value, unit, text });
    return text;
  }

  rule(symbol: string, name: string, value: number, unit: PrintedUnit, source: string): void {
    if (this.constants.some((constant) => constant.symbol === symbol)) return;
    this.constants.push({ symbol, name, value, unit, text: figure(value, unit), source });
  }

  cite(text: string, source: string): void {
    if (!this.rulesUsed.some((rule) => rule.text === text)) this.rulesUsed.push({ text, source });
  }

  step(
    symbol: string,
    say: string,
    formula: string,
    unit: PrintedUnit,
    more: { decimals?: number; round?: Rounding } = {},
  ): void {
    this.sum.push({ symbol, say, formula, unit, ...more });
  }

  bound(symbol: string, least: number, most: number): void {
    this.bounds[symbol] = [least, most];
  }

  slip(slip: SlipId, change: Omit<Alteration, 'slip'>): void {
    this.alterations.push({ slip, ...change });
  }

  /** The formula that a step has now, for slips that change a part of it. */
  formulaOf(symbol: string): string {
    const found = this.sum.find((step) => step.symbol === symbol);
    if (found === undefined) throw new Error(`no step ${symbol}`);
    return found.formula;
  }

  draft(
    question: string,
    find: string,
    more: Partial<
      Pick<Draft, 'sketch' | 'word' | 'crossCheck' | 'keyedBySolver' | 'relativeTolerance' | 'tolerance'>
    > = {},
  ): Draft {
    const { given, constants, rulesUsed, sum, alterations, bounds } = this;
    const symbols = [...given, ...constants, ...sum].map(({ symbol }) => symbol);
    const twice = symbols.find((symbol, index) => symbols.indexOf(symbol) !== index);
    if (twice !== undefined) throw new Error(`${twice} stands for two things in: ${question}`);
    return { question, find, given, constants, rulesUsed, sum, alterations, bounds, ...more };
  }
}

export function settingOf(
  ruleSet: RuleSet,
  units: DrillUnits,
  level: Level,
  wording: Draw,
): Setting | undefined {
  const rules = ruleSet[units];
  if (rules === undefined) return undefined;
  return { level, units, ruleSet, rules, unit: TRADE_UNITS[units], wording };
}

export type { Figure };
