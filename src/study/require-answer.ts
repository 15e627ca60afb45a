import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { Impossibility } from '../limits/impossible.js';
import type { SiteConditions, SolverReport, Verdict } from './answer.js';
import type { HabitAnswer } from './field-answer.js';

/** What a nozzle is laid for. */
export interface NozzleNeed {
  name: string;
  kind: string;
  pressure: number;
  /** At that pressure; undefined for a nozzle that holds its pressure over a range of flow. */
  flow?: number;
  source: string;
}

/** A nozzle against its need. */
export interface NozzleShort {
  name: string;
  pressure: number;
  required: number;
  /** Below zero where it is short. */
  margin: number;
}

export interface PumpSetting {
  name: string;
  flow: number;
  dischargePressure: number;
  inletPressure: number;
  /** Of what the engine's pumps move. */
  share: number;
  offCurve: boolean;
}

/** What one staging needs, or how far it falls short. */
export interface StagingDemand {
  staging: StagingName;
  verdict: Verdict;
  /** Why it falls short where the state at full speed, or every state that would serve, cannot be: no figure of it holds. */
  impossible?: Impossibility;
  /** Least part of governed speed that serves every nozzle in a state that can be; full speed where none does. */
  throttle: number;
  /** At that throttle. */
  pumps: PumpSetting[];
  totalFlow: number;
  /** The nozzle with the least margin at that throttle. */
  worst: NozzleShort;
  /** An open tank of the line that loses water at that throttle, the one that loses most. */
  losing?: { name: string; by: number };
  highestHose?: { at: string; pressure: number };
  /** Dangers at that throttle, the always-run cases included. */
  stops: number;
}

/** What the lay takes at an outlet, whatever pump makes it. */
export interface OutletDemand {
  name: string;
  flow: number;
  pressure: number;
}

/** The largest set of nozzles that some staging serves, where it cannot serve all. */
export interface Servable {
  staging: StagingName;
  served: string[];
  leftOut: string[];
  /** Every set was tried; otherwise it is the largest that was found. */
  exact: boolean;
  /** Part of governed speed that they are served at: full where the state can be there. */
  throttle: number;
}

export type RuleSet = 'wildland' | 'structural' | 'engineering';

/** What a notebook would have said at the outlet, by one rule set and no other. */
export interface HandRule {
  rules: RuleSet;
  /** The nozzle that asks for the most by these rules. */
  nozzle: string;
  outlet: string;
  flow: number;
  nozzlePressure: number;
  friction: number;
  appliances: number;
  applianceCount: number;
  height: number;
  climb: number;
  /** As the rules round it. */
  pressure: number;
  /** How the rules count, in words. */
  stamp: Statement;
}

export interface RequireAnswer {
  question: 'require';
  title: string;
  engine: string;
  site: SiteConditions;
  verdict: Verdict;
  /** The staging recommended: the one that serves all nozzles, or the one least short. */
  staging: StagingName;
  /** As the layout has it. */
  asLaid: StagingName;
  needs: NozzleNeed[];
  /** Undefined where no speed that the search goes to would serve every nozzle. */
  outlets?: OutletDemand[];
  /** Why there are none, where every state that would serve cannot be. */
  outletsImpossible?: Impossibility;
  stagings: StagingDemand[];
  servable?: Servable;
  rules: HandRule[];
  /** Why there are none. */
  rulesOmitted?: Statement;
  habits: HabitAnswer[];
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}
