import type { EliminationPlan } from './ordering.js';

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

  /** `room` is how many positions there are in all; those from `plan.size` on are written to and never read. */
  constructor(plan: EliminationPlan, room: number) {
    this.plan = plan;
    this.diagonal = new Float64Array(room);
    this.entries = new Float64Array(plan.row.length + 1);
    this.rightSide = new Float64Array(room);
  }

  /** Empties the matrix and starts the right-hand side from what is drawn. */
  clear(demand: Float64Array): void {
    this.diagonal.fill(0);
    this.entries.fill(0);
    for (let k = 0; k < demand.length; k++) this.rightSide[k] = -demand[k];
  }

  /** Factors, solves, and adds the solution to `total`. Returns the position of a zero pivot, or -1. */
  solve(total: Float64Array): number {
    const { diagonal, entries, rightSide } = this;
    const { size, columnStart, row, targetStart, target } = this.plan;
    for (let k = 0; k < size; k++) {
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
    for (let k = size - 1; k >= 0; k--) {
      let sum = 0;
      for (let a = columnStart[k]; a < columnStart[k + 1]; a++) sum += entries[a] * rightSide[row[a]];
      const own = rightSide[k] - sum * diagonal[k];
      rightSide[k] = own;
      total[k] += own;
    }
    return -1;
  }
}
