import type { Hose } from '../catalogue/schema/hose.js';
import { bearingLimit, settingLimit } from '../limits/hose-limit.js';
import { hoseLoads } from '../limits/hose-load.js';
import { grouped } from '../quantity/format.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';

/**
 * Hose above what it bears, or above what a relief valve may be set to for it, anywhere along it and in any state. Each
 * state names its worst hose and counts the others, as a long lay would say the same of every length.
 */
export const hosePressure: Hazard = ({ cases }) => cases.flatMap(inCase);

function inCase({ when, point }: HazardCase): Caution[] {
  const found = hoseLoads(point).flatMap(({ element, hose, highest: value }) => {
    const limit = limitOf(hose, value);
    return limit === undefined ? [] : [{ element, value, limit, excess: value / limit.at }];
  });
  return [...new Set(found.map(({ limit }) => limit.code))].map((code) => {
    const same = found.filter(({ limit }) => limit.code === code);
    const worst = same.reduce((kept, one) => (one.excess > kept.excess ? one : kept));
    const { element, value, limit } = worst;
    const others = same.length - 1;
    const more =
      others === 0
        ? ''
        : `; so is it with ${grouped(others)} more ${others === 1 ? 'length' : 'lengths'} of hose`;
    return {
      code,
      level: limit.level,
      at: element.name,
      value: { value, dimension: 'pressure' },
      limit: { value: limit.at, dimension: 'pressure' },
      message: `{at} stands at {value} ${when}; ${limit.what} is {limit}${more}`,
      action: limit.action,
      source: limit.source,
    };
  });
}

function limitOf(hose: Hose, stands: number) {
  // A pressure that rounding alone puts over its limit stands at it.
  const pressure = stands - 1;
  const bears = bearingLimit(hose);
  if (bears !== undefined && pressure > bears.pressure)
    return {
      code: bears.rule === 'working' ? 'hose_over_working_pressure' : 'hose_over_service_test',
      level: 'stop',
      at: bears.pressure,
      what: bears.what,
      action: 'Do not charge it so. Lower the throttle, set a relief valve, or lay hose of a higher rating.',
      source: bears.source,
    } as const;
  const set = settingLimit(hose);
  if (set === undefined || pressure <= set.pressure) return undefined;
  return {
    code: 'hose_near_service_test',
    level: 'warn',
    at: set.pressure,
    what: set.what,
    action:
      'Lower the throttle or set the relief valve to that figure, or lay hose of a higher service test pressure.',
    source: set.source,
  } as const;
}
