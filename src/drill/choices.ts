import type { Alteration, Draft } from './draft.js';
import { capital, decimalsOf, figure, worked } from './print.js';
import type { Answer, Choice, Given, NumberAnswer, Slip } from './problem.js';
import { Draw, hash } from './random.js';
import { work } from './work.js';

/** Places are dealt in so many parts, so that two, three and four choices come out even alike. */
export const PLACES = 12;
/** The most choices that a problem offers; what is fit to be set is judged by them. */
const MOST = 4;

/** Where among its choices a problem's right answer stands: 0 up to, not including, 12. Known from the id alone. */
export const placeOf = (id: string): number => hash(`place of ${id}`) % PLACES;

const rankOf = (place: number, count: number): number => Math.floor((place * count) / PLACES);

const letter = (index: number) => String.fromCharCode(65 + index);

/** A wrong choice is at most so many times the answer, or that part of it; the second where the first leaves too few. */
const NEAR = [2, 3];

interface Wrong {
  readonly slip: string;
  readonly why: string;
  readonly value: number;
  readonly text: string;
}

/**
 * The wrong choices of a problem in numbers: so many of them below and above as the place of the right answer asks for,
 * each the answer to a mistake and within a factor of two, none within the tolerance of another. Known slips come first,
 * then two of them at once, then one figure of the problem taken for another. Undefined where there are too few.
 */
export function wrongAnswers(
  draft: Draft,
  given: readonly Given[],
  answer: NumberAnswer,
  known: readonly Slip[],
  id: string,
): readonly Wrong[] | undefined {
  for (const near of NEAR) {
    const found = within(near, draft, given, answer, known, id);
    if (found !== undefined) return found;
  }
  return undefined;
}

function within(
  near: number,
  draft: Draft,
  given: readonly Given[],
  answer: NumberAnswer,
  known: readonly Slip[],
  id: string,
): readonly Wrong[] | undefined {
  const draw = new Draw(`choices of ${id}`);
  const rank = rankOf(placeOf(id), MOST);
  const wanted = { below: rank, above: MOST - 1 - rank };
  const chosen: Wrong[] = [];
  const take = (wrong: Wrong) => {
    const side = wrong.value < answer.value ? 'below' : 'above';
    if (wanted[side] === 0) return;
    if (wrong.value < answer.value / near || wrong.value > answer.value * near) return;
    const clear = [answer.value, ...chosen.map(({ value }) => value)].every(
      (value) => Math.abs(value - wrong.value) > 2 * answer.tolerance * (1 + 1e-9),
    );
    if (!clear || chosen.some(({ text }) => text === wrong.text)) return;
    chosen.push(wrong);
    wanted[side]--;
  };
  const full = () => wanted.below === 0 && wanted.above === 0;
  const redo = (slip: string, why: string, alteration: Omit<Alteration, 'slip'>) => {
    if (full()) return;
    const redone = tried(draft, alteration);
    if (redone !== undefined)
      take({
        slip,
        why,
        value: redone,
        text: worked(redone, answer.unit, decimalsOf(answer.value, answer.unit)),
      });
  };
  for (const slip of draw.shuffled(known)) take(slip as Wrong);
  if (full()) return chosen;
  for (const [one, other] of draw.shuffled(pairs(draft.alterations)))
    redo('two-slips', `Two slips at once. ${whyOf(one, known)} ${whyOf(other, known)}`, both(one, other));
  if (full()) return chosen;
  for (const [one, value, whose] of draw.shuffled([
    ...given.flatMap((each) => others(each, 'the problem gives')),
    ...draft.constants.flatMap((each) => others(each, 'the rule set has')),
  ]))
    redo('figure-mistaken', mistaken(one, value, whose), { set: { [one.symbol]: value } });
  return full() ? chosen : undefined;
}

/** What a changed sum comes to; undefined where it has no value that anybody would write down. */
export function tried(draft: Draft, alteration: Omit<Alteration, 'slip'>): number | undefined {
  try {
    const { answer } = work(draft, { slip: 'unit-slip', ...alteration });
    return answer > 0 && Number.isFinite(answer) ? answer : undefined;
  } catch {
    // A slip can lead to a sum that has no value, such as the root of a negative pressure: nobody answers that.
    return undefined;
  }
}

const whyOf = ({ slip, why }: Alteration, known: readonly Slip[]): string =>
  why ?? known.find((each) => each.slip === slip)?.why ?? '';

/** Slips that touch different things, so that both can be made at once. */
function pairs(all: readonly Alteration[]): [Alteration, Alteration][] {
  const touched = ({ set, formulas }: Alteration) => [
    ...Object.keys(set ?? {}),
    ...Object.keys(formulas ?? {}),
  ];
  return all.flatMap((one, index) =>
    all
      .slice(index + 1)
      .filter(
        (other) => one.slip !== other.slip && !touched(one).some((symbol) => touched(other).includes(symbol)),
      )
      .map((other): [Alteration, Alteration] => [one, other]),
  );
}

const both = (one: Alteration, other: Alteration): Omit<Alteration, 'slip'> => ({
  set: { ...one.set, ...other.set },
  formulas: { ...one.formulas, ...other.formulas },
});

const PARTS = [0.5, 0.6, 0.7, 0.75, 0.8, 0.9, 1.1, 1.2, 1.25, 1.3, 1.4, 1.5, 1.75, 2];

/** Other figures that a given may be taken for, as round as itself. */
function others(given: Given, whose: string): [Given, number, string][] {
  const { value, unit } = given;
  if (unit === '' && Number.isInteger(value))
    return [-2, -1, 1, 2].filter((by) => value + by > 0).map((by) => [given, value + by, whose]);
  const step = [100, 50, 25, 20, 10, 5, 1, 0.5, 0.1, 0.05, 0.01].find(
    (each) => Math.abs(value / each - Math.round(value / each)) < 1e-9,
  );
  if (step === undefined || value <= 0) return [];
  const values = PARTS.map((part) => Number((step * Math.round((value * part) / step)).toPrecision(6)));
  return [...new Set(values)]
    .filter((each) => each > 0 && each !== value)
    .map((each) => [given, each, whose]);
}

const mistaken = (given: Given, value: number, whose: string): string =>
  `${capital(given.name)} was taken as ${figure(value, given.unit)}: ${whose} ${given.text}.`;

/** The choices as they are printed: numbers from the lowest, words in an order that tells nothing. */
export function choicesOf(
  answer: Answer,
  wrong: readonly (Omit<Wrong, 'value'> & { value: number | string })[],
  count: number,
  id: string,
): Choice[] {
  if (count === 0) return [];
  const rank = rankOf(placeOf(id), count);
  const right = {
    text: answer.kind === 'word' ? answer.word : answer.text,
    value: answer.kind === 'word' ? answer.word : answer.value,
    right: true,
  };
  const as = ({ slip, why, value, text }: (typeof wrong)[number]) => ({
    text,
    value,
    right: false,
    slip,
    why,
  });
  if (answer.kind === 'word') {
    const mixed = new Draw(`choices of ${id}`)
      .shuffled(wrong)
      .slice(0, count - 1)
      .map(as);
    return [...mixed.slice(0, rank), right, ...mixed.slice(rank)].map((choice, index) => ({
      letter: letter(index),
      ...choice,
    }));
  }
  const side = (below: boolean) => wrong.filter(({ value }) => (value as number) < answer.value === below);
  return [
    ...side(true).slice(0, rank).map(as),
    right,
    ...side(false)
      .slice(0, count - 1 - rank)
      .map(as),
  ]
    .sort((a, b) => (a.value as number) - (b.value as number))
    .map((choice, index) => ({ letter: letter(index), ...choice }));
}
