import { FOOT, GALLON_PER_MINUTE, INCH, LITRE_PER_MINUTE, PSI } from '../../physics/customary.js';
import type { DrillUnits } from '../problem.js';

/** SI value of one unit of the sheet. */
export const SI_VALUE: Record<
  DrillUnits,
  { readonly pressure: number; readonly flow: number; readonly length: number; readonly bore: number }
> = {
  us: { pressure: PSI, flow: GALLON_PER_MINUTE, length: FOOT, bore: INCH },
  si: { pressure: 1000, flow: LITRE_PER_MINUTE, length: 1, bore: 1e-3 },
};
