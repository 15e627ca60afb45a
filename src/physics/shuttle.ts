import { requirePositive } from './range.js';

/** Part of a tender's tank that is counted on [1]: the rest is spilt, not filled or not emptied. */
export const TENDER_DELIVERED = 0.9;

/** Time that a tender takes to get going and to stop on each leg [s]: 0.65 min. */
const LEG_START = 0.65 * 60;
/** Time on the road at 35 mph [s/m]: 1.7 min a mile. */
const LEG_PACE = (1.7 * 60) / 1609.344;

/**
 * Time of a tender on the road, one way.
 *
 * Formula: t = 0.65 + 1.7 D, t in minutes, D in miles; where a speed is known t = D / v
 * Range: distance from 0 up; speed above 0. The formula is for roads on which 35 mph is held: mountain roads are slower.
 * Errors: RangeError for a speed of 0 or less.
 * Source: tender-shuttle formula of fire services, T = 0.65 + 1.7 D at 35 mph; some apply it to the round trip, here it is
 * that of one leg (from memory).
 * @param distance road one way [m]
 * @param speed on the road; undefined for the formula [m/s]
 * @returns time [s]
 * @example shuttleLeg(5 * 1609.344) // => 549
 */
export function shuttleLeg(distance: number, speed?: number): number {
  if (speed === undefined) return distance > 0 ? LEG_START + LEG_PACE * distance : 0;
  requirePositive('speed', speed, 'm/s');
  return distance / speed;
}

/**
 * Flow that tenders sustain, each going round once in a cycle.
 *
 * Formula: Q = n 0.9 V / (fill + dump + travel)
 * Range: any number of tenders; tank and cycle above 0.
 * Errors: RangeError outside the range.
 * Source: tender-shuttle formula of fire services (from memory); 3,000 gal in 12 min makes 225 gpm.
 * @param tenders how many go round [1]
 * @param tank what one carries [m3]
 * @param cycle filling, dumping and both legs [s]
 * @returns flow [m3/s]
 * @example shuttleFlow(1, 11.3562, 720) // => 0.0141953
 */
export function shuttleFlow(tenders: number, tank: number, cycle: number): number {
  requirePositive('tank', tank, 'm3');
  requirePositive('cycle', cycle, 's');
  return (tenders * TENDER_DELIVERED * tank) / cycle;
}
