import { COLDEST_AIR, HIGHEST_PLACE, HOTTEST_AIR, LOWEST_PLACE } from '../../physics/engine-derating.js';
import { BOILING, FREEZING } from '../../physics/water.js';

/** What a place may be, where an engine runs or where a curve was measured: as far as the laws of air, water and engines go. */
export const PLACE = {
  elevation: { atLeast: LOWEST_PLACE, atMost: HIGHEST_PLACE },
  airTemperature: { atLeast: COLDEST_AIR, atMost: HOTTEST_AIR },
  waterTemperature: { atLeast: FREEZING, atMost: BOILING },
} as const;
