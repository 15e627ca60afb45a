import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';
import { pastLimit } from './ledger-limit.js';

/** An axle, or the whole truck, above its rating with tank, crew and hose as they may be. */
export const overweight: Hazard = (facts): Caution[] =>
  ['axle_over_rating', 'over_gross_rating'].flatMap((code) =>
    pastLimit(facts, code, ({ worstWhen, unplaced }) => ({
      level: 'stop',
      message: `{at} carries ${unplaced ? 'at least ' : ''}{value} ${worstWhen}; its rating is {limit}`,
      action:
        'Do not drive it so. Move or leave weight, carry less water, and have each axle weighed, fully loaded.',
    })),
  );
