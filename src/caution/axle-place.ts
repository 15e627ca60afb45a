import type { Caution } from './caution.js';
import type { Hazard, HazardFacts } from './hazard.js';

/** An axle that is rated and that not every weight has a place on: what it carries is known only from below, or not at all. */
export const axlePlace: Hazard = (facts) => [...fromBelow(facts), ...withoutWheelbase(facts)];

function fromBelow({ ledger = [] }: HazardFacts): Caution[] {
  return ledger
    .filter(({ code, unplaced, margin }) => code === 'axle_over_rating' && unplaced && margin >= 0)
    .map(({ at, worst, allowed, unplaced = [], source }) => ({
      code: 'axle_place_not_stated',
      level: 'warn',
      at,
      value: { value: worst, dimension: 'mass' },
      limit: allowed,
      message:
        '{at} carries at least {value}, and no place is stated for {unplaced}: whether it stays within its rating of {limit} is not known',
      action: 'State behind_front_axle of each weight, or have each axle weighed, fully loaded.',
      values: { unplaced: unplaced.join(', ') },
      source,
    }));
}

function withoutWheelbase({ layout: { engine }, judged }: HazardFacts): Caution[] {
  const { front, rear } = engine.axle_ratings ?? {};
  const rated = front !== undefined || rear !== undefined;
  if (judged === undefined || !rated || engine.weights.length === 0 || engine.wheelbase !== undefined)
    return [];
  return [
    {
      code: 'axle_place_not_stated',
      level: 'warn',
      at: 'the axles',
      message: 'No wheelbase is stated: whether {at} stay within their ratings is not known',
      action:
        'State wheelbase, and behind_front_axle of each weight, or have each axle weighed, fully loaded.',
      source: 'ratings stated in the layout',
    },
  ];
}
