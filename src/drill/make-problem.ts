import { choicesOf, tried, wrongAnswers } from './choices.js';
import type { Draft, Setting, Topic } from './draft.js';
import { atLevel, doneGivens, doneWords } from './levels.js';
import { decimalsOf, worked } from './print.js';
import type { Answer, NumberAnswer, Problem, Sketch, SketchPart, Slip, WordAnswer } from './problem.js';
import { Draw } from './random.js';
import { SLIPS } from './slips.js';
import { toleranceOf, toleranceText } from './tolerance.js';
import { stepsOf, type Worked, work } from './work.js';

/** Where a problem belongs. */
export interface Place {
  readonly id: string;
  readonly number: number;
  readonly seed: number;
  readonly version: string;
}

/** Why a draft is not fit to be set; undefined where it is. */
export type Unfit = string;

/** A problem has at least so many wrong answers of known slips; a sum of one step has few. */
const LEAST_SLIPS = 1;
/** A band that is wider than this part of the answer tells nothing about who can work it. */
const WIDEST_BAND = 0.15;

/**
 * Works a draft into a problem with key, slips and choices, or says why it is not fit: not the steps of its level, a
 * figure out of bounds, a slip too near to the answer to be told from it, or too few mistakes that lead to other answers.
 */
export function makeProblem(
  topic: Pick<Topic, 'id' | 'title'>,
  posed: Draft,
  setting: Setting,
  at: Place,
  choices: number,
): Problem | Unfit {
  const level = setting.level;
  const draft = atLevel(posed, level, setting.units, new Draw(`level of ${at.id}`));
  if (typeof draft === 'string') return draft;
  const quick = work(draft, undefined, true);
  for (const [symbol, [least, most]] of Object.entries(draft.bounds)) {
    const value = quick.value(symbol);
    if (!(value >= least && value <= most)) return `${symbol} = ${value} is not from ${least} to ${most}`;
  }
  const made = draft.word ? wordsOf(draft, quick) : numbersOf(draft, quick, setting, at.id);
  if (typeof made === 'string') return made;
  const { answer, slips, wrong } = made;
  const right = work(draft);
  const crossCheck = draft.crossCheck?.(right.value);
  if (draft.keyedBySolver && crossCheck && answer.kind === 'number') {
    const gap = Math.abs(crossCheck.solver.value - crossCheck.hand.value);
    if (gap > answer.tolerance) return `the solver is ${gap} ${answer.unit} away`;
  }
  const last = draft.sum[draft.sum.length - 1];
  const done = doneGivens(draft, right.value);
  return {
    ...at,
    topic: topic.id,
    topicTitle: topic.title,
    level,
    rules: setting.ruleSet.name,
    units: setting.units,
    question: asked(draft, choices) + doneWords(done),
    given: [...draft.given, ...done],
    constants: draft.constants,
    find: { symbol: last.symbol, name: draft.find, unit: last.unit },
    rulesUsed: rulesOf(draft, setting),
    sketch: draft.sketch && sketchOf(draft.sketch),
    steps: stepsOf(draft, right),
    answer: answer.kind === 'number' ? { ...answer, value: right.answer } : answer,
    crossCheck,
    slips,
    choices: choicesOf(answer, wrong, choices, at.id),
  };
}

/** Options that are printed as choices are not listed in the question too. */
function asked({ question, word }: Draft, choices: number): string {
  if (word === undefined || choices === 0) return question;
  return question.replace(word.listed, '').replace(/\s+([.?])/g, '$1');
}

function rulesOf(draft: Draft, setting: Setting): Problem['rulesUsed'] {
  const { ruleSet, rules, unit } = setting;
  const rounding = rules.rounding.pump_pressure;
  const whole = { text: ruleSet.title, source: ruleSet.source };
  const rounded = draft.sum.some((step) => step.round && step.round.to === rounding);
  return [
    whole,
    ...draft.rulesUsed,
    ...draft.constants.map(({ name, text, source }) => ({ text: `${name}: ${text}`, source })),
    ...(rounded
      ? [{ text: `pump pressure to the nearest ${rounding} ${unit.pressure}`, source: rules.rounding.source }]
      : []),
  ];
}

interface Made<A extends Answer> {
  readonly answer: A;
  readonly slips: readonly Slip[];
  readonly wrong: readonly Slip[];
}

function wordsOf(draft: Draft, right: Worked): Made<WordAnswer> | Unfit {
  const decision = draft.word;
  if (decision === undefined) throw new Error('no word is asked');
  const { options, decide, text, against } = decision;
  const word = decide(right.value);
  const slips: Slip[] = [];
  for (const alteration of draft.alterations) {
    let option: string;
    try {
      option = decide(work(draft, alteration).value);
    } catch {
      continue;
    }
    const { slip, why = SLIPS[slip] } = alteration;
    if (option !== word && !slips.some(({ value }) => value === option))
      slips.push({ slip, why, value: option, text: option });
  }
  for (const option of options)
    if (option !== word && !slips.some(({ value }) => value === option))
      slips.push({ ...against(option, right.value), value: option, text: option });
  return { answer: { kind: 'word', word, text: text(word, right.value), options }, slips, wrong: slips };
}

function numbersOf(draft: Draft, right: Worked, setting: Setting, id: string): Made<NumberAnswer> | Unfit {
  const { unit, decimals, round } = draft.sum[draft.sum.length - 1];
  const value = right.answer;
  const all: Slip[] = [];
  let nearest = Number.POSITIVE_INFINITY;
  for (const alteration of draft.alterations) {
    const redone = tried(draft, alteration);
    if (redone === undefined || makesNoDifference(draft, alteration, right)) continue;
    nearest = Math.min(nearest, Math.abs(redone - value));
    const { slip, why = SLIPS[slip] } = alteration;
    all.push({ slip, why, value: redone, text: worked(redone, unit, decimals ?? decimalsOf(redone, unit)) });
  }
  const slips = all.filter(({ text }, index) => all.findIndex((other) => other.text === text) === index);
  if (slips.length < LEAST_SLIPS) return `only ${slips.length} slips give another answer`;
  const tolerance = toleranceOf(value, unit, setting.rules, {
    nearest,
    rounding: round?.to,
    relative: draft.relativeTolerance,
    absolute: draft.tolerance,
  });
  if (tolerance === undefined) return `a slip lies ${nearest} ${unit} from the answer`;
  if (tolerance > WIDEST_BAND * Math.abs(value)) return `± ${tolerance} is wide for ${value}`;
  const answer: NumberAnswer = {
    kind: 'number',
    value,
    unit,
    text: worked(value, unit, decimals),
    tolerance,
    toleranceText: toleranceText(tolerance, unit),
  };
  const wrong = wrongAnswers(draft, [...draft.given, ...doneGivens(draft, right.value)], answer, slips, id);
  if (wrong === undefined) return 'too few mistakes give choices near the answer';
  return { answer, slips, wrong };
}

/** A slip in a figure that is zero or one, or in a step that is done already, changes nothing: nobody can see it. */
function makesNoDifference(draft: Draft, alteration: Draft['alterations'][number], right: Worked): boolean {
  const { exact } = work(draft, alteration);
  return Math.abs(exact - right.exact) <= 1e-9 * Math.abs(right.exact);
}

function sketchOf(parts: readonly SketchPart[]): Sketch {
  return { parts, words: inWords(parts) };
}

function inWords(parts: readonly SketchPart[]): string {
  return parts
    .map((part) => {
      if (part.kind === 'branch' || part.kind === 'joined') {
        const legs = part.legs.map((leg) => `(${inWords(leg)})`).join(' + ');
        return part.label === '' ? `[${legs}]` : `${part.label} [${legs}]`;
      }
      if (part.kind === 'hose')
        return [
          part.lines && part.lines > 1 ? `${part.lines} × ` : '',
          part.label,
          part.rise ? `, ${part.rise}` : '',
        ].join('');
      return part.label;
    })
    .join(' → ');
}
