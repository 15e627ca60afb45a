import type { StagingName } from '../assembly/assembly.js';
import type { Statement } from '../caution/caution.js';
import type { Measure } from '../quantity/dimension.js';
import type { Refusal } from './refusal.js';

/** What a check says of the engine beyond its rating: heat, one pump out, life, weight, and every limit. */

type Verdict = 'meets' | 'falls_short';

/** What an engine whose file gives no power may have had when its curve was measured. */
export type UnknownPower = 'power_to_spare' | 'constant_power' | 'flat_torque';

/** Where a pump's cooling line leaves, as far as it can help a pump that is shut out. */
export type CoolingPlace = 'own' | 'behind_check' | 'shared' | 'shut' | 'none';

export interface HeatAnswer {
  name: string;
  /** At the question's operating point. */
  flow: number;
  /** How warm water leaves it there, K; undefined where its power is not known. */
  leaving?: number;
  /** Where the powers come from: the pump's efficiency, the rating of its engine as a bound, or nowhere. */
  basis: 'efficiency' | 'engine_rating' | 'not_known';
  /** At no flow, W. */
  powerAtShutoff?: number;
  /** Keeps water from warming by more than 15 degF on its way through. */
  leastFlow?: number;
  /** By the rough rule of 300 gpm for each 100 hp at shutoff. */
  roughLeastFlow?: number;
  /** What the pump moves with every outlet shut: its cooling line, a relief valve. */
  shutFlow: number;
  /** How warm that water leaves; undefined where nothing flows or the power is not known. */
  shutLeaving?: number;
  cooling: CoolingPlace;
  /** Whether it cools the pump too when the other holds its check valve shut. */
  coolsShutOut: boolean;
  /** Water in the casing, m3. */
  trapped?: number;
  /** From no flow until the trapped water is at 140 degF and until it boils in the open, at the soonest, s. */
  untilScald?: number;
  untilBoiling?: number;
}

/** A type that the engine still makes with one pump. */
export interface TypeMet {
  class: string;
  title: string;
  flow: number;
  pressure: number;
  margin: number;
  /** Of what else the type asks: tank, hose, crew, weight. */
  inventory: Verdict | 'not_stated';
  /** Lines of the inventory that fall short of it. */
  missing: string[];
}

/** A pump that stands still with its valves open, while the other runs. */
export interface StandingPump {
  staging: StagingName;
  check: 'works' | 'stuck_open';
  /** Whether the other one reaches the required pressure at all. */
  reaches: boolean;
  /** What it still gives there; undefined where it does not reach it, or behind a refusal. */
  flow?: number;
  /** Of the other one at no flow drawn; undefined where that state cannot be. */
  shutoff?: number;
  /** What runs back through the pump that stands, with the outlets shut and at the required pressure. */
  backflowShut?: number;
  backflow?: number;
  /** Why nothing is told at the required pressure, and with the outlets shut. */
  refusal?: Refusal;
  refusedShut?: Refusal;
}

export interface PumpOutAnswer {
  /** The pump that is out. */
  out: string;
  /** What is left. */
  staging: StagingName;
  verdict: Verdict;
  /** Of the typing's table, most demanding first. */
  types: TypeMet[];
  /** With its valves open, in each staging of two pumps, its check valve at work and stuck. */
  standing: StandingPump[];
}

export interface ServiceDue {
  service: string;
  /** Running hours at which it falls due, s. */
  at?: number;
  /** Until then; below 0 where it is overdue. */
  left?: number;
  /** Day on which it falls due. */
  on?: string;
}

export interface LifeAnswer {
  pumps: {
    name: string;
    hours?: number;
    wear: number;
    services: ServiceDue[];
    /** Wear of this pump alone at which the verdict falls short; undefined where no wear that is looked at does. */
    bears?: number;
  }[];
  /** The pump with fewer hours, and how many fewer. */
  lead?: { name: string; behind: number };
  /** Margin at the required flow with both pumps unworn, and what wear has cost of it. */
  unworn?: { margin: number; cost?: number };
  /** Wear of both alike at which the verdict falls short. */
  bothBear?: number;
  /** The verdict falls short as the pumps are. */
  short: boolean;
  /** Spare parts that fit both; undefined where the pumps are of one model and name none. */
  sameModel: boolean;
  partsInCommon?: string[];
}

export interface AxleCase {
  /** Part of the tank that is full. */
  tank: number;
  crew: boolean;
  gross: number;
  front?: number;
  rear?: number;
  /** What of it has a place, taking the rest as between the axles: the axles carry no less, kg. */
  frontAtLeast?: number;
  rearAtLeast?: number;
  /** Of the centre of gravity. */
  leftOfMiddle?: number;
}

export interface AxlesAnswer {
  cases: AxleCase[];
  ratings: { gross?: number; front?: number; rear?: number };
  /** Weights whose place is not stated, so that no axle load can be told but as a least. */
  unplaced: string[];
  /** What is aboard and has no weight: the loads leave it out. */
  leftOut: string[];
  wheelbaseStated: boolean;
  /** How people, pumps, hose and equipment are counted. */
  rules: Statement[];
}

/** The pair against one larger pump, where the file has figures for both. */
export interface PairCostAnswer {
  against: string;
  rows: { of: 'weight' | 'fuel' | 'price'; pair: number; single: number }[];
}

export interface LedgerLine {
  /** Of the caution that speaks where the limit is passed. */
  code: string;
  /** `casing`, `inlet and seal`, `hose`, `gauge`. */
  limit: string;
  at: string;
  allowed: Measure;
  /** A least rather than a most. */
  atLeast: boolean;
  /** At the question's operating point; undefined where the part has no load there. */
  operating?: number;
  worst: number;
  worstWhen: string;
  /** What the worst case leaves, as a part of the limit; below 0 past it. */
  margin: number;
  /** Parts of the load that nothing tells: it is more than that, and the margin less. */
  leftOut?: string[];
  /** Weights without a place: the load is a least, and the margin a most. */
  unplaced?: string[];
  source: string;
}

export interface LedgerAnswer {
  /** Tightest first. */
  lines: LedgerLine[];
  /** How many there are in all. */
  of: number;
  /** Hose of which nothing says what it bears. */
  notKnown: string[];
}

/** What a check says of the engine besides its rating. */
export interface EngineFacts {
  /** The pumps' verdict on the hottest day that a test is made on, where it is hotter than the layout's. */
  hotDay?: {
    airTemperature: number;
    verdict: Verdict;
    /** Where a file gives no power: the bracket, whose least is the verdict. */
    cases?: { engine: UnknownPower; verdict: Verdict }[];
  };
  heat: HeatAnswer[];
  pumpsOut: PumpOutAnswer[];
  /** Undefined where it was not worked out. */
  life?: LifeAnswer;
  axles?: AxlesAnswer;
  pairCost?: PairCostAnswer;
}
