import type { Equations } from './equations.js';
import { OVERSHOOT, retakeStep, shortenStep } from './line-search.js';
import type { SolveOptions } from './network.js';

/** Iterations after which a drooping curve, or an engine that gains speed with flow, is taken to have led the steps astray. */
const PATIENCE = 30;
/** Head that may be out of balance from then on, m (1 Pa), where a step has no more than this to gain, m4/s. */
const NEAR_ENOUGH = 1e-4;
const LEAST_DESCENT = 1e-14;
/** Out of balance by this part of the greatest head is the rounding of heads, which no further step lessens. */
const ROUNDING = 1e-12;
/** The same where flows are found: steep laws make so much of the rounding of a flow through a level one. */
const STEEP_ROUNDING = 1e-8;
/** Part of the overshoot that a step may leave from then on. */
const CAREFUL = 0.1;

/** What an iteration is held to. */
export type Limits = Required<Omit<SolveOptions, 'warm'>>;

/** How the iteration ended: at a solution, out of trials, or at a number that is none. */
export type Ending = 'solved' | 'trials' | 'number';

/** Newton's method on mass and energy together, from the flows and heads that the equations hold. */
export class Newton {
  readonly equations: Equations;
  iterations = 0;
  /** Where `iterate` ended at a number that is none: the position of the node without a pivot, or -1. */
  zeroPivot = -1;

  constructor(equations: Equations) {
    this.equations = equations;
  }

  /** The equations must stand linearised at their flows. */
  iterate({ flowTolerance, headTolerance, maximumIterations }: Limits): Ending {
    const { equations } = this;
    const { losses } = equations;
    this.iterations = 0;
    this.zeroPivot = -1;
    for (;;) {
      losses.upright = this.iterations >= PATIENCE;
      if (this.iterations === maximumIterations) return 'trials';
      this.iterations++;
      this.zeroPivot = equations.advance();
      if (this.zeroPivot >= 0) return 'number';
      // The first step need not balance the nodes before it, so only later ones can be judged along their line.
      const allowed = this.iterations === 1 ? Number.POSITIVE_INFINITY : losses.upright ? CAREFUL : OVERSHOOT;
      if (overshoots(equations, allowed)) {
        this.zeroPivot = retakeStep(equations);
        if (this.zeroPivot >= 0) return 'number';
      }
      const { descent, along } = equations;
      if (!Number.isFinite(descent)) return 'number';
      if (equations.worstHead <= headTolerance && equations.worstCorrection <= flowTolerance) return 'solved';
      if (losses.upright && this.isAtRounding(flowTolerance)) return 'solved';
      if (overshoots(equations, allowed)) shortenStep(equations, descent, along, allowed);
    }
  }

  /** Whether steps go to and fro, with nothing left to gain, about an answer that is there as near as numbers tell it. */
  private isAtRounding(flowTolerance: number): boolean {
    const { worstHead, worstCorrection, descent } = this.equations;
    // Across a kink at no flow.
    if (worstHead <= NEAR_ENOUGH && descent <= LEAST_DESCENT) return true;
    // A draw far past what the pumps can give stands at heads of thousands or a million metres.
    const part = worstCorrection <= flowTolerance ? STEEP_ROUNDING : ROUNDING;
    return worstHead <= part * this.equations.greatestHead();
  }
}

/** Whether the content rises again at the end of the last step, by more than is allowed of what it fell by at its start. */
function overshoots({ descent, along }: Equations, allowed: number): boolean {
  return along > allowed * descent && descent > LEAST_DESCENT;
}
