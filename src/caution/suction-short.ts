import type { Hazard } from './hazard.js';
import { pastLimit } from './ledger-limit.js';

/** A pump with less suction head than it needs, in any state or as its tank is drawn down: it cavitates. */
export const suctionShort: Hazard = (facts) =>
  pastLimit(facts, 'suction_short', ({ worstWhen }) => ({
    level: 'warn',
    message: `{at} has {value} of suction head ${worstWhen}, and needs {limit}: it cavitates`,
    action:
      'Widen or shorten the line from the tank, clear the strainer and vent, lower the lift, or draw less.',
  }));
