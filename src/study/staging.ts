import type { StagingName } from '../assembly/assembly.js';
import { coolingFlow, delivered } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { boilsAtInlet, cavitating, npshAvailable, suctionNeed } from '../assembly/suction-head.js';
import type {
  FlowMargin,
  PressureMargin,
  PumpShare,
  RatingPoint,
  StagingAnswer,
  Statement,
  Verdict,
} from './answer.js';
import { type Delivery, deliveries } from './delivery.js';
import type { Rig } from './rig.js';

/** One rating point judged at one end in one staging. */
export interface PointJudged {
  point: RatingPoint;
  delivery: Delivery;
  verdict: Verdict;
  reachable: boolean;
  atRequiredFlow?: PressureMargin;
  atRequiredPressure?: FlowMargin;
  limit?: Statement;
  boilsAt?: string;
  /** The state at the required flow; undefined where the pumps cannot pass it on their curves. */
  state?: OperatingPoint;
}

/** A staging judged on every point at every end; `worst` decides. */
export interface StagingJudged {
  staging: StagingName;
  worst: PointJudged;
  points: PointJudged[];
  shutoff: number;
  shutoffState: OperatingPoint;
}

/** Judges a staging on the rating points: each end by its worst point, the staging by its best end. */
export function judgeStaging(rig: Rig, staging: StagingName, points: readonly RatingPoint[]): StagingJudged {
  const ends = deliveries(rig, staging).map((delivery) => judgeEnd(delivery, points));
  // The agency's orifice hangs on one outlet at a time, and on none that a reel or a long pipe starves.
  const chosen = ends.reduce((kept, end) => (lessThan(kept.worst, end.worst) ? end : kept));
  return { staging, ...chosen };
}

function judgeEnd(delivery: Delivery, points: readonly RatingPoint[]) {
  const shutoffState = delivery.atRest();
  const judged = points.map((point) => judgePoint(delivery, point));
  const worst = judged.reduce((kept, one) => (lessThan(one, kept) ? one : kept));
  const shutoff = delivery.pressure(shutoffState, 0, worst.point.net);
  return { points: judged, worst, shutoff, shutoffState };
}

function judgePoint(delivery: Delivery, point: RatingPoint): PointJudged {
  delivery.drawFrom(point.lift);
  try {
    return judgeAsDrawn(delivery, point);
  } finally {
    delivery.drawFrom(undefined);
  }
}

/** A margin that the solver can tell from none, Pa: what its own tolerance of head leaves. */
export const TOLD_APART = 0.02;

function judgeAsDrawn(delivery: Delivery, point: RatingPoint): PointJudged {
  const { net } = point;
  const drawn = delivery.drawn(point.flow);
  const { state } = drawn;
  const reachable = delivery.offCurve(state) === undefined;
  const pressure = delivery.pressure(state, point.flow, net);
  const margin = pressure - point.pressure;
  const [starved] = cavitating(state);
  let end = reachable ? undefined : delivery.endOfCurves();
  const found = delivery.flowAt(point.pressure, end?.flow ?? drawn, net);
  const past = found !== undefined && delivery.offCurve(found.state) !== undefined;
  if (past) end ??= delivery.endOfCurves();
  // The required flow is on the curves where it is reachable, so that they end no sooner.
  const most = past ? Math.max(end?.flow ?? 0, reachable ? point.flow : 0) : found?.flow;
  // Past a curve what stands at an inlet is not known either.
  const drawable = !reachable || starved === undefined || !boilsAtInlet(state, starved);
  const flow =
    found && cavitating(found.state).some((pump) => boilsAtInlet(found.state, pump)) ? undefined : most;
  const judged: PointJudged = {
    point,
    delivery,
    verdict: reachable && margin >= -TOLD_APART && starved === undefined ? 'meets' : 'falls_short',
    reachable,
    atRequiredFlow: reachable && drawable ? { pressure, margin } : undefined,
    atRequiredPressure: flow === undefined ? undefined : { flow, margin: flow - point.flow },
    state: reachable ? state : undefined,
  };
  if (starved && !drawable) {
    judged.boilsAt = starved.name;
    judged.limit = {
      template: 'the required flow cannot be drawn: water boils before it reaches {pump}',
      values: { pump: starved.name },
    };
  } else if (reachable && starved) {
    judged.limit = {
      template:
        '{pump} would cavitate at the required flow: it needs {needed} of suction head and has {available}',
      values: {
        pump: starved.name,
        needed: { value: suctionNeed(state, starved).head, dimension: 'length' },
        available: { value: npshAvailable(state, starved), dimension: 'length' },
      },
    };
  } else if (end !== undefined) {
    judged.limit = {
      template: '{pump} reaches the end of its curve when {flow} is drawn; more is not known of it',
      values: { pump: end.pump.name, flow: { value: end.flow, dimension: 'flow' } },
    };
  }
  return judged;
}

/** Whether one point comes off worse than another, by margin as a part of what is asked. */
function lessThan(one: PointJudged, other: PointJudged): boolean {
  return score(one) < score(other);
}

function score({ point, verdict, atRequiredFlow, atRequiredPressure }: PointJudged): number {
  // A pump that cavitates gives none of what its curve says, so that such a point ranks below every dry one.
  const starved = verdict === 'falls_short' && (atRequiredFlow?.margin ?? -1) >= -TOLD_APART ? 500 : 0;
  if (atRequiredFlow) return atRequiredFlow.margin / point.pressure - starved;
  // Off its curve, a point ranks below every one that is on it, and by the flow that it falls short.
  return -1e3 + (atRequiredPressure ? atRequiredPressure.margin / point.flow : -1);
}

export function stagingAnswer(judged: StagingJudged): StagingAnswer {
  const { staging, worst, shutoff } = judged;
  const { verdict, atRequiredFlow, atRequiredPressure, reachable, limit, boilsAt } = worst;
  return {
    staging,
    verdict,
    atRequiredFlow,
    atRequiredPressure,
    shutoff,
    reachable,
    limit,
    boilsAt,
    shares: worst.state ? pumpShares(worst.state) : [],
  };
}

/**
 * Who gives how much: what each pump gives to the discharge, its part of what all the engine's pumps give (common in series), and
 * apart from that what its own cooling line takes.
 */
export function pumpShares(state: OperatingPoint): PumpShare[] {
  const own = state.assembly.pumps.filter((pump) => !pump.booster);
  const flows = own.map((pump) => delivered(state, pump));
  const total = state.assembly.staging.startsWith('series')
    ? Math.max(...flows)
    : flows.reduce((sum, flow) => sum + Math.max(flow, 0), 0);
  return own.map((pump, index) => ({
    pump: pump.name.replace(/^pump /, ''),
    flow: flows[index],
    cooling: coolingFlow(state, pump),
    share: total > 0 ? Math.max(flows[index], 0) / total : 0,
  }));
}
