import type { EliminationPlan } from './ordering.js';

/** A short array is sooner emptied by a loop than by a call. */
const LONG = 64;

/**
 * A symmetric sparse matrix with its right-hand side, factored in place along an elimination plan (L D L^T without
 * pivoting, which is safe for the diagonally dominant matrix that conductances make).
 */
export class SparseSystem {
  readonly diagonal: Float64Array;
  /** Entries below the diagonal, in the plan's order. */
  readonly entries: Float64Array;
  readonly rightSide: Float64Array;
  private readonly plan: EliminationPlan;
  /** So many columns from the first on have one entry each, which then goes by the column's own number. */
  private readonly singles: number;

  /** `room` is how many positions there are in all; those from `plan.size` on are written to and never read. */
  constructor(plan: EliminationPlan, room: number) {
    this.plan = plan;
    this.diagonal = new Float64Array(room);
    this.entries = new Float64Array(plan.row.length + 1);
    this.rightSide = new Float64Array(room);
    let singles = 0;
    while (singles < plan.size && plan.columnStart[singles + 1] === singles + 1) singles++;
    this.singles = singles;
  }

  /** Empties the matrix and starts the right-hand side from what is drawn. */
  clear(demand: Float64Array): void {
    const { diagonal, entries, rightSide } = this;
    if (entries.length > LONG) {
      diagonal.fill(0);
      entries.fill(0);
    } else {
      for (let k = 0; k < diagonal.length; k++) diagonal[k] = 0;
      for (let k = 0; k < entries.length; k++) entries[k] = 0;
    }
    for (let k = 0; k < demand.length; k++) rightSide[k] = -demand[k];
  }

  /** Factors, solves, and adds the solution to `total`. Returns the position of a zero pivot, or -1. */
  solve(total: Float64Array): number {
    const { size } = this.plan;
    const { singles } = this;
    const zeroPivot = this.eliminateSingles(singles);
    if (zeroPivot >= 0) return zeroPivot;
    const zeroLater = this.eliminate(singles, size);
    if (zeroLater >= 0) return zeroLater;
    this.substitute(singles, size, total);
    this.substituteSingles(singles, total);
    return -1;
  }

  /** Eliminates the columns of one entry each, where no product lands: those of a tree's leaves, taken off one by one. */
  private eliminateSingles(end: number): number {
    const { diagonal, entries, rightSide } = this;
    const { row } = this.plan;
    for (let k = 0; k < end; k++) {
      const pivot = diagonal[k];
      if (pivot === 0) return k;
      const inverse = 1 / pivot;
      const own = rightSide[k] * inverse;
      const value = entries[k];
      const into = row[k];
      diagonal[k] = inverse;
      rightSide[k] = own;
      diagonal[into] -= value * value * inverse;
      rightSide[into] -= value * own;
    }
    return -1;
  }

  private substituteSingles(end: number, total: Float64Array): void {
    const { diagonal, entries, rightSide } = this;
    const { row } = this.plan;
    for (let k = end - 1; k >= 0; k--) {
      const own = rightSide[k] - entries[k] * rightSide[row[k]] * diagonal[k];
      rightSide[k] = own;
      total[k] += own;
    }
  }

  private eliminate(from: number, size: number): number {
    const { diagonal, entries, rightSide } = this;
    const { columnStart, row, targetStart, target } = this.plan;
    for (let k = from; k < size; k++) {
      const pivot = diagonal[k];
      if (pivot === 0) return k;
      const inverse = 1 / pivot;
      diagonal[k] = inverse;
      const own = rightSide[k] * inverse;
      rightSide[k] = own;
      const start = columnStart[k];
      const end = columnStart[k + 1];
      let t = targetStart[k];
      for (let a = start; a < end; a++) {
        const value = entries[a];
        const factor = value * inverse;
        diagonal[row[a]] -= value * factor;
        rightSide[row[a]] -= value * own;
        for (let b = a + 1; b < end; b++) entries[target[t++]] -= factor * entries[b];
      }
    }
    return -1;
  }

  private substitute(from: number, size: number, total: Float64Array): void {
    const { diagonal, entries, rightSide } = this;
    const { columnStart, row } = this.plan;
    for (let k = size - 1; k >= from; k--) {
      let sum = 0;
      for (let a = columnStart[k]; a < columnStart[k + 1]; a++) sum += entries[a] * rightSide[row[a]];
      const own = rightSide[k] - sum * diagonal[k];
      rightSide[k] = own;
      total[k] += own;
    }
  }
}
