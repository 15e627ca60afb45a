import { leastSquares } from '../physics/pump-curve/least-squares.js';

/** A model that is linear in its unknowns, fitted to observations by least squares. */
export interface LinearFit {
  unknowns: number[];
  /** Observation less model, in the order of the observations. */
  residuals: number[];
  /** Sum of squared residuals. */
  squares: number;
  /** Observations less unknowns. */
  freedom: number;
  /** How far an observation pulls the model to itself, 0 to 1. */
  readonly leverages: number[];
  /** Variance of the model where its design has a row, in units of the variance of an observation. */
  varianceAt(row: readonly number[]): number;
}

/**
 * Fits a linear model.
 *
 * Formula: least sum of squares of observed - design x; variance of the model at a row r is r (D'D)^-1 r' times that of an observation
 * Range: more observations than unknowns, columns independent.
 * Errors: RangeError where there are too few; Error where columns are dependent.
 * Source: N. R. Draper and H. Smith, Applied Regression Analysis, ch. 5 (from memory).
 */
export function linearFit(design: readonly (readonly number[])[], observed: readonly number[]): LinearFit {
  const rows = design.map((row) => [...row]);
  const unknowns = leastSquares(rows, [...observed]);
  const residuals = rows.map((row, i) => observed[i] - dot(row, unknowns));
  let spread: number[][] | undefined;
  const varianceAt = (row: readonly number[]) => {
    spread ??= inverseOf(normalOf(rows));
    return dot(
      row,
      spread.map((line) => dot(line, row)),
    );
  };
  return {
    unknowns,
    residuals,
    squares: dot(residuals, residuals),
    freedom: rows.length - unknowns.length,
    get leverages() {
      return rows.map(varianceAt);
    },
    varianceAt,
  };
}

/** D'D */
const normalOf = (rows: readonly (readonly number[])[]): number[][] =>
  rows[0].map((_, i) => rows[0].map((__, j) => rows.reduce((sum, row) => sum + row[i] * row[j], 0)));

const inverseOf = (square: number[][]): number[][] =>
  square.map((_, i) =>
    leastSquares(
      square,
      square.map((__, j) => (i === j ? 1 : 0)),
    ),
  );

export const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * other[i], 0);
