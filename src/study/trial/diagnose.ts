import type { Instrument } from '../../readings/trial-columns.js';
import { chiSquareTail } from '../../statistics/chi-square.js';
import { type Explanation, explainBy, type Whitener } from '../../statistics/explain.js';
import { type Cause, causesOf } from './causes.js';
import type { Read, TrialModel } from './model.js';
import type { SetUp } from './observe.js';

/** An explanation of all readings: one cause, two, or none. */
export interface Ranked {
  causes: Cause[];
  sizes: number[];
  deviations: number[];
  /** How likely beside the others, all of them together being 1. */
  chance: number;
  /** Chance of a misfit as large or larger, were it true. */
  fits: number;
}

export interface Diagnosis {
  /** Chance of readings so far from the prediction, or farther, with nothing wrong. */
  soundFits: number;
  /** Most likely first; the first may be that nothing is wrong (no causes). */
  ranked: Ranked[];
  /** `nothing_wrong`; one that stands out; several that the readings cannot tell apart; or none that explains them. */
  outcome: 'nothing_wrong' | 'found' | 'cannot_tell' | 'unexplained';
  /** How many of the first cannot be told apart. */
  alike: number;
}

/** The first has to be so many times as likely as the next. */
const STANDS_OUT = 4;
/** An explanation under which readings would lie so far out once in a hundred times is none. */
const UNFIT = 0.01;
/** How likely two causes together, and nothing wrong at all, are beside one cause before anything is read: judgement, no source. */
const PAIR_PRIOR = 0.02;
const SOUND_PRIOR = 20;
/** Single causes that pairs are made of. */
const FIRST = 5;
const ALIKE_AT_MOST = 6;
const STARTS = [0.5, 2];

/** Which cause explains all readings best, or which two; and whether the readings can tell. */
export function diagnose(model: TrialModel, setUps: readonly SetUp[], reads: readonly Read[]): Diagnosis {
  const values = reads.map(({ value }) => value);
  const whiten = model.whitener(setUps, reads);
  const predict = (causes: readonly Cause[]) => (sizes: readonly number[]) => {
    const observed = model.observe(setUps, causes, sizes);
    const read = observed && reads.map(({ row, instrument }) => observed[row][instrument]);
    return read?.every((value) => value !== undefined) ? (read as number[]) : undefined;
  };
  const still = predict([])([]) as number[];
  const errors = whiten(values.map((value, i) => value - still[i]));
  const soundMisfit = errors.reduce((sum, one) => sum + one * one, 0);
  const instruments = [...new Set(reads.map(({ instrument }) => instrument))] as Instrument[];
  const orifices = setUps.some(({ orifice }) => orifice !== undefined);
  const causes = causesOf(model.sound.layout, instruments, orifices);
  const singles = causes
    .flatMap((cause) => best(predict([cause]), values, whiten, [cause]) ?? [])
    .filter(({ explanation }) => explanation.sizes[0] !== 0);
  singles.sort((one, other) => other.explanation.evidence - one.explanation.evidence);
  const weighed = [
    { causes: [] as Cause[], explanation: soundExplanation(soundMisfit), prior: SOUND_PRIOR },
    ...singles.map((one) => ({ ...one, prior: 1 })),
  ];
  if (unfit(weighed, reads.length)) weighed.push(...pairs(singles.slice(0, FIRST), predict, values, whiten));
  const ranked = rank(weighed, reads.length);
  return { soundFits: chiSquareTail(soundMisfit, reads.length), ranked, ...outcomeOf(ranked) };
}

interface Found {
  causes: Cause[];
  explanation: Explanation;
}
type Weighed = Found & { prior: number };
type Predict = (causes: readonly Cause[]) => (sizes: readonly number[]) => number[] | undefined;

const soundExplanation = (misfit: number): Explanation => ({
  sizes: [],
  deviations: [],
  misfit,
  evidence: -misfit / 2,
});

/** From a small and from a large size, so that a valley of its own is not missed; an instrument is straight and needs one. */
function best(
  predict: ReturnType<Predict>,
  values: readonly number[],
  whiten: Whitener,
  causes: Cause[],
): Found | undefined {
  const priors = causes.map(({ prior }) => prior);
  const starts = causes.every(({ read }) => read) ? [0] : STARTS;
  const found = starts.flatMap((part) => {
    const start = causes.map(({ prior, read }) => (read ? 0 : part * prior.deviation));
    return explainBy(predict, values, whiten, priors, start) ?? [];
  });
  found.sort((one, other) => other.evidence - one.evidence);
  return found[0] && { causes, explanation: found[0] };
}

function pairs(
  singles: readonly Found[],
  predict: Predict,
  values: readonly number[],
  whiten: Whitener,
): Weighed[] {
  return singles.flatMap((one, i) =>
    singles.slice(i + 1).flatMap((other) => {
      const causes = [...one.causes, ...other.causes];
      const priors = causes.map(({ prior }) => prior);
      const start = [one.explanation.sizes[0] / 2, other.explanation.sizes[0] / 2];
      const explanation = explainBy(predict(causes), values, whiten, priors, start);
      return explanation?.sizes.every((size) => size !== 0)
        ? [{ causes, explanation, prior: PAIR_PRIOR }]
        : [];
    }),
  );
}

const fitOf = ({ explanation }: Found, readings: number): number =>
  chiSquareTail(explanation.misfit, Math.max(1, readings - explanation.sizes.length));

const unfit = (found: readonly Found[], readings: number): boolean =>
  found.every((one) => fitOf(one, readings) < UNFIT);

function rank(weighed: readonly Weighed[], readings: number): Ranked[] {
  const most = Math.max(...weighed.map(({ explanation, prior }) => explanation.evidence + Math.log(prior)));
  const weights = weighed.map(({ explanation, prior }) => prior * Math.exp(explanation.evidence - most));
  const sum = weights.reduce((total, one) => total + one, 0);
  return weighed
    .map((one, i) => ({
      causes: one.causes,
      sizes: one.explanation.sizes,
      deviations: one.explanation.deviations,
      chance: weights[i] / sum,
      fits: fitOf(one, readings),
    }))
    .sort((one, other) => other.chance - one.chance);
}

function outcomeOf(ranked: readonly Ranked[]): Pick<Diagnosis, 'outcome' | 'alike'> {
  const [first, second] = ranked;
  if (first.fits < UNFIT) return { outcome: 'unexplained', alike: 0 };
  const alike = ranked.filter(({ chance }) => chance * STANDS_OUT > first.chance).length;
  if (second !== undefined && alike > 1)
    return { outcome: 'cannot_tell', alike: Math.min(alike, ALIKE_AT_MOST) };
  return { outcome: first.causes.length === 0 ? 'nothing_wrong' : 'found', alike: 1 };
}
