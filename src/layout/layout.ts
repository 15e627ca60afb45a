import type { Appliance, AppliancePolicy, Branch } from '../catalogue/schema/appliance.js';
import type { CheckValve } from '../catalogue/schema/check-valve.js';
import type { Fitting } from '../catalogue/schema/fitting.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Nozzle } from '../catalogue/schema/nozzle.js';
import type { Pipe } from '../catalogue/schema/pipe.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Typing, TypingClass } from '../catalogue/schema/typing.js';
import type { Valve } from '../catalogue/schema/valve.js';
import type { EngineDocument } from './schema/engine.js';
import type { LayoutDocument, STAGINGS } from './schema/layout.js';
import type { StepDocument, StepKey } from './schema/steps.js';

/**
 * A layout with nothing left to look up: SI values, models in the place of ids, repeats written out, every height
 * known. Whatever came from the document says where it stands there.
 */

/** Where something stands in a document. */
export interface Place {
  file: string;
  path: (string | number)[];
  /** From one. */
  line: number;
  column: number;
}

/** A part of the catalogue or of the layout's own; `id` is missing where the layout describes it itself. */
export interface Part<Model> {
  id?: string;
  model: Model;
}

/** Where a height came from: stated, a grade of the slope, the terrain, or taken as level because nothing was said. */
export type RiseBasis = 'stated' | 'grade' | 'terrain' | 'level';

interface Placed {
  /** The name given, with `{n}` counted. */
  name?: string;
  /** The name, or where it is: `hose 2 of left`. */
  label: string;
  at: Place;
}

/** What a step keeps of its document beside its model. */
type Kept<K extends StepKey, Omitted extends string = never> = Omit<StepDocument[K], K | 'name' | Omitted>;

export interface HoseStep extends Placed, Kept<'hose', 'rise'> {
  kind: 'hose';
  hose: Part<Hose>;
  /** Height gained from start to end, m. */
  rise: number;
  riseBasis: RiseBasis;
}

export interface PipeStep extends Placed {
  kind: 'pipe';
  pipe: Part<Pipe>;
  length: number;
  rise: number;
  riseBasis: RiseBasis;
  fittings: (Part<Fitting> & { count: number })[];
}

export interface ValveStep extends Placed {
  kind: 'valve';
  valve: Part<Valve>;
  /** Part of fully open, 0 to 1. */
  open: number;
}

export interface CheckValveStep extends Placed {
  kind: 'check_valve';
  check_valve: Part<CheckValve>;
}

export interface ApplianceStep extends Placed {
  kind: 'appliance';
  appliance: Part<Appliance>;
}

export interface BranchLine {
  name?: string;
  label: string;
  at: Place;
  steps: Step[];
}

/** The steps after a branch in its own list are the main line; where there are none, all water goes into `to`. */
export interface BranchStep extends Placed {
  kind: 'branch';
  branch: Part<Branch>;
  to: BranchLine[];
}

export interface SiameseStep extends Placed {
  kind: 'siamese';
  lines: Step[][];
}

export interface PumpStep extends Placed, Kept<'pump'> {
  kind: 'pump';
  pump: Part<Pump>;
}

export interface TankStep extends Placed {
  kind: 'tank';
  capacity: number;
}

export interface NozzleStep extends Placed, Kept<'nozzle'> {
  kind: 'nozzle';
  /** With the tip, flow and pressure of the step where they change what the nozzle is. */
  nozzle: Part<Nozzle>;
}

export interface OpenEndStep extends Placed {
  kind: 'open_end';
}

export interface CapStep extends Placed {
  kind: 'cap';
}

export interface GaugeStep extends Placed {
  kind: 'gauge';
  name: string;
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

export type StepKind = Step['kind'];
export type PumpName = 'a' | 'b';
export type Staging = (typeof STAGINGS)[number];

export interface EnginePump extends Omit<EngineDocument['pumps']['a'], 'model'>, Part<Pump> {
  at: Place;
}

export interface Plumbing {
  intake: Step[];
  suction: Record<PumpName, Step[]>;
  discharge: Record<PumpName, Step[]>;
  transfer: Step[];
  manifold: Step[];
  cooling?: NonNullable<EngineDocument['plumbing']>['cooling'];
}

export interface Outlet {
  name: string;
  /** Whose it is where the pumps work apart. */
  pump?: PumpName;
  steps: Step[];
  at: Place;
}

export interface CarriedHose extends Part<Hose> {
  length: number;
  at: Place;
}

export interface Weight {
  name: string;
  weight: number;
  behind_front_axle?: number;
}

export interface Engine {
  name: string;
  tank?: EngineDocument['tank'];
  pumps: { a: EnginePump; b?: EnginePump };
  plumbing: Plumbing;
  relief?: EngineDocument['relief'];
  /** In the order of the document; one without steps, called `outlet`, where the engine names none. */
  outlets: Outlet[];
  /** Undefined where the document says nothing of it, which is not the same as none. */
  hose_carried?: CarriedHose[];
  crew?: number;
  gross_weight_rating?: number;
  weights: Weight[];
}

export type Throttle =
  | { by: 'speed'; a: number; b: number }
  | { by: 'discharge_pressure'; discharge_pressure: number };

export type Supply =
  | { kind: 'tank' }
  | { kind: 'draft'; lift: number; suction: Step[]; strainer?: Part<Appliance> }
  | { kind: 'hydrant'; static: number; residual: number; flow: number }
  | { kind: 'relay'; pressure: number };

export interface TypingAsked {
  /** Missing where the layout states its own. */
  scheme?: string;
  class?: string;
  table?: Typing;
  requirement: TypingClass;
  /** To judge by where the table publishes no pressure. */
  pressure?: number;
  at: Place;
}

export interface Lay {
  outlet: string;
  steps: Step[];
}

export interface Layout {
  title: string;
  site: LayoutDocument['site'];
  engine: Engine;
  staging: Staging;
  throttle: Throttle;
  supply: Supply;
  typing?: TypingAsked;
  appliance_policy: AppliancePolicy;
  /** Outlets with a lay; those not named here are shut. */
  lay: Lay[];
  /** Files that it was read from, the layout's own first. */
  files: string[];
}
