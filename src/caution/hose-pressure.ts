import { bearingLimit, type HoseLimit, settingLimit } from '../limits/hose-limit.js';
import { type HoseLoad, hoseLoads } from '../limits/hose-load.js';
import { grouped } from '../quantity/format.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';

/**
 * Hose above what it bears, or above what a relief valve may let it stand at, anywhere along the ground and in any state. Each
 * state names its worst hose and counts the others, as a long lay would say the same of every length.
 */
export const hosePressure: Hazard = ({ cases }) => cases.flatMap(inCase);

function inCase({ when, point }: HazardCase): Caution[] {
  const found = hoseLoads(point).flatMap((load) => {
    const over = overLimit(load);
    return over === undefined ? [] : [{ ...load, over, excess: load.highest / over.limit.pressure }];
  });
  return [...new Set(found.map(({ over }) => over.code))].map((code) => {
    const same = found.filter(({ over }) => over.code === code);
    const worst = same.reduce((kept, one) => (one.excess > kept.excess ? one : kept));
    const { element, highest, over } = worst;
    const others = same.length - 1;
    const more =
      others === 0
        ? ''
        : `; so is it with ${grouped(others)} more ${others === 1 ? 'length' : 'lengths'} of hose`;
    return {
      code,
      level: over.level,
      at: element.name,
      value: { value: highest, dimension: 'pressure' },
      limit: { value: over.limit.pressure, dimension: 'pressure' },
      message: `{at} stands at {value} ${when}; ${over.limit.what} is {limit}${more}`,
      action: over.action,
      source: over.limit.source,
    };
  });
}

/** A pressure that rounding alone puts over its limit stands at it, Pa. */
const ROUNDING = 1;

const BURSTS = 'Do not charge it so. Lower the throttle, set a relief valve, or lay hose of a higher rating.';
const WEARS =
  'Lower the throttle or set the relief valve to that figure, or lay hose of a higher service test pressure.';

interface OverLimit {
  code: string;
  level: Caution['level'];
  limit: HoseLimit;
  action: string;
}

/** The gravest limit that a hose stands over. */
function overLimit({ hose, highest }: HoseLoad): OverLimit | undefined {
  const stands = highest - ROUNDING;
  const bears = bearingLimit(hose);
  if (bears && stands > bears.pressure) {
    const over = { level: 'stop', limit: bears, action: BURSTS } as const;
    return bears.rule === 'working'
      ? { code: 'hose_over_working_pressure', ...over }
      : { code: 'hose_over_service_test', ...over };
  }
  const setting = settingLimit(hose);
  return setting && stands > setting.pressure
    ? { code: 'hose_near_service_test', level: 'warn', limit: setting, action: WEARS }
    : undefined;
}
