import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { TypingAsked } from '../layout/layout.js';
import { boilingPressure } from '../limits/impossible.js';
import { suctionSlack } from '../limits/suction-need.js';
import type { RatingPoint, Verdict, VerdictUnder } from './answer.js';
import { type Delivery, deliveries } from './delivery.js';
import { NoSteadyAnswer } from './no-steady-answer.js';
import { limitOf } from './pump-answer.js';
import { endOfCurve, type Refusal, refusalOf } from './refusal.js';
import { ratingPoints } from './requirement.js';
import type { Rig } from './rig.js';
import { type OrificeReading, readTestOrifice } from './test-orifice.js';

/** One rating point at one end in one staging. */
export interface PointRuled {
  point: RatingPoint;
  delivery: Delivery;
  /** Solved at the required flow, whether it can be or not; undefined where that lies far past the curves. */
  state?: OperatingPoint;
  /** Whether the required flow lies on the pumps' curves. */
  reachable: boolean;
  /** Why no figure of the state is told. */
  refusal?: Refusal;
  /** At the required flow, Pa, and over what is asked; undefined behind the gate. */
  pressure?: number;
  margin?: number;
  meets: boolean;
}

/** What one end of a staging comes to at all that a typing asks of pumps. */
export interface Ruling {
  verdict: Verdict;
  delivery: Delivery;
  points: PointRuled[];
  /** The point that decides. */
  worst: PointRuled;
  /** What the inspector reads, where the typing names an orifice and it was asked for. */
  reading?: OrificeReading;
}

/** A margin that the solver can tell from none, Pa: what its own tolerance of head leaves. */
const TOLD_APART = 0.02;

/** Whether a pressure makes what is asked by its margin over it, Pa: predicted, or read on the day. */
export const makesIt = (margin: number): boolean => margin >= -TOLD_APART;

/** Far below every margin, by what is graver: a flow past the curves, then a state that cannot be. */
const PAST_CURVES = -1e3;
const REFUSED = -500;

/**
 * The pumps' verdict in a staging, and the one place where it is made: at every rating point and at the test orifice of the
 * best end, each in a state that the gate lets pass. An end is judged by its worst point and the staging by its best end, as
 * the agency's orifice hangs on one outlet at a time, and on none that a reel or a long pipe starves.
 *
 * `reading` says whether the orifice is read where the verdict has fallen already.
 */
export function ruleOn(
  rig: Rig,
  typing: TypingAsked,
  staging: StagingName,
  reading: 'always' | 'if_it_decides' = 'always',
): Ruling {
  const points = ratingPoints(typing);
  const { test_orifice } = typing.requirement;
  const ends = deliveries(rig, staging).map((delivery) => {
    const ruled = points.map((point) => rulePoint(delivery, point));
    return { delivery, points: ruled, worst: least(ruled) };
  });
  const read = (end: (typeof ends)[number]): Ruling => {
    const found = test_orifice && readTestOrifice(end.delivery, test_orifice);
    return { ...end, reading: found, verdict: end.worst.meets && passes(found) ? 'meets' : 'falls_short' };
  };
  const best = ends.reduce((kept, end) => (betterThan(end.worst, kept.worst) ? end : kept));
  if (!best.worst.meets && reading === 'if_it_decides') return { ...best, verdict: 'falls_short' };
  const first = read(best);
  if (first.verdict === 'meets') return first;
  for (const end of ends) {
    if (end === best || !end.worst.meets) continue;
    const other = read(end);
    if (other.verdict === 'meets') return other;
  }
  return first;
}

function passes(reading: OrificeReading | undefined): boolean {
  return reading === undefined || (reading.margin !== undefined && makesIt(reading.margin));
}

function rulePoint(delivery: Delivery, point: RatingPoint): PointRuled {
  return delivery.drawing(point.lift, () => {
    // Far past the curves nothing is known, and no balance need be there.
    if (point.flow > mostOnCurves(delivery))
      return { point, delivery, reachable: false, meets: false, refusal: endOfCurve(delivery.endOfCurves()) };
    const state = delivery.at(point.flow);
    const refusal = refusalOf(state);
    const reachable = delivery.offCurve(state) === undefined;
    if (refusal) return { point, delivery, state, reachable, refusal, meets: false };
    if (delivery.pressure(state, point.flow, false) <= boilingPressure(state))
      return { point, delivery, state, reachable, refusal: partsAtEnd(delivery, state), meets: false };
    const pressure = delivery.pressure(state, point.flow, point.net);
    const margin = pressure - point.pressure;
    return { point, delivery, state, reachable, pressure, margin, meets: makesIt(margin) };
  });
}

/** The end itself, whose gauge stands in a bore of its own, below what water bears. */
function partsAtEnd(delivery: Delivery, state: OperatingPoint): Refusal {
  return {
    code: 'water_parts',
    template: '{at} would have to stand below {limit}, where water boils',
    values: { at: delivery.end.name, limit: { value: boilingPressure(state), dimension: 'pressure' } },
    source: 'vapor pressure of water and standard atmosphere',
  };
}

/** More than this no pump of a delivery passes on its curve, m3/s. */
function mostOnCurves({ assembly }: Delivery): number {
  return assembly.pumps.reduce((sum, { curve, speed }) => sum + curve.lastFlow * speed, 0);
}

/** Ends that come off alike but for the rounding of a search are one: the first of them is told, however it is asked. */
const ALIKE = 1e-4;

const betterThan = (one: PointRuled, other: PointRuled): boolean => scoreOf(one) > scoreOf(other) + ALIKE;

function least(ruled: readonly PointRuled[]): PointRuled {
  return ruled.length === 1 ? ruled[0] : ruled.reduce((kept, one) => (betterThan(kept, one) ? one : kept));
}

/** How a point comes off beside another: its margin as a part of what is asked; a state that cannot be below all others. */
function scoreOf({ point, delivery, reachable, refusal, margin }: PointRuled): number {
  if (margin !== undefined) return margin / point.pressure;
  if (refusal && reachable) return REFUSED;
  const end = delivery.drawing(point.lift, () => delivery.endOfCurves());
  return PAST_CURVES + end.flow / point.flow;
}

/** The verdict in the layout's staging, as it is told of one condition among others. */
export function verdictHere(rig: Rig, typing: TypingAsked): VerdictUnder {
  return verdictUnder(ruleOn(rig, typing, rig.layout.staging));
}

/** A ruling as it is told of one condition among others. */
export function verdictUnder({ verdict, worst, reading }: Ruling): VerdictUnder {
  const { state, pressure, margin } = worst;
  const refusal = worst.refusal ?? reading?.refusal;
  return {
    verdict,
    pressure,
    margin,
    reading: reading?.reading,
    readingMargin: reading?.margin,
    pumps:
      state?.assembly.pumps
        .filter((pump) => !pump.booster)
        .map((pump) => ({ name: pump.name, limitedBy: limitOf(state, pump) })) ?? [],
    refusal,
  };
}

/**
 * The least of the margins that a rig's verdict stands on, each as a part of what is asked; below 0 where it does not stand. A
 * pump so weak that the draw sucks its own plumbing dry has no steady answer, and falls short.
 */
export function slackHere(rig: Rig, typing: TypingAsked): number {
  try {
    return slackOf(ruleOn(rig, typing, rig.layout.staging, 'if_it_decides'));
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return -1;
    throw error;
  }
}

export function slackOf({ verdict, worst, reading }: Ruling): number {
  const { state, reachable, margin, point } = worst;
  if (!reachable || state === undefined) return -1;
  const slacks = [
    suctionSlack(state),
    ...(margin === undefined ? [] : [margin / point.pressure]),
    ...(reading?.reading === undefined || reading.margin === undefined
      ? []
      : [reading.margin / (reading.reading - reading.margin)]),
  ];
  const slack = Math.min(...slacks);
  return verdict === 'meets' ? Math.max(slack, 0) : Math.min(slack, -Number.EPSILON);
}
