import type { Appliance, AppliancePolicy, Branch } from '../catalogue/schema/appliance.js';
import type { CheckValve } from '../catalogue/schema/check-valve.js';
import type { Fitting } from '../catalogue/schema/fitting.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { Pipe } from '../catalogue/schema/pipe.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Valve } from '../catalogue/schema/valve.js';
import type { StepDocument, StepKey } from './schema/steps.js';
import type { GroundPoint } from './terrain.js';

/** Where something stands in a document; lines and columns count from one. */
export interface Position {
  file: string;
  line: number;
  column: number;
}

export type Path = readonly (string | number)[];

export interface Placed {
  /** Keys and indices from the top of the document; an engine's file hangs under `engine`. */
  path: Path;
  at: Position;
}

/** What a part of the catalogue, or of the layout's own, is called. */
export interface Modelled {
  /** Id in the catalogue; missing where the layout describes the part itself. */
  id?: string;
  /** The model's name, its id, or `hose of its own`. */
  modelName: string;
}

/** Where a height came from: stated, a grade of the slope, the terrain, or taken as level because nothing was said. */
export type RiseBasis = 'stated' | 'grade' | 'terrain' | 'level';

interface StepBase extends Placed {
  /** The name given, with `{n}` counted. */
  name?: string;
  /** The name, or where the step is: `hose 2 of left`. */
  label: string;
}

/** What a step keeps of its document, beside its model and name. */
type Kept<K extends StepKey, Omitted extends string = never> = Omit<StepDocument[K], K | 'name' | Omitted>;

interface Rising {
  /** Height gained from start to end, m. */
  rise: number;
  riseBasis: RiseBasis;
}

export interface HoseStep extends StepBase, Modelled, Rising, Kept<'hose', 'rise'> {
  kind: 'hose';
  hose: Hose;
  /** Crests and dips of the terrain under it, between its ends. */
  ground?: GroundPoint[];
}

export interface CountedFitting extends Modelled {
  fitting: Fitting;
  count: number;
}

export interface PipeStep extends StepBase, Modelled, Rising {
  kind: 'pipe';
  pipe: Pipe;
  /** Zero where only fittings are given. */
  length: number;
  fittings: CountedFitting[];
}

export interface ValveStep extends StepBase, Modelled {
  kind: 'valve';
  valve: Valve;
  /** Part of fully open, 0 to 1. */
  open: number;
}

export interface CheckValveStep extends StepBase, Modelled {
  kind: 'check_valve';
  check_valve: CheckValve;
}

export interface ApplianceStep extends StepBase, Modelled {
  kind: 'appliance';
  appliance: Appliance;
  policy: AppliancePolicy;
}

export interface BranchLine extends Placed {
  /** The name given, or `line 2 of branch 1 of left`. */
  name: string;
  steps: Step[];
}

/** The steps after a branch in its own list are the main line; where there are none, all water goes into `to`. */
export interface BranchStep extends StepBase, Modelled {
  kind: 'branch';
  branch: Branch;
  policy: AppliancePolicy;
  to: BranchLine[];
}

export interface SiameseStep extends StepBase {
  kind: 'siamese';
  /** Two lines or more, of the same rise, each of which leads on. */
  siamese: Step[][];
}

export interface PumpStep extends StepBase, Modelled, Kept<'pump'> {
  kind: 'pump';
  pump: Pump;
}

export interface TankStep extends StepBase {
  kind: 'tank';
  /** What it holds, m3. */
  tank: number;
}

export interface NozzleStep extends StepBase, Modelled, Kept<'nozzle'> {
  kind: 'nozzle';
  /** As the step sets it: its tip is the bore, its flow and pressure the rating of a fog nozzle, its pressure what an automatic one holds. */
  nozzle: Nozzle;
}

export interface OpenEndStep extends StepBase {
  kind: 'open_end';
}

export interface CapStep extends StepBase {
  kind: 'cap';
}

export interface GaugeStep extends StepBase {
  kind: 'gauge';
  name: string;
  gauge: string;
  /** Highest pressure on its dial, Pa. */
  range?: number;
}

export type Step =
  | HoseStep
  | PipeStep
  | ValveStep
  | CheckValveStep
  | ApplianceStep
  | BranchStep
  | SiameseStep
  | PumpStep
  | TankStep
  | NozzleStep
  | OpenEndStep
  | CapStep
  | GaugeStep;
