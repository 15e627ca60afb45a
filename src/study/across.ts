import type { TypingAsked } from '../layout/layout.js';
import type { AcrossAnswer, Sweep, SweptQuantity } from './answer.js';
import { type Conditions, under } from './conditions.js';
import { verdictHere } from './judge.js';
import type { Rig } from './rig.js';

const CONDITION: Record<SweptQuantity, keyof Conditions> = {
  elevation: 'elevation',
  air_temperature: 'airTemperature',
  water_temperature: 'waterTemperature',
  wear: 'wear',
  tank_level: 'tankLevel',
};

/** The verdict at each of several places, days, ages or levels, with everything else as laid out. */
export function judgeAcross(rig: Rig, typing: TypingAsked, sweep: Sweep): AcrossAnswer {
  const { of, values, given = [] } = sweep;
  const held = Object.fromEntries(given.map((one) => [CONDITION[one.of], one.value]));
  return {
    of,
    given,
    rows: values.map((value) => ({
      value,
      ...verdictHere(rig.with(under(rig.layout, { ...held, [CONDITION[of]]: value })), typing),
    })),
  };
}
