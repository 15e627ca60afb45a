import type { Appliance, AppliancePolicy } from '../catalogue/schema/appliance.js';
import type { Hose } from '../catalogue/schema/hose.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Typing, TypingClass } from '../catalogue/schema/typing.js';
import type { Progressive } from './progressive.js';
import type { EngineDocument } from './schema/engine.js';
import type { LayoutDocument, STAGINGS } from './schema/layout.js';
import type { ShuttleDocument } from './schema/shuttle.js';
import type { Modelled, Placed, Step } from './step.js';

/**
 * A layout with nothing left to look up: SI values, models in the place of ids, repeats written out, every height
 * known. Whatever came from the document says where it stands there.
 */
export interface Layout {
  title: string;
  site: LayoutDocument['site'];
  engine: Engine;
  staging: Staging;
  throttle: Throttle;
  supply: Supply;
  typing?: TypingAsked;
  /** What appliances cost by; each step that it bears on has it too. */
  appliance_policy: AppliancePolicy;
  /** What surges are worked out from. */
  surge?: LayoutDocument['surge'];
  /** Outlets that have a lay; an outlet that is not here is shut. */
  lay: Lay[];
  /** How the lay grows; then `lay` has it as the whole plan leaves it. */
  progressive?: Progressive;
  shuttle?: ShuttleDocument;
  /** Files that it was read from, the layout's own first. */
  files: string[];
}

export type Staging = (typeof STAGINGS)[number];
export type PumpName = 'a' | 'b';

export interface Engine {
  name: string;
  tank?: EngineDocument['tank'];
  pumps: { a: EnginePump; b?: EnginePump };
  plumbing: Plumbing;
  relief?: EngineDocument['relief'];
  /** In the order of the document; empty where the engine names none. */
  outlets: Outlet[];
  /** Undefined where the document says nothing of it, which is not the same as none. */
  hose_carried?: CarriedHose[];
  /** By id of the catalogue; one that is not named is not counted. */
  fittings_carried?: Record<string, number>;
  crew?: number;
  gross_weight_rating?: number;
  wheelbase?: number;
  axle_ratings?: EngineDocument['axle_ratings'];
  /** The single pump that the pair is weighed against. */
  one_larger_pump?: EngineDocument['one_larger_pump'];
  weights: Weight[];
}

export interface EnginePump extends Omit<EngineDocument['pumps']['a'], 'model'>, Modelled, Placed {
  model: Pump;
}

export interface Plumbing {
  intake: Step[];
  suction: Record<PumpName, Step[]>;
  discharge: Record<PumpName, Step[]>;
  transfer: Step[];
  manifold: Step[];
  cooling?: NonNullable<EngineDocument['plumbing']>['cooling'];
}

export interface Outlet extends Placed {
  name: string;
  /** Whose it is where the pumps work apart. */
  pump?: PumpName;
  steps: Step[];
}

export interface CarriedHose extends Modelled, Placed {
  hose: Hose;
  length: number;
}

export interface Weight {
  name: string;
  weight: number;
  behind_front_axle?: number;
  left_of_middle?: number;
}

/** Parts of governed speed, or the pressure to hold at the discharge. */
export type Throttle =
  | { by: 'speed'; a: number; b: number }
  | { by: 'discharge_pressure'; discharge_pressure: number };

export type Supply =
  | { kind: 'tank' }
  | { kind: 'draft'; lift: number; suction: Step[]; strainer?: Modelled & { appliance: Appliance } }
  | { kind: 'hydrant'; static: number; residual: number; flow: number }
  | { kind: 'relay'; pressure: number; relief?: number };

export interface TypingAsked extends Placed {
  /** Missing, with `class` and `table`, where the layout states its own requirement. */
  scheme?: string;
  class?: string;
  table?: Typing;
  requirement: TypingClass;
  /** To judge by where the table publishes no pressure. */
  pressure?: number;
}

export interface Lay {
  /** Name of the outlet; `outlet` where the engine names none. */
  outlet: string;
  steps: Step[];
}
