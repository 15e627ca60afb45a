/**
 * Below this nothing counts as flowing, m3/s (0.02 gpm): a hundred times what the solver leaves out of balance, and less than any
 * gauge tells.
 */
export const STANDSTILL = 1e-6;
