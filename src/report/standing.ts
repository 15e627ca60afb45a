import { STANDSTILL } from '../assembly/standstill.js';
import type { Measure } from '../quantity/dimension.js';
import type { FormatOptions } from '../quantity/format.js';
import type { SiteConditions } from '../study/answer.js';
import type { Cell } from './document.js';
import type { Figures } from './figures.js';
import { of } from './required.js';

/** Why a pressure that the equations give cannot be. */
export type NoState = 'no_water' | 'water_parts';

type Air = Pick<SiteConditions, 'vapourPressure' | 'atmosphericPressure'>;

/** As a cell says it. */
export const NO_STATE_WORDS: Record<NoState, string> = {
  no_water: 'no water',
  water_parts: 'cannot be',
};

/** As a program is told it. */
const REASONS: Record<NoState, string> = {
  no_water: 'no water reaches it: nothing lifts it so high',
  water_parts: 'water would boil before its pressure fell so far: the state cannot be',
};

/**
 * Why a gauge pressure cannot be, Pa: below that at which water boils, a column of it parts, and where none flows it never
 * came there. The equations know no such bound and go on.
 */
export function noState(
  pressure: number,
  { vapourPressure, atmosphericPressure }: Air,
  flow?: number,
): NoState | undefined {
  if (pressure > vapourPressure - atmosphericPressure) return undefined;
  return Math.abs(flow ?? Number.POSITIVE_INFINITY) < STANDSTILL ? 'no_water' : 'water_parts';
}

/** The same of an open nozzle, at which no pressure below the air's can stand. */
export function noStateAtNozzle(
  { state, flow, pressure }: { state: 'open' | 'shut'; flow: number; pressure: number },
  air: Air,
): NoState | undefined {
  if (state === 'open' && flow < STANDSTILL && pressure < 0) return 'no_water';
  return noState(pressure, air, flow);
}

/** The pressure, or why there is none. */
export function standingCell(
  none: NoState | undefined,
  field: string,
  pressure: number,
  figures: Figures,
  options?: FormatOptions,
): Cell {
  return none
    ? { text: NO_STATE_WORDS[none], tone: 'bad' }
    : figures.say(field, 'pressure', pressure, options);
}

export const standingTree = (none: NoState | undefined, pressure: number): Measure | null =>
  none ? null : of('pressure', pressure);

export const reasonTree = (...nones: (NoState | undefined)[]): string | null => {
  const [none] = nones.filter((one) => one !== undefined);
  return none ? REASONS[none] : null;
};

/** What the words in the cells mean, for a paragraph under them. */
export function noStateText(nones: readonly (NoState | undefined)[], air: Air, figures: Figures): string[] {
  const boils = figures.say('boils_at', 'pressure', air.vapourPressure - air.atmosphericPressure);
  const meanings: Record<NoState, string> = {
    no_water: 'No water: none is lifted there, so that there is no pressure to read.',
    water_parts: `Cannot be: water boils at ${boils} here, and no gauge falls below that. This flow cannot be had, and no figure that rests on it holds.`,
  };
  return [...new Set(nones)].flatMap((none) => (none ? [meanings[none]] : []));
}
