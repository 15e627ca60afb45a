import type { Statement } from '../../caution/caution.js';
import type { FitShape } from '../../statistics/head-curve-fit.js';

/** What bench readings come to. SI throughout; heads are given as the pressure that they are of the water pumped. */

/** A reading at rated speed. */
export interface CorrectedReading {
  /** Line of the file. */
  line: number;
  /** As it was read. */
  readFlow: number;
  readDischarge: number;
  readInlet: number;
  readSpeed: number;
  /** At rated speed. */
  flow: number;
  /** Total head that the pump added, at rated speed. */
  pressure: number;
  /** Over the fitted curve. */
  over: number;
  /** Left out, as the others do not bear it out. */
  odd: boolean;
}

/** A place on the fitted curve with its band. */
export interface BandPoint {
  flow: number;
  pressure: number;
  low: number;
  high: number;
}

export interface Repeatability {
  /** Two readings of one flow differ by less than this 95 times in 100. */
  limit: number;
  /** Flows that were read more than once. */
  flows: number;
}

export interface WearAnswer {
  /** What it is compared with. */
  name: string;
  /** Part of its head that the pump has lost; below 0 where it makes more. */
  wear: number;
  low: number;
  high: number;
  /** Whether the interval has no wear in it. */
  proven: boolean;
  /** Where along the curve the loss lies, as far as the readings prove it. */
  lies: 'evenly' | 'at_large_flows' | 'at_small_flows';
  /** Readings that it rests on. */
  readings: number;
  /** Its own curve over the flows of the readings. */
  curve: { flow: number; pressure: number }[];
}

/** What a pump's file gets of the readings. */
export interface CurveRow {
  points: { flow: number; pressure: number }[];
  shape: FitShape;
  /** Half the 90 % band as a part of the pressure, at its widest between the first and the last point. */
  uncertainty: number;
}

export interface CurveAnswer {
  question: 'curve';
  title: string;
  file: string;
  ratedSpeed: number;
  waterTemperature: number;
  readings: CorrectedReading[];
  copies: { line: number; of: number }[];
  shape: FitShape;
  shapeChosen: 'by_the_readings' | 'as_asked';
  /** Standard deviation of a reading about the curve, and its degrees of freedom. */
  scatter: number;
  freedom: number;
  /** What its gauge may be off by at every reading alike, where the file says so; it is in every band. */
  gaugeError?: number;
  confidence: number;
  curve: BandPoint[];
  shutoff: BandPoint & { basis: 'measured' | 'extrapolated' };
  repeatability?: Repeatability;
  odd?: { line: number; over: number; chance: number };
  wear?: WearAnswer;
  row: CurveRow;
  /** What to mind before the curve is used. */
  notes: Statement[];
  assumptions: Statement[];
}
