import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import type { TypingAsked } from '../layout/layout.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
import { suctionSlack } from '../limits/suction-head.js';
import type { FlowMargin, RatingPoint, Verdict } from './answer.js';
import { type Delivery, type Drawn, deliveries } from './delivery.js';
import { NoSteadyAnswer } from './no-steady-answer.js';
import { ratingPoints } from './requirement.js';
import type { Rig } from './rig.js';
import { type OrificeReading, readTestOrifice } from './test-orifice.js';

/** A margin that the solver can tell from none, Pa: what its own tolerance of head leaves. */
export const TOLD_APART = 0.02;
/** Far below every slack of a state that can be. */
const IMPOSSIBLE = -1e3;
/** Less than this is no flow that anybody asks for, m3/s (0.16 gpm). */
const TRICKLE = 10 * STANDSTILL;
/** A flow is found to this part of itself where the gate ends it. */
const FLOW_FOUND = 1e-4;

/** One rating point judged at one end in one staging. */
export class PointJudged {
  readonly point: RatingPoint;
  readonly delivery: Delivery;
  /** The required flow with its state, which may be one that cannot be. */
  readonly drawn: Drawn;
  /** Why the required flow cannot be had; undefined where it can. */
  readonly impossible: Impossibility | undefined;
  /** Pressure at the required flow less what is asked, Pa; of no meaning where the state cannot be. */
  readonly pressure: number;
  readonly margin: number;
  private most: Most | undefined;

  constructor(delivery: Delivery, point: RatingPoint) {
    this.point = point;
    this.delivery = delivery;
    this.drawn = atLift(delivery, point, () => delivery.drawn(point.flow));
    const { state } = this.drawn;
    this.impossible = whyImpossible(state);
    this.pressure = delivery.pressure(state, point.flow, point.net);
    this.margin = this.pressure - point.pressure;
  }

  get verdict(): Verdict {
    return this.impossible === undefined && this.margin >= -TOLD_APART ? 'meets' : 'falls_short';
  }

  /** The state at the required flow; undefined where it cannot be. */
  get state(): OperatingPoint | undefined {
    return this.impossible ? undefined : this.drawn.state;
  }

  /** The least of the margins that the point stands on, each as a part of what is asked. */
  get slack(): number {
    const { state } = this.drawn;
    if (this.impossible?.code === 'suction_short') return Math.min(-Number.EPSILON, suctionSlack(state));
    if (this.impossible) return -1;
    return Math.min(this.margin / this.point.pressure, suctionSlack(state));
  }

  /**
   * The most flow at which the end still has the pressure that is asked, in a state that can be; undefined where there is
   * none. It takes a search, and is made when it is first asked for.
   */
  get atRequiredPressure(): FlowMargin | undefined {
    const { flow } = this.mostFlow();
    return flow === undefined ? undefined : { flow, margin: flow - this.point.flow };
  }

  /** Why no more can be had at the pressure that is asked, where it is not the pressure that ends it. */
  get endedBy(): Impossibility | undefined {
    return this.mostFlow().endedBy;
  }

  private mostFlow(): Most {
    this.most ??= atLift(this.delivery, this.point, () => this.findMost());
    return this.most;
  }

  private findMost(): Most {
    const { delivery, point, drawn, impossible } = this;
    const near = impossible?.code === 'past_curve' ? delivery.endOfCurves().flow : drawn;
    const found = delivery.flowAt(point.pressure, near, point.net);
    if (found === undefined) return {};
    const endedBy = whyImpossible(found.state);
    if (endedBy === undefined) return { flow: found.flow };
    const from = impossible === undefined && point.flow < found.flow ? point.flow : 0;
    const most = largestPossible(delivery, found.flow, from)?.flow ?? 0;
    // A trickle that nobody would call flowing is none.
    return { flow: most > TRICKLE ? most : undefined, endedBy };
  }

  /** The required flow where it can be had, else the most up to it that can; undefined where even none can be drawn. */
  nearest(): Drawn | undefined {
    const { impossible, delivery, point, drawn } = this;
    if (impossible === undefined) return drawn;
    return atLift(delivery, point, () => largestPossible(delivery, point.flow, 0));
  }
}

/**
 * The largest flow up to one that cannot be had at which the state can be; undefined where none can be drawn in a state that
 * can. `from` is a flow that is known to be possible, or 0.
 */
export function largestPossible(delivery: Delivery, refused: number, from: number): Drawn | undefined {
  const can = ({ state }: Drawn) => whyImpossible(state) === undefined;
  let high = refused;
  let low = from > 0 ? delivery.drawn(from) : { flow: 0, state: delivery.atRest() };
  if (!can(low)) return undefined;
  const end = delivery.endOfCurves().flow;
  if (end > low.flow && end < high) {
    const atEnd = delivery.drawn(end);
    if (can(atEnd)) return atEnd;
    high = end;
  }
  while (high - low.flow > FLOW_FOUND * high) {
    const middle = delivery.drawn((low.flow + high) / 2);
    if (can(middle)) low = middle;
    else high = middle.flow;
  }
  return low;
}

/** The most that an end gives at a pressure, m3/s, and what ends it. */
interface Most {
  flow?: number;
  endedBy?: Impossibility;
}

/** Solves with the water where a rating point has it. */
function atLift<T>(delivery: Delivery, { lift }: RatingPoint, solve: () => T): T {
  delivery.drawFrom(lift);
  try {
    return solve();
  } finally {
    delivery.drawFrom(undefined);
  }
}

/** An end of a staging judged at every rating point and at the agency's orifice. */
export interface EndJudged {
  staging: StagingName;
  delivery: Delivery;
  points: PointJudged[];
  /** The point with the least to spare. */
  worst: PointJudged;
  /** Where the typing names one. */
  orifice?: OrificeReading;
  verdict: Verdict;
  /** The least of all margins that the verdict stands on, as a part of what is asked; below 0 where it does not stand. */
  slack: number;
}

/**
 * The one judge of a verdict on the pumps: a staging at the points of its typing, at the agency's orifice and before the gate,
 * each end by its worst and the staging by its best end, as the agency's orifice hangs on one outlet at a time. `briefly`
 * reads the orifice only where the points stand, for whoever wants to know whether the verdict stands and no more.
 */
export function judge(rig: Rig, staging: StagingName, typing: TypingAsked, briefly = false): EndJudged {
  const asked = ratingPoints(typing);
  const ends = deliveries(rig, staging).map((delivery) => judgeEnd(rig, delivery, asked, typing, briefly));
  return ends.length === 1 ? ends[0] : ends.reduce((kept, end) => (rank(end) > rank(kept) ? end : kept));
}

function judgeEnd(
  rig: Rig,
  delivery: Delivery,
  asked: readonly RatingPoint[],
  typing: TypingAsked,
  briefly: boolean,
): EndJudged {
  const points = asked.map((point) => new PointJudged(delivery, point));
  const worst =
    points.length === 1 ? points[0] : points.reduce((kept, one) => (score(one) < score(kept) ? one : kept));
  const { test_orifice } = typing.requirement;
  const read = test_orifice !== undefined && !(briefly && worst.verdict === 'falls_short');
  const orifice = read ? readTestOrifice(rig, delivery.staging, delivery.end.name, test_orifice) : undefined;
  const reads = orifice === undefined || (!orifice.impossible && orifice.answer.margin >= -TOLD_APART);
  const verdict = worst.verdict === 'meets' && reads ? 'meets' : 'falls_short';
  const least = Math.min(...points.map(({ slack }) => slack), slackOfReading(orifice));
  const slack = verdict === 'meets' ? Math.max(least, 0) : Math.min(least, -Number.EPSILON);
  return { staging: delivery.staging, delivery, points, worst, orifice, verdict, slack };
}

function slackOfReading(orifice: OrificeReading | undefined): number {
  if (orifice === undefined) return 1;
  if (orifice.impossible) return -1;
  const { margin, reading } = orifice.answer;
  return margin / (reading - margin);
}

/** What cannot be had ranks below all that can, and by the flow that it falls short. */
function score(one: PointJudged): number {
  if (one.impossible === undefined) return one.slack;
  const most = one.atRequiredPressure;
  return IMPOSSIBLE + (most ? most.margin / one.point.flow : -1);
}

function rank({ worst, orifice, verdict, slack }: EndJudged): number {
  if (verdict === 'meets') return slack;
  return worst.impossible ? score(worst) : Math.min(score(worst), slackOfReading(orifice));
}

/** The slack of a rig's verdict in its own staging. Pumps too weak to have a steady state at the draw fall short. */
export function slackHere(rig: Rig, typing: TypingAsked): number {
  try {
    return judge(rig, rig.layout.staging, typing, true).slack;
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return -1;
    throw error;
  }
}
