import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { SiteConditions, SolverReport } from './answer.js';

/** How far one staging goes up one slope with so many laterals open. */
export interface ReachCell {
  laterals: number;
  /** Hose of the trunk, m; 0 where not even a short lay is served. */
  length: number;
  /** Height gained over it, m. */
  height: number;
  /** Of a slope on which shorter lays do not do: from where they do, m. */
  from?: number;
  /**
   * What ends it: a nozzle below its need, hose over its limit flowing or with every nozzle shut, a state that cannot be, the
   * longest lay that is looked at, or a lay for which no steady flow was found.
   */
  limit: 'nozzle' | 'hose' | 'cannot_be' | 'longest_looked_at' | 'no_steady_answer';
}

export interface ReachRow {
  /** Height gained over level distance; below zero downhill. */
  grade: number;
  cells: ReachCell[];
}

export interface ReachStaging {
  staging: StagingName;
  /** Gauge pressure at the outlet with every nozzle shut. */
  shutPressure: number;
  /** The hose limit that the shut pressure breaks, if it does. */
  overHose?: { limit: number; source: string };
  /** Of a staging that is not laid: what must not be run in it. */
  stops: Caution[];
  rows: ReachRow[];
}

export interface ReachAnswer {
  question: 'reach';
  title: string;
  engine: string;
  site: SiteConditions;
  throttle: number;
  hose: string;
  hoseSource: string;
  nozzle: { name: string; pressure: number; source: string };
  lateral?: { hose: string; length: number; nozzle: string; pressure: number };
  /** Of the same hose, carried; undefined where the layout does not say. */
  carried?: number;
  /** The longest lay that is looked at. */
  longest: number;
  /** What height lost adds to the pressure in the hose; undefined where no slope of the table goes down. */
  downhill?: { height: number; pressure: number };
  asLaid: StagingName;
  stagings: ReachStaging[];
  /** The trunk, where no limit of its hose is known. */
  hoseWithoutLimit: string[];
  /** In the staging as laid. */
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}
