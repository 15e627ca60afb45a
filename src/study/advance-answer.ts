import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { Impossibility } from '../limits/impossible.js';
import type { Measure } from '../quantity/dimension.js';
import type { SiteConditions, SolverReport } from './answer.js';

/** What may stop a lay from growing. */
export type LimitCode =
  | 'cannot_be'
  | 'nozzle_below_minimum'
  | 'hose_over_limit'
  | 'intake_below_floor'
  | 'tank_not_fed'
  | 'hose_run_out'
  | 'fittings_run_out'
  | 'water_run_out';

export interface LimitMet {
  code: LimitCode;
  /** The nozzle, hose, pump or store that it is about. */
  at: string;
  /** Hose stands at its limit with water flowing, or with every nozzle shut. */
  state: 'flowing' | 'shut';
  value: Measure;
  limit: Measure;
  source: string;
  /** Of `cannot_be`: why. */
  why?: Impossibility;
}

/** What a step has used of something against what is carried; undefined where the layout does not say. */
export interface StoreUse {
  item: string;
  used: Measure;
  carried?: Measure;
}

export interface HighestHose {
  at: string;
  pressure: number;
}

export interface AdvanceStep {
  section: number;
  /** Why it cannot flow so, where it cannot: no figure of what flows holds. */
  impossible?: Impossibility;
  /** Hose of the trunk and of what lies before it, m. */
  distance: number;
  /** Height of the head of the lay over the pump inlets, m. */
  height: number;
  laterals: number;
  lateralsOpen: number;
  totalFlow: number;
  /** Highest discharge gauge of the engine's own pumps, Pa. */
  pumpPressure: number;
  /** At the head of the hose, where the trunk ends, Pa. */
  headPressure: number;
  /** Undefined where nothing is open at the head. */
  farNozzle?: { name: string; flow: number; pressure: number; least?: number };
  hoseFlowing: HighestHose;
  hoseShut: HighestHose;
  hose: StoreUse[];
  fittings: StoreUse[];
  /** Undefined where the engine does not live on its tank. */
  water?: {
    /** What it takes to fill the hose, m3. */
    fill: number;
    /** Poured so far, where the plan has a pace, m3. */
    used: number;
    /** Put back by tenders so far, m3. */
    brought: number;
    /** Left above the reserve, m3. */
    left: number;
    /** Time that it lasts at this step's flow, s; null where it does not run down. */
    lasts: number | null;
  };
  limits: LimitMet[];
}

export type OptionCode =
  | 'fewer_laterals'
  | 'laterals_shut'
  | 'staging'
  | 'throttle'
  | 'booster'
  | 'portable_tank'
  | 'doubled_trunk'
  | 'bigger_trunk'
  | 'more_hose'
  | 'more_fittings'
  | 'tender_shuttle';

/** Where a pump goes, found from the pressure along the line. */
export interface Placement {
  /** It stands at the end of this section, before its wye. */
  section: number;
  distance: number;
  height: number;
  pump: string;
  throttle: number;
  /** Gauge pressure at its intake, or at the inlet of the portable tank, Pa. */
  intake: number;
  discharge: number;
  flow: number;
  /** What is asked of that intake, and where that is from. */
  floor: number;
  source: string;
}

/** One way to take the lay further, solved on its own. */
export interface AdvanceOption {
  code: OptionCode;
  title: Statement;
  /** The last section at which nothing breaks. */
  reached: number;
  /** How many sections that is beyond the plan as it stands. */
  gained: number;
  distance: number;
  height: number;
  farNozzle?: { name: string; flow: number; pressure: number };
  placement?: Placement;
  /** What stops it; undefined where it goes through the whole plan. */
  stop?: LimitMet;
  /** What it takes beyond what is carried. */
  needs: StoreUse[];
  /** The section at which the tank would be down to its reserve, where tenders are counted on to bring more. */
  dryAt?: number;
}

export interface AdvanceAnswer {
  question: 'advance';
  title: string;
  engine: string;
  site: SiteConditions;
  staging: StagingName;
  plan: {
    outlet: string;
    trunk: string;
    sections: number;
    sectionLength: number;
    /** Sections from one lateral to the next; undefined without laterals. */
    every?: number;
    flowing: Statement;
    pace?: number;
  };
  /** Up to and with the step that a limit stops. */
  steps: AdvanceStep[];
  /** The last section at which nothing breaks; 0 where the first one breaks something. */
  reached: number;
  /** What stops it; undefined where the whole plan goes through. */
  stop?: LimitMet;
  /** The farthest first. */
  options: AdvanceOption[];
  /** Kinds of hose on the ground of which no limit is known. */
  hoseWithoutLimit: string[];
  /** At the last step that nothing breaks, or the first where there is none. */
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}
