import { PSI } from '../physics/customary.js';

/** What the pressure may rise by when a line is shut, Pa. City fire department manual, citing NFPA 1901 (2016). */
export const MOST_RISE = 30 * PSI;
export const MOST_RISE_SOURCE =
  'city fire department manual 303.004, rev. 27 May 2025, which cites NFPA 1901 (2016): 30 psi';
