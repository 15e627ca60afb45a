import { pressuresAlong } from '../assembly/along-hose.js';
import type { Hose } from '../catalogue/schema/hose.js';
import { grouped } from '../quantity/format.js';
import type { Caution } from './caution.js';
import type { Hazard, HazardCase } from './hazard.js';

/** Part of the service test pressure that hose is worked at, at most. NFPA 1962 (2018), as a relief setting. */
const WORKED_AT = 0.9;

/**
 * Hose above its working or service test pressure, or above 90 % of the latter, anywhere along it and in any state. Each
 * state names its worst hose and counts the others, as a long lay would say the same of every length.
 */
export const hosePressure: Hazard = ({ cases }) => cases.flatMap(inCase);

function inCase({ when, point }: HazardCase): Caution[] {
  const found = point.assembly.elements.flatMap((element) => {
    if (element.step?.kind !== 'hose') return [];
    // At one of its ends or a dip of the ground, as friction and height run evenly between.
    const value = pressuresAlong(point, element).highest;
    const limit = limitOf(element.step.hose, value);
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

function limitOf({ limits }: Hose, stands: number) {
  // A pressure that rounding alone puts over its limit stands at it.
  const pressure = stands - 1;
  const source = 'limits of the hose as its row or the layout states them';
  const burst =
    'Do not charge it so. Lower the throttle, set a relief valve, or lay hose of a higher rating.';
  if (limits?.service_test !== undefined && pressure > limits.service_test) {
    const at = limits.service_test;
    return {
      code: 'hose_over_service_test',
      level: 'stop',
      at,
      what: 'its service test pressure',
      action: burst,
      source,
    } as const;
  }
  if (limits?.working !== undefined && pressure > limits.working) {
    const at = limits.working;
    return {
      code: 'hose_over_working_pressure',
      level: 'stop',
      at,
      what: 'its working pressure',
      action: burst,
      source,
    } as const;
  }
  if (limits?.service_test !== undefined && pressure > WORKED_AT * limits.service_test) {
    return {
      code: 'hose_near_service_test',
      level: 'warn',
      at: WORKED_AT * limits.service_test,
      what: '90 % of its service test pressure',
      action:
        'Lower the throttle or set the relief valve to that figure, or lay hose of a higher service test pressure.',
      source: 'NFPA 1962 (2018): relief set to at most 90 % of the service test pressure of the hose used',
    } as const;
  }
  return undefined;
}
