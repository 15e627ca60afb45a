import type { DrillUnits } from './problem.js';
import type { HoseSize } from './rules/rule-set.js';

/** What a size of hose is called, and what it usually carries, in one system of units. */
export interface HoseFacts {
  readonly name: string;
  /** in or mm, for sums with the bore. */
  readonly bore: number;
  /** Flows of everyday work: least, most, step; gpm or L/min. */
  readonly flows: readonly [number, number, number];
  /** Pressure that the pump may put on it: psi or kPa. */
  readonly limit: number;
  /** Smooth bores that go on it, in or mm. */
  readonly tips: readonly number[];
}

/**
 * Flows: 30 gpm at most on 1 in and 100 gpm on 1-1/2 in are the Water Handling Equipment Guide's (PMS 447-1, 2003); the others are
 * common practice, no source. Limits: attack hose is service-tested at 300 psi or more, supply hose at 200 psi or more, and run
 * at 90 % of that (NFPA 1962 as quoted by a hose-test page). Tips: common practice, no source.
 */
const US: Record<HoseSize, HoseFacts> = {
  '1': { name: '1 in', bore: 1, flows: [10, 30, 5], limit: 270, tips: [0.25, 0.3125] },
  '1.5': { name: '1-1/2 in', bore: 1.5, flows: [40, 100, 10], limit: 270, tips: [0.375, 0.5, 0.625] },
  '1.75': { name: '1-3/4 in', bore: 1.75, flows: [100, 200, 25], limit: 270, tips: [0.75, 0.875, 0.9375] },
  '2': { name: '2 in', bore: 2, flows: [100, 250, 25], limit: 270, tips: [0.875, 0.9375, 1] },
  '2.5': { name: '2-1/2 in', bore: 2.5, flows: [150, 350, 25], limit: 270, tips: [1, 1.125, 1.25] },
  '3': { name: '3 in', bore: 3, flows: [200, 500, 50], limit: 270, tips: [1.125, 1.25, 1.375] },
  '3.5': { name: '3-1/2 in', bore: 3.5, flows: [300, 700, 50], limit: 180, tips: [1.25, 1.375, 1.5] },
  '4': { name: '4 in', bore: 4, flows: [500, 1000, 50], limit: 180, tips: [1.5, 1.75] },
  '5': { name: '5 in', bore: 5, flows: [750, 1500, 50], limit: 180, tips: [1.75, 2] },
};

const SI: Record<HoseSize, HoseFacts> = {
  '1': { name: '25 mm', bore: 25, flows: [40, 110, 10], limit: 1860, tips: [6, 8] },
  '1.5': { name: '38 mm', bore: 38, flows: [150, 380, 10], limit: 1860, tips: [10, 13, 16] },
  '1.75': { name: '45 mm', bore: 45, flows: [360, 750, 10], limit: 1860, tips: [19, 22, 24] },
  '2': { name: '51 mm', bore: 51, flows: [400, 950, 50], limit: 1860, tips: [22, 24, 25] },
  '2.5': { name: '65 mm', bore: 65, flows: [550, 1300, 50], limit: 1860, tips: [25, 29, 32] },
  '3': { name: '77 mm', bore: 77, flows: [750, 1900, 50], limit: 1860, tips: [29, 32, 35] },
  '3.5': { name: '90 mm', bore: 90, flows: [1100, 2600, 100], limit: 1240, tips: [32, 35, 38] },
  '4': { name: '100 mm', bore: 100, flows: [1900, 3800, 100], limit: 1240, tips: [38, 45] },
  '5': { name: '125 mm', bore: 125, flows: [2800, 5700, 100], limit: 1240, tips: [45, 50] },
};

export const HOSE: Record<DrillUnits, Record<HoseSize, HoseFacts>> = { us: US, si: SI };

/** Coefficients that the program's own solver works with, psi per (100 gpm)^2 per 100 ft; as in the rules of `structural`. */
export const REFERENCE_COEFFICIENT: Record<HoseSize, number> = {
  '1': 150,
  '1.5': 24,
  '1.75': 15.5,
  '2': 8,
  '2.5': 2,
  '3': 0.8,
  '3.5': 0.34,
  '4': 0.2,
  '5': 0.08,
};

/** Lengths: hose comes in sections of 50 and 100 ft (15 and 30 m). */
export const SECTION: Record<DrillUnits, number> = { us: 50, si: 15 };
