import type { StagingName } from '../../assembly/assembly.js';
import type { Statement } from '../../caution/caution.js';
import type { Instrument } from '../../readings/trial-columns.js';
import type { CauseKind } from './causes.js';

/** What a test day comes to. SI throughout. */

/** One figure of the sheet beside its prediction. */
export interface ReadingAnswer {
  line: number;
  staging: StagingName;
  /** Bore, m; undefined with the outlets shut. */
  orifice?: number;
  instrument: Instrument;
  read: number;
  /** Undefined where that state cannot be; `reason` says why. */
  predicted?: number;
  /** What it may differ by with nothing wrong, nine times in ten. */
  tolerance?: number;
  agrees?: boolean;
  /** Of the tee: what the plate passes at the reading. */
  through?: number;
  reason?: Statement;
}

export interface JudgedReading {
  line: number;
  /** `the test orifice`, or the point of the rating. */
  at: string;
  read: number;
  passes: number;
  margin: number;
  grade: string;
  verdict: 'meets' | 'falls_short';
  /** Whether the gauge may be off by as much as the margin. */
  withinGaugeError: boolean;
  gaugeError: number;
  source: string;
}

export interface CauseAnswer {
  kind: CauseKind;
  at: string;
  /** A part, or a pressure: what a gauge reads too high, or what an obstruction costs at `flow`. */
  size: { dimension: 'ratio' | 'pressure'; value: number; deviation: number };
  flow?: number;
}

export interface RankedAnswer {
  /** Empty: nothing is wrong. */
  causes: CauseAnswer[];
  chance: number;
  fits: number;
}

export interface TellingAnswer {
  staging: StagingName;
  orifice?: number;
  instrument: Instrument;
  withAnother: boolean;
  first: number;
  second: number;
}

export interface TrialAnswer {
  question: 'trial';
  title: string;
  engine: string;
  date?: string;
  requirement?: string;
  verdict: 'passes' | 'fails' | 'not_judged';
  judged: JudgedReading[];
  readings: ReadingAnswer[];
  agree: number;
  outcome: 'nothing_wrong' | 'found' | 'cannot_tell' | 'unexplained';
  /** How many of the first explanations the readings cannot tell apart. */
  alike: number;
  /** Chance of readings this far from the prediction with nothing wrong. */
  soundFits: number;
  ranked: RankedAnswer[];
  /** What to read to tell the first two apart; undefined where nothing needs telling, or nothing tells. */
  telling?: TellingAnswer;
  /** The prediction over flow in the layout's staging, for the picture: the outlet's gauge at orifices of growing bore. */
  band: { flow: number; pressure: number; low: number; high: number }[];
  notes: Statement[];
  assumptions: Statement[];
}
