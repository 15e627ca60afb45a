import { DrillFault } from './drill-fault.js';
import { LEVELS, type Level } from './problem.js';

/** So many problems of a topic at a level. */
export interface Planned {
  readonly topic: string;
  readonly count: number;
  /** The sheet's where none is said. */
  readonly level?: Level;
}

const ENTRY = /^([a-z][a-z-]*)\s*(?:[:=x×]\s*(\d{1,3}))?\s*(?:(?:@|at level|level)\s*(\d))?$/i;

/**
 * What an exam covers, from text: `draft: 2, wye-equal: 3 @ 4, relay`. Entries are parted by commas, semicolons or lines;
 * `@ 4` is a level; what follows # is a remark.
 *
 * Errors: DrillFault naming the entry that cannot be read.
 */
export function readBlueprint(text: string): Planned[] {
  const entries = text
    .split(/[\r\n]+/)
    .map((line) => line.replace(/#.*$/, ''))
    .join(',')
    .split(/[,;]/)
    .map((entry) => entry.replace(/^[\s-]+/, '').trim())
    .filter((entry) => entry !== '');
  if (entries.length === 0) throw new DrillFault('the blueprint is empty; write draft: 2, wye-equal: 3 @ 4');
  return entries.map((entry) => {
    const [, topic, count = '1', level] = ENTRY.exec(entry) ?? [];
    if (topic === undefined || Number(count) === 0 || (level !== undefined && !isLevel(Number(level))))
      throw new DrillFault(
        `the blueprint says ${entry}, where a topic, a count and perhaps a level from 1 to 5 are wanted: wye-equal: 3 @ 4`,
      );
    return {
      topic: topic.toLowerCase(),
      count: Number(count),
      ...(level === undefined ? {} : { level: Number(level) as Level }),
    };
  });
}

const isLevel = (level: number): level is Level => LEVELS.includes(level as Level);

/** The same on one line, as a command line holds it. */
export const blueprintText = (plan: readonly Planned[]): string =>
  plan
    .map(({ topic, count, level }) => `${topic}:${count}${level === undefined ? '' : `@${level}`}`)
    .join(',');
