import { requireWithin } from './range.js';

/** Angle between branch and run, degrees, of a tee or wye with three legs of one bore. */
export type TeeAngle = 45 | 90;

/** Loss coefficients of the two ways through, both on the velocity in the combined leg. May be negative: one stream drives the other. */
export interface TeeLossCoefficients {
  branch: number;
  run: number;
}

/**
 * Loss coefficients of a tee or wye where a branch joins the run, legs of one bore.
 *
 * Formula: y = Q_branch / Q_combined; K_branch = C (1 + y^2 - 2 (1-y)^2 - F y^2), C = 0.9 (1-y) to y = 0.4, else 0.55, F = 0 at 90 degrees and
 * 1.41 at 45; K_run = 1.55 y - y^2 at 90 degrees, 1 - (1-y)^2 - 1.41 y^2 at 45
 * Range: y from 0 to 1. C, as printed, steps at y = 0.4 from 0.54 to 0.55.
 * Errors: RangeError where y is out of range.
 * Source: Crane TP-410 (2009), converging flow, from a public library that solves its examples; the run at 45 degrees from memory.
 * @param branchShare y, flow of the branch over the combined flow [1]
 * @param angle angle of the branch, 45 or 90 [degrees]
 * @returns K of branch and run on the combined leg's velocity [1]
 * @example convergingTee(0.25, 90).branch // => -0.0422
 */
export function convergingTee(branchShare: number, angle: TeeAngle): TeeLossCoefficients {
  requireWithin('share of the branch', branchShare, 0, 1, '');
  const y = branchShare;
  const c = y <= 0.4 ? 0.9 * (1 - y) : 0.55;
  const f = angle === 45 ? 1.41 : 0;
  return {
    branch: c * (1 + y * y - 2 * (1 - y) ** 2 - f * y * y),
    run: angle === 45 ? 1 - (1 - y) ** 2 - f * y * y : 1.55 * y - y * y,
  };
}

/**
 * Loss coefficients of a tee or wye where a branch leaves the run, legs of one bore.
 *
 * Formula: y = Q_branch / Q_combined; K_branch = G (1 + H y^2 - J y cos(angle)): at 90 degrees G = 1 + 0.3 y^2, H = 0.3, J = 0; at 45 degrees
 * G = 1 - 0.6 y to y = 0.6, else 0.6, H = 1, J = 2; K_run = M y^2, M = 2 (2y - 1) to y = 0.5, else 0.3 (2y - 1)
 * Range: y from 0 to 1. At 45 degrees, G as printed steps at y = 0.6 from 0.64 to 0.6.
 * Errors: RangeError where y is out of range.
 * Source: Crane TP-410 (2009), diverging flow, from a public library that solves its examples; G above 0.6 from memory.
 * @param branchShare y, flow of the branch over the combined flow [1]
 * @param angle angle of the branch, 45 or 90 [degrees]
 * @returns K of branch and run on the combined leg's velocity [1]
 * @example divergingTee(250 / 650, 45).branch // => 0.4646
 */
export function divergingTee(branchShare: number, angle: TeeAngle): TeeLossCoefficients {
  requireWithin('share of the branch', branchShare, 0, 1, '');
  const y = branchShare;
  const branch =
    angle === 45
      ? (y <= 0.6 ? 1 - 0.6 * y : 0.6) * (1 + y * y - 2 * y * Math.SQRT1_2)
      : (1 + 0.3 * y * y) * (1 + 0.3 * y * y);
  const m = y <= 0.5 ? 2 * (2 * y - 1) : 0.3 * (2 * y - 1);
  return { branch, run: m * y * y };
}
