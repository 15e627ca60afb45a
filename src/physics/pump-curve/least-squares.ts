import { create, qrDependencies, usolveDependencies } from 'mathjs';

const { qr, usolve } = create({ qrDependencies, usolveDependencies });

/**
 * Least-squares solution of an overdetermined linear system.
 *
 * Formula: design = Q R; R x = Q' observed
 * Range: at least as many rows as columns, columns independent.
 * Errors: RangeError where there are fewer rows than columns; Error where the columns are dependent.
 * Source: QR factorisation, common practice, no source.
 * @param design a row for each observation, a column for each unknown [any]
 * @param observed the observations [any]
 * @returns the unknowns [any]
 * @example leastSquares([[1, 0], [1, 1], [1, 2]], [1, 3, 5])[1] // => 2
 */
export function leastSquares(design: number[][], observed: number[]): number[] {
  const columns = design[0]?.length ?? 0;
  if (columns === 0 || design.length < columns) {
    throw new RangeError(
      `least squares needs at least as many points as unknowns, ${columns}, not ${design.length}`,
    );
  }
  const { Q, R } = qr(design) as unknown as { Q: number[][]; R: number[][] };
  const projected = Array.from({ length: columns }, (_, j) =>
    observed.reduce((sum, value, i) => sum + Q[i][j] * value, 0),
  );
  const solved = usolve(R.slice(0, columns), projected) as number[][];
  return solved.map((row) => Number(row));
}
