import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { Impossibility } from '../limits/impossible.js';
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
  /** Draw-down integrated with the level, to the reserve or to where it ends before that, s; null where nothing is drawn. */
  endurance: number | null;
  /** Where the flow ceases to be before the tank is down to its reserve: what is left then, m3, and why. */
  ends?: { left: number; why: Impossibility };
  /** What the flow from a full tank, taken as steady, would have said, s. */
  flowTimesMinutes: number | null;
  source: string;
}

/** Times from when the water is turned on, s. */
export interface ShuttleGap {
  from: number;
  /** When the next tender is in; undefined where one is, and dumps less than is drawn. */
  until?: number;
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
  /** When water first fails; undefined where it does not within the horizon. */
  gap?: ShuttleGap;
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
  /** Why the state asked about cannot be; empty where it stands. No figure of one that cannot be holds. */
  impossible: Impossibility[];
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
