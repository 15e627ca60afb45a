import type { OperatingPoint } from '../assembly/operating-point.js';
import { cavitating, suctionSlack } from '../assembly/suction-head.js';
import type { TypingAsked } from '../layout/layout.js';
import type { RatingPoint, VerdictUnder } from './answer.js';
import { type Delivery, deliveries } from './delivery.js';
import { limitOf } from './pump-answer.js';
import { ratingPoints } from './requirement.js';
import type { Rig } from './rig.js';
import { TOLD_APART } from './staging.js';
import { readTestOrifice } from './test-orifice.js';

interface PointHere {
  point: RatingPoint;
  delivery: Delivery;
  state: OperatingPoint;
  reachable: boolean;
  pressure: number;
  /** Margin as a part of what is asked, far below every other where the point lies past a curve. */
  score: number;
}

/**
 * The pumps' verdict in the layout's staging at the required flow, for what is asked again and again, place by place.
 * Judges as `judgeStaging` does, and looks no further than the verdict.
 */
export function verdictHere(rig: Rig, typing: TypingAsked): VerdictUnder {
  return judgeHere(rig, typing).here;
}

/** The same, with the state at the required flow that it was read in. */
export function judgeHere(rig: Rig, typing: TypingAsked): { here: VerdictUnder; state: OperatingPoint } {
  const { staging } = rig.layout;
  const points = ratingPoints(typing);
  const ends = deliveries(rig, staging).map((delivery) =>
    points.map((point) => pointHere(delivery, point)).reduce(worse),
  );
  const worst = ends.reduce((kept, end) => (end.score > kept.score ? end : kept));
  const { point, state, reachable, pressure, delivery } = worst;
  const margin = pressure - point.pressure;
  const starved = cavitating(state).map(({ name }) => name);
  const { test_orifice } = typing.requirement;
  const reading = test_orifice && readTestOrifice(delivery, test_orifice).answer;
  const meets =
    reachable && margin >= -TOLD_APART && starved.length === 0 && !(reading && reading.margin < -TOLD_APART);
  const here: VerdictUnder = {
    verdict: meets ? 'meets' : 'falls_short',
    pressure: reachable ? pressure : undefined,
    margin: reachable ? margin : undefined,
    reading: reading?.reading,
    readingMargin: reading?.margin,
    pumps: state.assembly.pumps
      .filter((pump) => !pump.booster)
      .map((pump) => ({ name: pump.name, limitedBy: limitOf(state, pump) })),
    cavitating: starved,
    suctionSlack: suctionSlack(state),
  };
  return { here, state };
}

function worse(one: PointHere, other: PointHere): PointHere {
  return other.score < one.score ? other : one;
}

function pointHere(delivery: Delivery, point: RatingPoint): PointHere {
  const state = drawnFrom(delivery, point);
  const reachable = delivery.offCurve(state) === undefined;
  const pressure = delivery.pressure(state, point.flow, point.net);
  const starved = cavitating(state).length > 0;
  const score = (pressure - point.pressure) / point.pressure - (reachable ? (starved ? 500 : 0) : 1e3);
  return { point, delivery, state, reachable, pressure, score };
}

function drawnFrom(delivery: Delivery, { lift, flow }: RatingPoint): OperatingPoint {
  delivery.drawFrom(lift);
  try {
    return delivery.at(flow);
  } finally {
    delivery.drawFrom(undefined);
  }
}

/** The least of the margins that the verdict stands on, each as a part of what is asked; below 0 where it does not stand. */
export function slackOf({
  verdict,
  margin,
  pressure,
  reading,
  readingMargin,
  suctionSlack,
}: VerdictUnder): number {
  if (pressure === undefined || margin === undefined) return -1;
  const least = Math.min(
    margin / (pressure - margin),
    reading === undefined || readingMargin === undefined ? 1 : readingMargin / (reading - readingMargin),
    suctionSlack,
  );
  return verdict === 'meets' ? Math.max(least, 0) : Math.min(least, -Number.EPSILON);
}
