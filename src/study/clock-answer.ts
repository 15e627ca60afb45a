import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { SiteConditions, SolverReport } from './answer.js';

export interface TankClock {
  capacity: number;
  /** Kept back, m3. */
  reserve: number;
  /** What fills the hose on the ground, m3. */
  hoseFill: number;
  /** Capacity less reserve and hose fill, m3; 0 where the hose takes it all. */
  usable: number;
  /** Drawn with the tank full, and with only the reserve left, m3/s. */
  flowFull: number;
  flowLow: number;
  /** Height of the surface over the pump inlets full, and with only the reserve left, m. */
  surfaceFull: number;
  surfaceLow: number;
  /** Draw-down integrated with the level, s; null where nothing is drawn. */
  endurance: number | null;
  /** What the flow from a full tank, taken as steady, would have said, s. */
  flowTimesMinutes: number | null;
  source: string;
}

export interface ShuttleClock {
  tenders: number;
  /** Of one tender, as delivered, m3. */
  load: number;
  fill: number;
  there: number;
  dump: number;
  back: number;
  /** One round, s. */
  cycle: number;
  /** By the 35 mph formula rather than a stated speed. */
  byFormula: boolean;
  sustained: number;
  /** What is drawn, m3/s. */
  drawn: number;
  /** Undefined where one fill and dump site cannot pass it. */
  needed?: number;
  /** s from when the water is turned on; undefined where there is none within the horizon. */
  firstGap?: number;
  horizon: number;
  source: string;
}

export interface FuelClock {
  pump: string;
  /** Burnt at this load, or at rated power where the load is not known, m3/s; undefined where nothing is known of it. */
  burn?: number;
  /** At what load it was taken. */
  basis: 'rated' | 'shaft_power';
  onBoard?: number;
  /** Time until its tank is empty, s. */
  lasts?: number;
  source: string;
}

export interface ClockAnswer {
  question: 'clock';
  title: string;
  engine: string;
  site: SiteConditions;
  staging: StagingName;
  totalFlow: number;
  /** Undefined where the engine does not live on its tank. */
  tank?: TankClock;
  shuttle?: ShuttleClock;
  fuel: FuelClock[];
  /** The pump that runs out of fuel first. */
  firstRefuelling?: { pump: string; at: number };
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}
