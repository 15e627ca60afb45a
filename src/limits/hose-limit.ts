import { citation } from '../catalogue/citation.js';
import type { Hose } from '../catalogue/schema/hose.js';

/** Part of the service test pressure that hose is worked at, at most. NFPA 1962 (2018), as a relief setting. */
export const OF_SERVICE_TEST = 0.9;

/** What a hose may stand at, Pa. */
export interface HoseLimit {
  pressure: number;
  rule: 'working' | 'service_test' | 'part_of_service_test';
  /** As a sentence says it: `its working pressure`. */
  what: string;
  source: string;
}

/**
 * What hose bears: the lower of its working and its service test pressure. Over it nobody may stand beside the hose.
 * Undefined where neither is known, which is to be said and never taken as no limit.
 */
export function bearingLimit(hose: Hose): HoseLimit | undefined {
  return lower(workingLimit(hose), serviceTestLimit(hose, 1));
}

/**
 * What a relief valve or a governor may let hose stand at: the lower of its working pressure and 90 % of its service test
 * pressure. Undefined where neither is known.
 */
export function settingLimit(hose: Hose): HoseLimit | undefined {
  return lower(workingLimit(hose), serviceTestLimit(hose, OF_SERVICE_TEST));
}

function workingLimit(hose: Hose): HoseLimit | undefined {
  const pressure = hose.limits?.working;
  return pressure === undefined
    ? undefined
    : { pressure, rule: 'working', what: 'its working pressure', source: citation(hose, 'limits.working') };
}

function serviceTestLimit(hose: Hose, part: number): HoseLimit | undefined {
  const tested = hose.limits?.service_test;
  if (tested === undefined) return undefined;
  if (part === 1)
    return {
      pressure: tested,
      rule: 'service_test',
      what: 'its service test pressure',
      source: citation(hose, 'limits.service_test'),
    };
  return {
    pressure: part * tested,
    rule: 'part_of_service_test',
    what: '90 % of its service test pressure',
    source: 'NFPA 1962 (2018): relief set to at most 90 % of the service test pressure of the hose used',
  };
}

function lower(one: HoseLimit | undefined, other: HoseLimit | undefined): HoseLimit | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return one.pressure <= other.pressure ? one : other;
}
