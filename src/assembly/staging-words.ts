import type { StagingName } from './assembly.js';

/** A staging by itself. */
export const STAGING_WORDS: Record<StagingName, string> = {
  parallel: 'parallel',
  series: 'series, a into b',
  series_reversed: 'series, b into a',
  a: 'pump a alone',
  b: 'pump b alone',
  separate: 'separate outlets',
};

/** As it follows `the pumps run`. */
export const STAGING_PHRASES: Record<StagingName, string> = {
  parallel: 'in parallel',
  series: 'in series, a into b',
  series_reversed: 'in series, b into a',
  a: 'on pump a alone',
  b: 'on pump b alone',
  separate: 'on separate outlets',
};
