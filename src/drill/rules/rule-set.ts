/** Sizes of hose that rules may speak of, by nominal inches. */
export const HOSE_SIZES = ['1', '1.5', '1.75', '2', '2.5', '3', '3.5', '4', '5'] as const;
export type HoseSize = (typeof HOSE_SIZES)[number];

interface Sourced {
  readonly source: string;
}

interface FlowSpan {
  /** Flows that the rule is used at; any, where they are missing. */
  readonly from_flow?: number;
  readonly to_flow?: number;
}

/** How friction in hose is worked, each with what it knows of a hose. */
export type FrictionRule =
  | {
      readonly method: 'coefficient';
      readonly hoses: Hoses<{ readonly coefficient: number }>;
    }
  | { readonly method: 'condensed_q'; readonly hoses: Hoses<{ readonly divisor: number }> }
  | { readonly method: 'drop_ten'; readonly hoses: Hoses<object> }
  | { readonly method: 'tenths'; readonly hoses: Hoses<{ readonly factor: number }> }
  | { readonly method: 'old_square'; readonly hoses: Hoses<{ readonly share: number }> }
  | {
      readonly method: 'table';
      readonly hoses: Hoses<{ readonly table: readonly (readonly [flow: number, loss: number])[] }>;
    };

type Hoses<T> = Readonly<Partial<Record<HoseSize, T & Sourced & FlowSpan>>>;

export type ApplianceRule = Sourced &
  (
    | { readonly policy: 'none' }
    | { readonly policy: 'each'; readonly each: number }
    | {
        readonly policy: 'by_flow';
        readonly from_flow: number;
        readonly below: number;
        readonly each: number;
        readonly master: number;
      }
  );

/** The figures of a rule set in one system of units: psi, gpm, ft and in, or kPa, L/min, m and mm. */
export interface UnitRules {
  readonly friction: FrictionRule;
  /** Pressure by height. */
  readonly elevation: Sourced & { readonly rate: number };
  /** Loss of each storey above the first; 0 where heights are given instead. */
  readonly storey: Sourced & { readonly loss: number };
  readonly appliance: ApplianceRule;
  readonly nozzle: Sourced & {
    readonly smooth_hand: number;
    readonly smooth_master: number;
    readonly fog: number;
  };
  /** Flow = constant x bore^2 x root of nozzle pressure. */
  readonly smooth_bore: Sourced & { readonly constant: number };
  /** Reaction = smooth x bore^2 x NP, or fog x flow x root of NP. */
  readonly reaction: Sourced & { readonly smooth: number; readonly fog: number };
  readonly draft: Sourced & {
    /** Height of water that a unit of pressure holds up: ft a psi, m a kPa. */
    readonly feet_per_psi: number;
    /** Height of water that a unit of vacuum holds up: ft an inHg, m a mmHg. */
    readonly length_per_vacuum: number;
    readonly atmosphere: number;
    /** Lost with each 1000 ft, or 1000 m, of elevation. */
    readonly atmosphere_loss_per_1000: number;
    readonly lift_loss_per_1000: number;
    /** Part of the theoretical lift that a sound pump attains. */
    readonly attainable: number;
  };
  readonly relay: Sourced & { readonly residual: number };
  /** Mass of a gallon or litre, and how many fill a cubic foot or metre. */
  readonly water: Sourced & { readonly mass: number; readonly per_cubic: number };
  /** Part of the tank that is kept back. */
  readonly tank: Sourced & { readonly reserve: number };
  /** Tender shuttle: usable part of the tank, minutes a leg takes: fixed + per_distance x mi or km. */
  readonly shuttle: Sourced & {
    readonly usable: number;
    readonly fixed: number;
    readonly per_distance: number;
  };
  /** A pump pressure is rounded to the nearest multiple of this; 0 leaves it. */
  readonly rounding: Sourced & { readonly pump_pressure: number };
  /** What is marked right: within `pressure`, or within `relative` of the answer, whichever is wider. */
  readonly tolerance: Sourced & { readonly pressure: number; readonly relative: number };
}

/** The rules that a class works by; never mixed within a sheet. */
export interface RuleSet {
  readonly name: string;
  readonly title: string;
  readonly source: string;
  /** Missing where the rules are not stated in those units. */
  readonly us?: UnitRules;
  readonly si?: UnitRules;
}

/** Names of the rule sets that ship, the usual ones first. */
export const RULE_SETS = [
  'wildland',
  'structural',
  'engineering',
  'condensed-q',
  'drop-ten',
  'tenths',
  'finger',
  'old-square',
] as const;
