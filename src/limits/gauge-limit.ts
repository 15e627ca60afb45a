import { PSI } from '../physics/customary.js';

/** Dial of a gauge that does not say, and of the gauge that a test is commonly read on: 0 to 400 psi. Common practice, no source. */
export const USUAL_DIAL = 400 * PSI;
/** Permissible error of a gauge of grade 1A, of its full scale. NWCG PMS 447-1 (2003), Appendix C. */
export const GAUGE_ERROR = 0.01;
