import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';
import { pastLimit } from './ledger-limit.js';

/** A relief valve or governor that is set above what the weakest part bears, or that opens while the engine works. */
export const reliefSetting: Hazard = (facts): Caution[] => [
  ...pastLimit(facts, 'relief_above_hose', ({ limit }) => ({
    level: 'warn',
    message: `{at} is set to {value}; ${limit.replace('setting, by ', '')} allows at most {limit}`,
    action: 'Set it to at most that figure before this hose is charged.',
  })),
  ...pastLimit(facts, 'relief_opens', ({ worstWhen }) => ({
    level: 'warn',
    message: `{at} is set to {limit}, and the header stands at {value} ${worstWhen}: water that is asked for runs back to the tank`,
    action: 'Set it higher, if hose and casings allow, or throttle down.',
  })),
];
