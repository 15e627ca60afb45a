import type { StagingName } from '../assembly/assembly.js';
import type { Caution, Statement } from '../caution/caution.js';
import type { Impossibility } from '../limits/impossible.js';
import type { Measure } from '../quantity/dimension.js';
import type { AdvanceAnswer } from './advance-answer.js';
import type { ClockAnswer, TankClock } from './clock-answer.js';
import type { EngineFacts, HeatAnswer, LedgerAnswer, UnknownPower } from './engine-answer.js';
import type {
  CaseAnswer,
  HabitAnswer,
  PortableTankAnswer,
  ProfileAnswer,
  SupplyAnswer,
} from './field-answer.js';
import type { LineControl, PressureControl } from './pressure-control.js';
import type { ReachAnswer } from './reach-answer.js';
import type { Refusal } from './refusal.js';
import type { RequireAnswer } from './require-answer.js';
import type { StagingAdvice } from './staging-advice.js';
import type { SuctionAnswer } from './suction.js';

export type * from './advance-answer.js';
export type * from './clock-answer.js';
export type * from './field-answer.js';
export type * from './reach-answer.js';
export type * from './require-answer.js';
export type {
  Caution,
  LineControl,
  PressureControl,
  Refusal,
  StagingAdvice,
  StagingName,
  Statement,
  SuctionAnswer,
};

/**
 * What the studies answer. Everything is SI (gauge pascals, cubic metres a second, metres, kelvin); no text here
 * carries a unit: a sentence is a template whose {placeholders} a report fills in the reader's units.
 */

export type Verdict = 'meets' | 'falls_short';

export interface SiteConditions {
  elevation: number;
  airTemperature: number;
  waterTemperature: number;
  waterDensity: number;
  vapourPressure: number;
  atmosphericPressure: number;
}

export interface RatingPoint {
  /** `100 %` of a rated pump, `guarantee point 2`; empty where the typing has one point. */
  name: string;
  flow: number;
  pressure: number;
  /** Discharge less intake, rather than the gauge at the outlet. */
  net: boolean;
  /** Suction lift that the point is rated at, in metres. */
  lift?: number;
}

export interface Requirement {
  scheme: string;
  class: string;
  title: string;
  /** The governing point: the one with the least margin. */
  flow: number;
  pressure: number;
  points: RatingPoint[];
  source: string;
  edition?: string;
}

export interface PressureMargin {
  pressure: number;
  margin: number;
}

export interface FlowMargin {
  flow: number;
  margin: number;
}

export interface PumpShare {
  pump: string;
  /** Given to the discharge, its own cooling line left out. */
  flow: number;
  /** Back to the tank by its own cooling line; undefined where it has none. */
  cooling?: number;
  share: number;
}

export interface StagingAnswer {
  staging: StagingName;
  verdict: Verdict;
  /** Undefined where the pumps cannot pass the required flow at all on their curves. */
  atRequiredFlow?: PressureMargin;
  /** Undefined where the pumps cannot reach the required pressure even at no flow. */
  atRequiredPressure?: FlowMargin;
  /** Gauge pressure at the outlet with nothing flowing. */
  shutoff?: number;
  /** Whether the required flow lies on the pumps' curves. */
  reachable: boolean;
  /** Why no figure at the required flow is told, though it lies on the curves. */
  refusal?: Refusal;
  /** Why not, or what limits it: `pump a runs off its curve at {flow}`. */
  limit?: Statement;
  /** Who moves how much at the required flow. */
  shares: PumpShare[];
  /** At the test orifice, over what is asked there, where it was read. */
  readingMargin?: number;
}

export interface TestOrifice {
  bore: number;
  dischargeCoefficient: number;
  /** Undefined behind a refusal, as are flow, margin and grade. */
  reading?: number;
  flow?: number;
  margin?: number;
  /** Pressure from which the grade starts, best first; the last is the pass mark. */
  grades: { grade: string; from: number }[];
  /** `excellent`, `good`, `acceptable`, `below`, or `pass`/`below` where the agency names no grades. */
  grade?: string;
  /** Why no reading can be told. */
  refusal?: Refusal;
  source: string;
}

export interface InventoryItem {
  item: string;
  required?: Measure;
  carried?: Measure;
  /** A maximum (gross weight) rather than a minimum. */
  atMost: boolean;
  /** Of a minimum: it has to be passed, not only reached. */
  over?: boolean;
  verdict: Verdict | 'not_stated' | 'not_checked';
  /** Parts of what is carried that nothing tells: it is more than that. Such a sum is never judged as met. */
  leftOut?: string[];
  note?: Statement;
  source: string;
}

export interface Loss {
  where: string;
  /** `hose`, `pipe`, `fitting`, `valve`, `check valve`, `appliance`, `elevation`. */
  kind: string;
  flow: number;
  loss: number;
}

export interface GaugePoint {
  name: string;
  pressure: number;
  /** Static, as a gauge reads; total where no bore is known, which is more by the velocity head. */
  reads: 'static' | 'total';
  elevation: number;
  /** Past it, m3/s; undefined where no one flow runs there. */
  flow?: number;
}

export interface SolverReport {
  iterations: number;
  /** Worst imbalance of a node. */
  flowResidual: number;
  /** Worst energy residual of a link, as pressure. */
  energyResidual: number;
}

/** What a verdict may be asked again over. */
export type SweptQuantity = 'elevation' | 'air_temperature' | 'water_temperature' | 'wear' | 'tank_level';

export interface Sweep {
  of: SweptQuantity;
  values: number[];
  /** What is held besides, in place of what the layout has. */
  given?: GivenQuantity[];
}

export interface GivenQuantity {
  of: SweptQuantity;
  value: number;
}

/** The pumps' verdict in the layout's staging, under one condition of a sweep or one assumption of power. */
export interface VerdictUnder {
  verdict: Verdict;
  /** At the required flow; undefined where it lies past the pumps' curves. */
  pressure?: number;
  margin?: number;
  /** At the agency's test orifice, where the typing names one. */
  reading?: number;
  readingMargin?: number;
  pumps: { name: string; limitedBy: PumpAnswer['limitedBy'] }[];
  /** Why no figure is told, at the required flow or at the test orifice. */
  refusal?: Refusal;
}

export interface AcrossAnswer {
  of: SweptQuantity;
  /** What is held besides, in place of what the layout has. */
  given: GivenQuantity[];
  rows: (VerdictUnder & { value: number })[];
}

/** `nowhere`: not even at sea level. `everywhere`: as high as is looked, `upTo`. */
interface Height {
  stands: 'nowhere' | 'up_to' | 'everywhere';
  upTo?: number;
}

export interface HighestPlace extends Height {
  /** Where a file gives no power: the bracket, whose least is the answer. */
  cases?: (Height & { engine: UnknownPower })[];
}

/** What the verdict becomes where a file has no power data: its engine at its limit when its curve was measured. */
export interface PowerBracket {
  /** `ratio`: power here over power where the curve was measured. */
  pumps: { name: string; ratio: number; aspiration: 'natural' | 'turbocharged' }[];
  cases: (VerdictUnder & { lugging: 'constant_power' | 'flat_torque' })[];
}

/** Water that a line takes back to the tank, m3/s. */
export interface TankReturn {
  name: string;
  flow: number;
}

/** What a check finds of the engine as it runs, which its cautions are drawn from too. */
export interface RunningFacts {
  /** As they run at the required flow in the layout's staging. */
  pumps: PumpAnswer[];
  /** What of it runs back to the tank by open relief valves and shared cooling lines. */
  returns: TankReturn[];
  highestPlace?: HighestPlace;
  powerBracket?: PowerBracket;
  suction?: SuctionAnswer;
  pressureControl?: PressureControl;
  stagingAdvice?: StagingAdvice;
}

export interface CheckAnswer extends RunningFacts, EngineFacts {
  question: 'check';
  /** What is told beside a verdict and is not here, because it has no steady state. */
  leftOut: string[];
  title: string;
  engine: string;
  site: SiteConditions;
  verdict: Verdict;
  /** The pumps' part of the verdict, apart from the inventory. */
  pumpVerdict: Verdict;
  requirement: Requirement;
  staging: StagingName;
  /** Where the verdict is read: `outlet left`, `gauge tee of the test orifice`. */
  judgedAt: string;
  atRequiredFlow?: PressureMargin;
  atRequiredPressure?: FlowMargin;
  /** Why no figure at the required flow is told, though it lies on the curves. */
  refusal?: Refusal;
  /** The flow drawn in what is shown of the pumps, losses and gauges, m3/s: what is required, or the most that can be drawn. */
  toldAt?: number;
  testOrifice?: TestOrifice;
  stagings: StagingAnswer[];
  inventory: InventoryItem[];
  /** Largest first, at the required flow in the layout's staging. */
  losses: Loss[];
  points: GaugePoint[];
  /** What was asked for beside the layout's own conditions. */
  across: AcrossAnswer[];
  /** The limits that are tightest, or all of them. */
  ledger: LedgerAnswer;
  /** Most dangerous first. */
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}

export interface LineAnswer {
  name: string;
  kind: string;
  flow: number;
  velocity?: number;
  loss: number;
  inletPressure: number;
  outletPressure: number;
}

export interface NozzleAnswer {
  name: string;
  kind: string;
  state: 'open' | 'shut';
  flow: number;
  pressure: number;
  /** Total, as a pitot gauge reads the jet; before a sharp orifice with a tee the static pressure that the gauge there reads. */
  reads: 'total' | 'static_in_tee';
  reaction?: number;
  reach?: number;
  /** Undefined where no working range is known. */
  inRange?: boolean;
  range?: { from?: number; to?: number; source: string };
}

export interface PumpAnswer {
  name: string;
  model: string;
  /** Shut out by the header, or with every way out shut. */
  state: 'running' | 'shut_out' | 'dead_headed' | 'stopped';
  /** Through it. */
  flow: number;
  /** To its discharge, its own cooling line left out. */
  delivered: number;
  /** Back to the tank by its own cooling line; undefined where it has none. */
  cooling?: number;
  /** What it adds, as pressure, Pa. */
  headRise: number;
  inletPressure: number;
  dischargePressure: number;
  /** rpm; undefined where the file does not give its rated speed. */
  speed?: number;
  /** Part of rated speed. */
  ofRatedSpeed: number;
  /** What keeps it from turning faster; not known where its file has not both engine power and efficiency. */
  limitedBy: 'governor' | 'power' | 'not_known';
  power?: number;
  /** What its engine has left at this site and speed. */
  powerAvailable?: number;
  powerRated?: number;
  npshAvailable: number;
  npshRequired?: number;
  /** Of what the engine's pumps give to the discharge. */
  share: number;
  offCurve: boolean;
}

export interface FlowAnswer {
  question: 'flow';
  title: string;
  engine: string;
  site: SiteConditions;
  staging: StagingName;
  /** Why the state asked about cannot be; empty where it stands. No figure of one that cannot be holds. */
  impossible: Impossibility[];
  /** Kinds of hose on the ground of which no limit is known. */
  hoseWithoutLimit: string[];
  points: GaugePoint[];
  lines: LineAnswer[];
  nozzles: NozzleAnswer[];
  pumps: PumpAnswer[];
  /** What of it runs back to the tank by open relief valves and shared cooling lines. */
  returns: TankReturn[];
  totalFlow: number;
  /** How long the tank lasts; undefined where the engine does not live on it. */
  tank?: TankClock;
  /** Of the engine's own pumps. */
  heat: HeatAnswer[];
  supply: SupplyAnswer;
  portableTanks: PortableTankAnswer[];
  profiles: ProfileAnswer[];
  /** What happens when a line is shut. */
  lineControl: LineControl;
  /** Only where the habit of taking all flow to the far end would have misled. */
  habits: HabitAnswer[];
  /** What is always run beside the question; a report shows those that break a limit, or all if asked. */
  cases: CaseAnswer[];
  cautions: Caution[];
  assumptions: Statement[];
  solver: SolverReport;
}

export type Answer = CheckAnswer | FlowAnswer | RequireAnswer | ReachAnswer | AdvanceAnswer | ClockAnswer;
