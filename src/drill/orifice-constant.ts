import type { DrillUnits } from './problem.js';

/** The constant of Q = k Cd d^2 sqrt(P). */
export function dischargeConstant(units: DrillUnits): { readonly constant: number; readonly source: string } {
  return units === 'us'
    ? { constant: 29.84, source: 'Q = 29.84 Cd d² √P, from memory; 29.7 of the smooth bore is 0.995 of it' }
    : { constant: 0.0667, source: 'computed from 29.84 gpm, in and psi, in L/min, mm and kPa' };
}
