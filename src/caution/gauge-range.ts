import type { Hazard } from './hazard.js';
import { pastLimit } from './ledger-limit.js';

/** A gauge whose needle runs past the end of its dial: nobody reads what stands there, and the gauge may be spoilt. */
export const gaugeRange: Hazard = (facts) =>
  pastLimit(facts, 'gauge_past_range', ({ worstWhen }) => ({
    level: 'note',
    message: `{at} stands at {value} ${worstWhen}; its dial ends at {limit}`,
    action: 'Fit a gauge of a larger range, or state the range of the one that is there.',
  }));
