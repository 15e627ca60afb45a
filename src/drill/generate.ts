import type { Layout } from '../layout/layout.js';
import type { DrillUnits, Level, Problem } from './problem.js';
import type { RuleSet } from './rules/rule-set.js';

export interface SheetRequest {
  /** Topics to draw from, in turn; none means all of them in a balanced mix. */
  readonly topics: readonly string[];
  readonly level: Level;
  readonly count: number;
  readonly seed: number;
  readonly rules: RuleSet;
  readonly units: DrillUnits;
  /** How many choices each problem offers; 0 for open answers. */
  readonly choices: number;
  /** The trainer's own engine and lay: problems are made out of it instead of drawn. */
  readonly layout?: Layout;
}

export interface Sheet {
  readonly seed: number;
  readonly level: Level;
  readonly units: DrillUnits;
  readonly rules: { readonly name: string; readonly title: string; readonly source: string };
  readonly version: string;
  readonly problems: readonly Problem[];
}

/**
 * Problems for one sheet: same request, same version, same sheet on any machine. No two problems of a sheet ask the
 * same thing.
 * @throws DrillFault where a topic, a level or a count is not to be had; its message says what is.
 */
export declare function makeSheet(request: SheetRequest): Sheet;

/** Every topic, easy to hard. */
export declare function topicList(): readonly { readonly id: string; readonly title: string }[];

/** The problem that an id names, made again. `number` and `seed` are as given. */
export declare function problemById(
  id: string,
  rules: RuleSet,
  choices?: number,
  place?: { readonly number: number; readonly seed: number },
): Problem;
