import { leastSquares } from '../physics/pump-curve/least-squares.js';
import { dot } from './linear-fit.js';

/** Turns errors that hang together into independent ones of size 1. */
export type Whitener = (errors: readonly number[]) => number[];

/**
 * What makes errors of a covariance independent.
 *
 * Formula: L^-1 e, L L' = V (Cholesky)
 * Range: V symmetric and positive definite.
 * Errors: RangeError where it is not.
 * Source: generalised least squares, Draper and Smith, ch. 9 (from memory).
 */
export function whitener(covariance: readonly (readonly number[])[]): Whitener {
  const n = covariance.length;
  const lower = covariance.map((row) => row.map(() => 0));
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const left = covariance[i][j] - dot(lower[i].slice(0, j), lower[j].slice(0, j));
      if (i === j && !(left > 0)) throw new RangeError('a covariance has to be positive definite');
      lower[i][j] = i === j ? Math.sqrt(left) : left / lower[j][j];
    }
  return (errors) => {
    const out: number[] = [];
    for (let i = 0; i < n; i++) out.push((errors[i] - dot(lower[i].slice(0, i), out)) / lower[i][i]);
    return out;
  };
}

/** How large a cause may be, before anything is read: about 0, with a standard deviation; never below 0 where it is one-sided. */
export interface Prior {
  deviation: number;
  oneSided: boolean;
}

/** A cause, as large as the readings say. */
export interface Explanation {
  sizes: number[];
  /** Standard deviations of the sizes. */
  deviations: number[];
  /** Sum of squared errors that are left, in their own standard deviations. */
  misfit: number;
  /** Logarithm of how likely the readings are under the cause, whatever its size; up to a constant. */
  evidence: number;
}

const MOST_STEPS = 8;
const MOST_HALVINGS = 4;
const SETTLED = 1e-3;
/** Step of a difference quotient, as a part of the prior's deviation. */
const NUDGE = 0.05;

/**
 * The sizes at which causes explain readings best, and how likely the readings are under them.
 *
 * Formula: least |W (y - f(m))|^2 + sum (m / s)^2 by Gauss and Newton with halved steps; evidence by Laplace's approximation,
 * -1/2 of that least sum plus ln of (deviation after over deviation before) of each size, and ln 2 for each that is one-sided
 * Range: f smooth; where f has no answer (undefined) a step is halved.
 * Errors: none; undefined where f has no answer at the start.
 * Source: D. MacKay, Information Theory, Inference and Learning Algorithms, ch. 27 and 28 (from memory).
 * @param predict what would be read at given sizes
 * @param read what was read
 */
export function explainBy(
  predict: (sizes: readonly number[]) => number[] | undefined,
  read: readonly number[],
  whiten: Whitener,
  priors: readonly Prior[],
  start: readonly number[],
): Explanation | undefined {
  const errorsAt = (sizes: readonly number[]) => {
    const predicted = predict(sizes);
    return predicted && whiten(read.map((value, i) => value - predicted[i]));
  };
  const priorOf = (sizes: readonly number[]) =>
    sizes.reduce((sum, size, k) => sum + (size / priors[k].deviation) ** 2, 0);
  let sizes = [...start];
  let errors = errorsAt(sizes);
  if (errors === undefined) return undefined;
  let sum = dot(errors, errors) + priorOf(sizes);
  let slopes: number[][] = [];
  for (let step = 0; step < MOST_STEPS; step++) {
    const found = slopesAt(errorsAt, sizes, errors, priors);
    if (found === undefined) return undefined;
    slopes = found;
    const move = moveFrom(slopes, errors, sizes, priors);
    let part = 1;
    let better: { sizes: number[]; errors: number[]; sum: number } | undefined;
    for (let halving = 0; halving <= MOST_HALVINGS && better === undefined; halving++, part /= 2) {
      const next = sizes.map((size, k) => {
        const moved = size + part * move[k];
        return priors[k].oneSided ? Math.max(0, moved) : moved;
      });
      const nextErrors = errorsAt(next);
      const nextSum = nextErrors && dot(nextErrors, nextErrors) + priorOf(next);
      if (nextErrors && nextSum !== undefined && nextSum < sum)
        better = { sizes: next, errors: nextErrors, sum: nextSum };
    }
    if (better === undefined) break;
    const gained = sum - better.sum;
    ({ sizes, errors, sum } = better);
    if (gained < SETTLED) break;
  }
  const { deviations, logShrink } = spreadOf(slopes, priors);
  const sides = priors.filter(({ oneSided }) => oneSided).length;
  return {
    sizes,
    deviations,
    misfit: dot(errors, errors),
    evidence: -sum / 2 + logShrink + sides * Math.LN2,
  };
}

/** How the whitened errors move with each size, in units of its prior's deviation. */
function slopesAt(
  errorsAt: (sizes: readonly number[]) => number[] | undefined,
  sizes: readonly number[],
  errors: readonly number[],
  priors: readonly Prior[],
): number[][] | undefined {
  const columns = sizes.map((_, k) => {
    for (const side of [1, -1]) {
      const nudge = side * NUDGE * priors[k].deviation;
      if (priors[k].oneSided && sizes[k] + nudge < 0) continue;
      const moved = errorsAt(sizes.map((size, j) => (j === k ? size + nudge : size)));
      if (moved) return moved.map((value, i) => (errors[i] - value) / (side * NUDGE));
    }
    return undefined;
  });
  return columns.every((column) => column !== undefined) ? columns : undefined;
}

function moveFrom(
  slopes: readonly (readonly number[])[],
  errors: readonly number[],
  sizes: readonly number[],
  priors: readonly Prior[],
): number[] {
  const design = [
    ...errors.map((_, i) => slopes.map((column) => column[i])),
    ...slopes.map((_, k) => slopes.map((__, j) => (j === k ? 1 : 0))),
  ];
  const wanted = [...errors, ...sizes.map((size, k) => -size / priors[k].deviation)];
  return leastSquares(design, wanted).map((move, k) => move * priors[k].deviation);
}

/** Deviations of the sizes after reading, and the logarithm of how much they shrank in all. */
function spreadOf(slopes: readonly (readonly number[])[], priors: readonly Prior[]) {
  const normal = slopes.map((one, i) => slopes.map((other, j) => dot(one, other) + (i === j ? 1 : 0)));
  const determinant = normal.length === 1 ? normal[0][0] : normal[0][0] * normal[1][1] - normal[0][1] ** 2;
  const inverse =
    normal.length === 1 ? [1 / normal[0][0]] : [normal[1][1] / determinant, normal[0][0] / determinant];
  return {
    deviations: inverse.map((part, k) => Math.sqrt(part) * priors[k].deviation),
    logShrink: -Math.log(determinant) / 2,
  };
}
