import type { Draft, Setting, Topic } from './draft.js';
import { decimalsOf, worked } from './print.js';
import type { Answer, Choice, Level, Problem, Sketch, SketchPart, Slip } from './problem.js';
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

/** A problem has at least this many wrong answers of its own, so that four choices are always to be had. */
export const LEAST_SLIPS = 3;

/**
 * Works a draft into a problem with key, slips and choices, or says why it is not fit: a figure out of bounds, or too few
 * known slips that lead to other answers.
 */
export function makeProblem(
  topic: Pick<Topic, 'id' | 'title'>,
  draft: Draft,
  setting: Setting,
  at: Place,
  choices: number,
): Problem | Unfit {
  const right = work(draft);
  for (const [symbol, [least, most]] of Object.entries(draft.bounds)) {
    const value = right.value(symbol);
    if (!(value >= least && value <= most)) return `${symbol} = ${value} is not from ${least} to ${most}`;
  }
  const last = draft.sum[draft.sum.length - 1];
  const answer = answerOf(draft, right, setting);
  const slips = slipsOf(draft, answer);
  const apart = answer.kind === 'word' ? slips : farApart(slips, answer);
  if (apart.length < Math.min(LEAST_SLIPS, answer.kind === 'word' ? answer.options.length - 1 : LEAST_SLIPS))
    return `only ${apart.length} slips give another answer`;
  const crossCheck = draft.crossCheck?.(right.value);
  if (draft.keyedBySolver && crossCheck && answer.kind === 'number') {
    const gap = Math.abs(crossCheck.solver.value - crossCheck.hand.value);
    if (gap > answer.tolerance) return `the solver is ${gap} ${answer.unit} away`;
  }
  const problem: Problem = {
    ...at,
    topic: topic.id,
    topicTitle: topic.title,
    level: setting.level as Level,
    rules: setting.ruleSet.name,
    units: setting.units,
    question: draft.question,
    given: draft.given,
    constants: draft.constants,
    find: { symbol: last.symbol, name: draft.find, unit: last.unit },
    rulesUsed: rulesOf(draft, setting),
    sketch: draft.sketch && sketchOf(draft.sketch),
    steps: stepsOf(draft, right),
    answer,
    crossCheck,
    slips,
    choices: choicesOf(answer, apart, choices, new Draw(`choices of ${at.id}`)),
  };
  return problem;
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

function answerOf(draft: Draft, { answer, value }: Worked, { rules }: Setting): Answer {
  if (draft.word) {
    const { options, decide, text } = draft.word;
    const word = decide(value);
    return { kind: 'word', word, text: text(word, value), options };
  }
  const { unit, decimals } = draft.sum[draft.sum.length - 1];
  const tolerance = draft.tolerance ?? toleranceOf(answer, unit, rules, draft.relativeTolerance);
  return {
    kind: 'number',
    value: answer,
    unit,
    text: worked(answer, unit, decimals),
    tolerance,
    toleranceText: toleranceText(tolerance, unit),
  };
}

/** The sum redone with each slip; those that come out right all the same, or impossible, are left out. */
function slipsOf(draft: Draft, answer: Answer): Slip[] {
  const slips: Slip[] = [];
  for (const alteration of draft.alterations) {
    const why = alteration.why ?? SLIPS[alteration.slip];
    let redone: Worked;
    try {
      redone = work(draft, alteration);
    } catch {
      // A slip can lead to a sum that has no value, such as the root of a negative pressure: nobody answers that.
      continue;
    }
    if (draft.word && answer.kind === 'word') {
      const word = draft.word.decide(redone.value);
      if (word === answer.word || slips.some((slip) => slip.value === word)) continue;
      slips.push({ slip: alteration.slip, why, value: word, text: word });
    } else if (answer.kind === 'number') {
      const value = redone.answer;
      const decimals = draft.sum[draft.sum.length - 1].decimals ?? decimalsOf(value, answer.unit);
      const text = worked(value, answer.unit, decimals);
      if (value <= 0 || Math.abs(value - answer.value) <= 2 * answer.tolerance) continue;
      if (slips.some((slip) => slip.text === text)) continue;
      slips.push({ slip: alteration.slip, why, value, text });
    }
  }
  if (draft.word && answer.kind === 'word') {
    for (const [word, { slip, why }] of Object.entries(draft.word.wrong ?? {}))
      if (word !== answer.word && !slips.some(({ value }) => value === word))
        slips.push({ slip, why: why ?? SLIPS[slip], value: word, text: word });
  }
  return slips;
}

/** How far from a value another may be and still be taken for it. */
const band = (value: number, answer: { value: number; tolerance: number }) =>
  Math.max(answer.tolerance, (answer.tolerance * Math.abs(value)) / Math.abs(answer.value));

/** A wrong choice is no more than so many times the answer, or less than that part of it: others nobody takes for right. */
const PLAUSIBLE = 12;

/** Slips whose answers lie outside of each other's tolerance, those nearest to the answer first. */
function farApart(slips: readonly Slip[], answer: Extract<Answer, { kind: 'number' }>): Slip[] {
  const distance = (slip: Slip) => Math.abs(Math.log((slip.value as number) / answer.value));
  const kept: Slip[] = [];
  const near = slips.filter((slip) => distance(slip) <= Math.log(PLAUSIBLE));
  for (const slip of near.sort((a, b) => distance(a) - distance(b))) {
    const value = slip.value as number;
    const clear = kept.every((other) => {
      const gap = Math.abs((other.value as number) - value);
      return gap > band(value, answer) + band(other.value as number, answer);
    });
    const clearOfRight = Math.abs(value - answer.value) > band(value, answer) + answer.tolerance;
    if (clear && clearOfRight) kept.push(slip);
  }
  return kept;
}

/** How many of the nearest slips the wrong choices are drawn from. */
const NEAREST = 6;

function choicesOf(answer: Answer, apart: readonly Slip[], count: number, draw: Draw): Choice[] {
  if (count === 0) return [];
  if (answer.kind === 'word')
    return answer.options.map((option, index) => {
      const slip = apart.find(({ value }) => value === option)?.slip;
      const right = option === answer.word;
      return {
        letter: letter(index),
        text: option,
        value: option,
        right,
        ...(slip && !right ? { slip } : {}),
      };
    });
  const wrong = draw
    .shuffled(apart.slice(0, NEAREST))
    .slice(0, count - 1)
    .map(({ slip, text, value }) => ({ text, value, right: false, slip }));
  return [...wrong, { text: answer.text, value: answer.value, right: true }]
    .sort((a, b) => (a.value as number) - (b.value as number))
    .map((choice, index) => ({ letter: letter(index), ...choice }));
}

const letter = (index: number) => String.fromCharCode(65 + index);

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
