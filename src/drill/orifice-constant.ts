import { AGENCY_JET_CONSTANT } from '../physics/nozzle/sharp-orifice.js';
import type { DrillUnits } from './problem.js';

/** The constant of Q = k Cd d^2 sqrt(P). */
export function dischargeConstant(units: DrillUnits): { readonly constant: number; readonly source: string } {
  return units === 'us'
    ? {
        constant: AGENCY_JET_CONSTANT,
        source:
          'NWCG Water Handling Equipment Guide, PMS 447-1, 5th ed., 2003, Appendix C: Q = 29.9 × 0.62 d² √P',
      }
    : {
        constant: 0.0668,
        source:
          'computed from 29.9 of the Water Handling Equipment Guide (gpm, in, psi), in L/min, mm and kPa',
      };
}
