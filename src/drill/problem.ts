/** How hard a problem is, from one step with round figures (1) to many steps with traps (5). */
export type Level = 1 | 2 | 3 | 4 | 5;

export const LEVELS: readonly Level[] = [1, 2, 3, 4, 5];

/** The units that a whole sheet is written in. */
export type DrillUnits = 'us' | 'si';

/** A unit as it is printed in problems and keys; `''` is a bare number (a count, a ratio). */
export type PrintedUnit =
  | 'psi'
  | 'kPa'
  | 'psi/ft'
  | 'kPa/m'
  | 'gpm'
  | 'L/min'
  | 'ft'
  | 'm'
  | 'in'
  | 'mm'
  | 'ft³'
  | 'm³'
  | 'gal'
  | 'L'
  | 'lb'
  | 'kg'
  | 'lbf'
  | 'N'
  | 'min'
  | 'mi'
  | 'km'
  | 'inHg'
  | 'mmHg'
  | 'hp'
  | 'kW'
  | '%'
  | 'in²'
  | 'lb/gal'
  | 'kg/L'
  | '';

/** A number and the unit it is printed in (never SI unless that is what is printed). */
export interface Figure {
  readonly value: number;
  readonly unit: PrintedUnit;
}

/** One fact of the question. `text` is the figure as printed: `1-1/2 in`, `300 ft`. */
export interface Given extends Figure {
  readonly symbol: string;
  readonly name: string;
  readonly text: string;
}

export interface Find {
  readonly symbol: string;
  readonly name: string;
  readonly unit: PrintedUnit;
}

/** One rule that the key rests on, as printed there. */
export interface RuleUsed {
  readonly text: string;
  readonly source: string;
}

/**
 * One step of a key. `formula` is the very expression that mathjs evaluated, over the symbols of the givens, the
 * rules and the steps before it; `substitution` is the same expression with the figures written in.
 */
export interface Step extends Figure {
  readonly symbol: string;
  readonly say: string;
  readonly formula: string;
  readonly substitution: string;
  /** The value as printed, with its unit. */
  readonly text: string;
  /** How `text` was rounded, or what the rule set does to the figure itself: `shown to 0.1 psi`. */
  readonly rounding: string;
}

/** A rule's figure that steps use but the question does not give: a hose coefficient, psi per foot. */
export interface Constant extends Figure {
  readonly symbol: string;
  readonly name: string;
  readonly text: string;
  readonly source: string;
}

export interface NumberAnswer extends Figure {
  readonly kind: 'number';
  readonly text: string;
  /** Half the width of the band that is marked right, in the answer's unit. */
  readonly tolerance: number;
  readonly toleranceText: string;
}

export interface WordAnswer {
  readonly kind: 'word';
  /** What the key says: `series`. Always one of `options`. */
  readonly word: string;
  readonly text: string;
  /** Everything that could be answered; the question lists them. */
  readonly options: readonly string[];
}

export type Answer = NumberAnswer | WordAnswer;

/** The program's own solution beside the hand method's, and why they part. */
export interface CrossCheck {
  readonly hand: Figure;
  readonly solver: Figure;
  readonly handText: string;
  readonly solverText: string;
  readonly reason: string;
}

/** What a wrong answer betrays, worked by redoing the sum with the slip. */
export interface Slip {
  readonly slip: string;
  /** What the student did, and what to teach: a whole sentence. */
  readonly why: string;
  /** The wrong answer: a number in the answer's unit, or one of a word answer's options. */
  readonly value: number | string;
  readonly text: string;
}

export interface Choice {
  readonly letter: string;
  readonly text: string;
  readonly value: number | string;
  readonly right: boolean;
  /** The slip behind a wrong choice, and what was done to come to it. */
  readonly slip?: string;
  readonly why?: string;
}

/** A lay as a drawing needs it: parts in the order that water meets them. */
export type SketchPart =
  | {
      readonly kind: 'source';
      readonly what: 'tank' | 'hydrant' | 'draft' | 'tender';
      readonly label: string;
    }
  | { readonly kind: 'pump'; readonly label: string }
  | { readonly kind: 'hose'; readonly label: string; readonly rise?: string; readonly lines?: number }
  | { readonly kind: 'appliance'; readonly label: string }
  | { readonly kind: 'gauge'; readonly label: string }
  | { readonly kind: 'nozzle'; readonly label: string; readonly shut?: boolean }
  /** Legs part here; the parts after it are the main line going on. */
  | { readonly kind: 'branch'; readonly label: string; readonly legs: readonly (readonly SketchPart[])[] }
  /** Lines side by side that meet again: a siamese, or two pumps in parallel. */
  | { readonly kind: 'joined'; readonly label: string; readonly legs: readonly (readonly SketchPart[])[] };

export interface Sketch {
  readonly parts: readonly SketchPart[];
  /** The same in one line of words, for text output and for those who cannot see the drawing. */
  readonly words: string;
}

export interface Problem {
  /** `topic.level.rules.units.draw`: enough to make the same problem again with the same rule set. */
  readonly id: string;
  /** Place on its sheet, from 1. */
  readonly number: number;
  readonly topic: string;
  readonly topicTitle: string;
  readonly level: Level;
  /** Name of the rule set. */
  readonly rules: string;
  readonly units: DrillUnits;
  /** Seed of the sheet. */
  readonly seed: number;
  /** Version of the program that made it. */
  readonly version: string;
  readonly question: string;
  readonly given: readonly Given[];
  readonly constants: readonly Constant[];
  readonly find: Find;
  readonly rulesUsed: readonly RuleUsed[];
  readonly sketch?: Sketch;
  readonly steps: readonly Step[];
  readonly answer: Answer;
  readonly crossCheck?: CrossCheck;
  readonly slips: readonly Slip[];
  /** Empty unless multiple choice was asked for. A word answer's options are choices too. */
  readonly choices: readonly Choice[];
}
