import type { Draft, SumStep } from './draft.js';
import { SECTION } from './equipment.js';
import { count, decimalsOf, figure, worked } from './print.js';
import type { DrillUnits, Given, Level, SketchPart } from './problem.js';
import { LEVELS } from './problem.js';
import type { Draw } from './random.js';

/** A level is its number of steps; the highest has as many or more. */
const HIGHEST: Level = 5;

/** Levels of a topic whose problems have up to so many steps. */
export const levelsTo = (most: number): readonly Level[] => LEVELS.filter((level) => level <= most);

/** How many sections of hose are counted out in words. */
const MOST_SECTIONS = 10;

/**
 * A draft with the steps of its level: exactly as many as its number, five or more at the highest. Steps too many are
 * done for the student, from the first; a step too few is made by giving the hose in sections. Says why where neither will do.
 */
export function atLevel(draft: Draft, level: Level, units: DrillUnits, draw: Draw): Draft | string {
  const wanted: number = level;
  const sectioned =
    draft.sum.length < wanted || (level >= 3 && draw.chance(0.4)) ? inSections(draft, units) : undefined;
  const fuller = sectioned ?? draft;
  if (fuller.sum.length < wanted) return `only ${fuller.sum.length} steps`;
  if (level === HIGHEST || fuller.sum.length === wanted) return fuller;
  return doneUpTo(fuller, fuller.sum.length - wanted);
}

/** Gives the hose as sections of a length, where the question says its length once as `300 ft of`. */
function inSections(draft: Draft, units: DrillUnits): Draft | undefined {
  const length = draft.given.find(({ symbol, unit }) => symbol === 'L' && (unit === 'ft' || unit === 'm'));
  if (length === undefined) return undefined;
  const { text, value, unit, name } = length;
  const phrase = `${text} of`;
  const at = draft.question.indexOf(phrase);
  if (at <= 0 || draft.question.indexOf(text, at + 1) >= 0 || /[.!?”] $/.test(draft.question.slice(0, at)))
    return undefined;
  const each = [2 * SECTION[units], SECTION[units]].find(
    (section) => value % section === 0 && value / section > 1 && value / section <= MOST_SECTIONS,
  );
  if (each === undefined) return undefined;
  const number = value / each;
  const sections = `${count(number)} ${figure(each, unit)} sections of`;
  const given: Given[] = [
    { symbol: 'n0', name: 'sections of hose', value: number, unit: '', text: count(number) },
    { symbol: 's0', name: 'length of a section', value: each, unit, text: figure(each, unit) },
  ];
  const step: SumStep = {
    symbol: 'L',
    say: name.replace(/^./, (c) => c.toUpperCase()),
    formula: 'n0 * s0',
    unit,
  };
  return {
    ...draft,
    question: draft.question.replace(phrase, sections),
    given: [...draft.given.flatMap((one) => (one === length ? given : [one]))],
    sum: [step, ...draft.sum],
    sketch: draft.sketch?.map((part) => relabelled(part, phrase, `${number} × ${figure(each, unit)} of`)),
    alterations: [
      ...draft.alterations.map((one) => {
        const { L, ...set } = one.set ?? {};
        if (L === undefined) return one;
        return { ...one, set, formulas: { ...one.formulas, L: `${L} ${unit} + 0 * s0` } };
      }),
      {
        slip: 'sections-miscounted',
        set: { n0: number - 1 },
        why: `One section of ${figure(each, unit)} too few was counted.`,
      },
    ],
  };
}

const relabelled = (part: SketchPart, from: string, to: string): SketchPart =>
  'label' in part ? { ...part, label: part.label.replace(from, to) } : part;

/** The first `many` steps done for the student, and told where later ones need them. */
function doneUpTo(draft: Draft, many: number): Draft {
  return { ...draft, done: draft.sum.slice(0, many), sum: draft.sum.slice(many) };
}

const named = (say: string) => say.replace(/[;:].*$/, '').replace(/^./, (c) => c.toLowerCase());

/** What the steps done for the student came to, as givens, where the steps that are left use them. */
export function doneGivens({ done = [], sum, word }: Draft, value: (symbol: string) => number): Given[] {
  const used = new Set(sum.flatMap(({ formula }) => formula.match(/[A-Za-z_][A-Za-z_0-9]*/g) ?? []));
  return done
    .filter(({ symbol }) => word !== undefined || used.has(symbol))
    .map(({ symbol, say, unit, decimals }) => ({
      symbol,
      name: named(say),
      value: value(symbol),
      unit,
      text: worked(value(symbol), unit, decimals ?? decimalsOf(value(symbol), unit)),
    }));
}

/** Said at the end of the question. */
export function doneWords(givens: readonly Given[]): string {
  if (givens.length === 0) return '';
  return ` Worked out already: ${givens.map(({ name, text }) => `${name}, ${text}`).join('; ')}.`;
}
