import type { LinearFit } from './linear-fit.js';
import { studentTails } from './student.js';

/** An observation that the others do not bear out. */
export interface OddOne {
  index: number;
  /** How far it lies from the model that the others make, in its own standard errors. */
  deviation: number;
  /** Chance of one as far out among so many, were all sound. */
  chance: number;
}

/**
 * The observation farthest from what the others say of it, with the chance that sound ones would have one so far out.
 *
 * Formula: t_i = r_i / (s_i sqrt(1 - h_i)), s_i from the others; chance = min(1, n P(|t| >= |t_i|)) with one degree of freedom less
 * Range: two degrees of freedom or more; observations that alone decide an unknown (leverage 1) cannot be judged and are passed over.
 * Errors: none.
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 2.2.2, the mean-shift outlier test with Bonferroni's bound
 * (from memory).
 * @param fit model fitted to all observations
 * @returns the farthest; undefined where none can be judged
 */
export function oddOneOut(fit: LinearFit): OddOne | undefined {
  const { residuals, leverages, squares, freedom } = fit;
  if (freedom < 2) return undefined;
  let odd: OddOne | undefined;
  residuals.forEach((residual, index) => {
    const free = 1 - leverages[index];
    if (free < 1e-9) return;
    const others = Math.max(0, squares - (residual * residual) / free) / (freedom - 1);
    // Readings that agree to the last digit leave no scatter; then any difference at all is beyond it.
    const deviation = residual === 0 ? 0 : residual / Math.sqrt(Math.max(others, 1e-24) * free);
    if (odd && Math.abs(odd.deviation) >= Math.abs(deviation)) return;
    const chance = Math.min(1, residuals.length * studentTails(deviation, freedom - 1));
    odd = { index, deviation, chance };
  });
  return odd;
}
