import { dot, type LinearFit, linearFit } from './linear-fit.js';
import { type OddOne, oddOneOut } from './odd-one-out.js';
import { studentWithin } from './student.js';

/** How a fitted curve runs: H = a - b Q^c; a + b Q + c Q^2; a falling curve of the third degree. */
export type FitShape = 'power' | 'quadratic' | 'monotone';

/** A falling curve fitted to points, with what its scatter says of it. */
export interface HeadCurveFit {
  shape: FitShape;
  /** Unknowns that were fitted. */
  unknowns: number;
  /** Degrees of freedom of the scatter. */
  freedom: number;
  /** Standard deviation of a reading about the curve. */
  scatter: number;
  /** Readings that decided it, by index. */
  used: number[];
  /** The one reading that the others do not bear out, which was left out. */
  odd?: OddOne;
  /** By index of every reading: reading less curve. */
  residuals: number[];
  at(x: number): number;
  /** Half the width of the band that holds the true curve at x with a confidence, each x by itself. */
  halfBand(x: number, confidence: number): number;
}

/** A reading that sound ones would have among them once in a hundred times is called bad. */
const ODD_CHANCE = 0.01;
/** Scatter below this part of the greatest height is the rounding of the figures, and decides nothing. */
const NO_SCATTER = 1e-5;
const SAMPLES = 60;
const EXPONENTS = { least: 0.5, most: 8 };
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const GOLDEN_STEPS = 48;

/** A model at a stage of its fitting: what it gives, how that moves with each unknown, and the fit behind it. */
interface Model {
  at(x: number): number;
  row(x: number): number[];
  fit: LinearFit;
}

type Fitter = (x: readonly number[], y: readonly number[]) => Model;

function polynomial(columns: (x: number) => number[]): Fitter {
  return (x, y) => {
    const fit = linearFit(x.map(columns), y);
    return {
      fit,
      row: columns,
      at: (one) => columns(one).reduce((sum, v, i) => sum + v * fit.unknowns[i], 0),
    };
  };
}

/** Where readings do not prove that a curve rises from no flow, it is taken to leave level. */
function levelUnlessProven(free: Fitter, level: Fitter): Fitter {
  return (x, y) => {
    const model = free(x, y);
    const { unknowns, squares, freedom, varianceAt } = model.fit;
    const slope = unknowns[1];
    if (slope <= 0) return model;
    const error = Math.sqrt(
      (squares / Math.max(1, freedom)) * varianceAt(unknowns.map((_, i) => (i === 1 ? 1 : 0))),
    );
    return freedom > 0 && slope > error * studentWithin(0.99, freedom) ? model : level(x, y);
  };
}

function power(x: readonly number[], y: readonly number[]): Model {
  const squaresAt = (c: number) =>
    lineThrough(
      x.map((one) => one ** c),
      y,
    ).squares;
  let { least: low, most: high } = EXPONENTS;
  let one = high - GOLDEN * (high - low);
  let other = low + GOLDEN * (high - low);
  let atOne = squaresAt(one);
  let atOther = squaresAt(other);
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (atOne < atOther) {
      high = other;
      other = one;
      atOther = atOne;
      one = high - GOLDEN * (high - low);
      atOne = squaresAt(one);
    } else {
      low = one;
      one = other;
      atOne = atOther;
      other = low + GOLDEN * (high - low);
      atOther = squaresAt(other);
    }
  }
  const c = (low + high) / 2;
  const { a, b } = lineThrough(
    x.map((at) => at ** c),
    y,
  );
  const at = (where: number) => a + b * where ** c;
  const row = (where: number) => [1, where ** c, where > 0 ? b * where ** c * Math.log(where) : 0];
  // About its least the sum of squares is that of the model made straight there.
  const straight = y.map((value, i) => value - at(x[i]));
  return { at, row, fit: linearFit(x.map(row), straight) };
}

/** The straight line a + b x nearest to points, in plain sums: it is asked for at every exponent that is tried. */
function lineThrough(x: readonly number[], y: readonly number[]): { a: number; b: number; squares: number } {
  const mean = (of: readonly number[]) => of.reduce((sum, one) => sum + one, 0) / of.length;
  const [middleX, middleY] = [mean(x), mean(y)];
  const [offX, offY] = [x.map((one) => one - middleX), y.map((one) => one - middleY)];
  const b = dot(offX, offY) / dot(offX, offX);
  const left = offY.map((one, i) => one - b * offX[i]);
  return { a: middleY - b * middleX, b, squares: dot(left, left) };
}

const MODELS: Record<FitShape, Fitter> = {
  power,
  quadratic: levelUnlessProven(
    polynomial((x) => [1, x, x * x]),
    polynomial((x) => [1, x * x]),
  ),
  monotone: levelUnlessProven(
    polynomial((x) => [1, x, x * x, x * x * x]),
    polynomial((x) => [1, x * x, x * x * x]),
  ),
};

/** Fewest different flows that leave a shape something to be judged by. */
const LEAST_FLOWS: Record<FitShape, number> = { power: 4, quadratic: 4, monotone: 5 };

/**
 * The curve of a shape nearest to readings of flow (as a part of the largest) and head, one bad reading left out where there is
 * one. Undefined where there are too few different flows for the shape, or the nearest one does not fall.
 *
 * Formula: least squares; a reading is bad where `oddOneOut` gives sound ones a chance below 1 in 100
 * Range: x from 0 to 1. A curve of the third degree must fall all the way; one of the second may rise from shutoff where the readings
 * prove it at 1 in 100.
 * Source: `linearFit`, `oddOneOut`; the power curve is made straight about its least squares (Draper and Smith, ch. 24; from memory).
 */
export function fitShape(
  shape: FitShape,
  x: readonly number[],
  y: readonly number[],
): HeadCurveFit | undefined {
  const all = x.map((_, i) => i);
  const whole = fitTo(shape, x, y, all);
  if (whole === undefined) return undefined;
  const odd = oddOneOut(whole.model.fit);
  const bad =
    odd !== undefined &&
    odd.chance <= ODD_CHANCE &&
    Math.abs(whole.model.fit.residuals[odd.index]) >= NO_SCATTER * Math.max(...y);
  const kept = bad
    ? fitTo(
        shape,
        x,
        y,
        all.filter((i) => i !== odd.index),
      )
    : whole;
  // A bad reading may bend a curve up that falls without it, so only what is kept has to fall.
  if (kept === undefined || !sound(shape, kept.model, Math.max(...kept.result.used.map((i) => x[i]))))
    return undefined;
  return bad ? { ...kept.result, odd } : kept.result;
}

function fitTo(shape: FitShape, x: readonly number[], y: readonly number[], used: number[]) {
  const flows = new Set(used.map((i) => x[i].toFixed(2)));
  if (flows.size < LEAST_FLOWS[shape]) return undefined;
  const model = MODELS[shape](
    used.map((i) => x[i]),
    used.map((i) => y[i]),
  );
  const { squares, freedom, varianceAt, leverages } = model.fit;
  if (freedom < 1) return undefined;
  const scatter = Math.sqrt(squares / freedom);
  const result: HeadCurveFit = {
    shape,
    unknowns: Math.round(leverages.reduce((sum, one) => sum + one, 0)),
    freedom,
    scatter,
    used,
    residuals: y.map((value, i) => value - model.at(x[i])),
    at: model.at,
    halfBand: (at, confidence) =>
      scatter * Math.sqrt(varianceAt(model.row(at))) * studentWithin(confidence, freedom),
  };
  return { model, result };
}

function sound(shape: FitShape, { at }: Model, last: number): boolean {
  if (at(0) <= 0 || at(last) <= 0) return false;
  const heads = Array.from({ length: SAMPLES + 1 }, (_, i) => at((i * last) / SAMPLES));
  if (heads[SAMPLES] >= heads[0]) return false;
  const from = shape === 'quadratic' ? heads.indexOf(Math.max(...heads)) + 1 : 1;
  return heads.every((head, i) => i < from || head <= heads[i - 1] + 1e-9 * heads[0]);
}

/**
 * The shape that says most with fewest unknowns, a reading left out counted as one of them.
 *
 * Formula: least n ln(S/n) + 2k
 * The band counts in that another shape may be the true one: each shape's own, with how far it lies from the chosen one, weighed by
 * exp(-criterion / 2).
 *
 * Source: Akaike's criterion; band over several models by Buckland,
 * Burnham and Augustin (Biometrics 53, 1997); both from memory.
 */
export function bestShape(
  shapes: readonly FitShape[],
  x: readonly number[],
  y: readonly number[],
): HeadCurveFit | undefined {
  const floor = (NO_SCATTER * Math.max(...y)) ** 2 * y.length;
  const weighed = shapes.flatMap((shape) => {
    const fit = fitShape(shape, x, y);
    return fit ? [{ fit, weight: criterion(fit, y.length, floor) }] : [];
  });
  weighed.sort((one, other) => one.weight - other.weight);
  const best = weighed[0];
  if (best === undefined) return undefined;
  // Readings that were let choose the shape lie close to it: their scatter is that about the curve with the most unknowns.
  const wide = shapes.includes('monotone') ? fitTo('monotone', x, y, best.fit.used)?.result : undefined;
  const wider = (fit: HeadCurveFit, confidence: number) =>
    wide && wide.freedom < fit.freedom
      ? (wide.scatter * studentWithin(confidence, wide.freedom)) /
        (fit.scatter * studentWithin(confidence, fit.freedom))
      : 1;
  const chances = weighed.map(({ weight }) => Math.exp((best.weight - weight) / 2));
  const sum = chances.reduce((total, chance) => total + chance, 0);
  return {
    ...best.fit,
    halfBand: (at, confidence) =>
      weighed.reduce((total, { fit }, i) => {
        const apart = fit.at(at) - best.fit.at(at);
        return (
          total +
          (chances[i] / sum) * Math.hypot(fit.halfBand(at, confidence) * wider(fit, confidence), apart)
        );
      }, 0),
  };
}

function criterion({ scatter, freedom, unknowns, odd }: HeadCurveFit, n: number, floor: number): number {
  const k = unknowns + 1 + (odd ? 1 : 0);
  if (n - k - 1 <= 0) return Number.MAX_VALUE;
  const squares = Math.max(floor, scatter ** 2 * freedom);
  return n * Math.log(squares / n) + 2 * k;
}
