import type { StagingName } from '../assembly/assembly.js';
import { coolingFlow, delivered } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { TypingAsked } from '../layout/layout.js';
import { boilingPressure } from '../limits/impossible.js';
import type { FlowMargin, PressureMargin, PumpShare, StagingAnswer, Statement } from './answer.js';
import type { Delivery, Drawn } from './delivery.js';
import { type PointRuled, type Ruling, ruleOn } from './judge.js';
import { endOfCurve, refusalOf } from './refusal.js';
import type { Rig } from './rig.js';

/** A staging judged, with what is told of it beside its verdict. */
export interface StagingJudged extends Ruling {
  staging: StagingName;
  atRequiredFlow?: PressureMargin;
  atRequiredPressure?: FlowMargin;
  /** Why not, or what limits it. */
  limit?: Statement;
  /** Gauge pressure at the end with nothing drawn, Pa; undefined where that state cannot be. */
  shutoff?: number;
  shutoffState: OperatingPoint;
  /** What is shown of it: at the required flow, or at the most that can be drawn; undefined where nothing can. */
  shown?: Drawn;
}

/** Judges a staging on what a typing asks, and finds what is told of it beside. */
export function judgeStaging(
  rig: Rig,
  typing: TypingAsked,
  staging: StagingName,
  reading: 'always' | 'if_it_decides',
): StagingJudged {
  const ruling = ruleOn(rig, typing, staging, reading);
  const { delivery, worst } = ruling;
  const { point, state, refusal, pressure, margin } = worst;
  const shutoffState = delivery.atRest();
  const stands =
    refusalOf(shutoffState) === undefined &&
    // With nothing drawn, a pressure below what water bears only says that none comes so high.
    delivery.pressure(shutoffState, 0, false) > boilingPressure(shutoffState);
  const shutoff = stands ? delivery.pressure(shutoffState, 0, worst.point.net) : undefined;
  const most = delivery.drawing(point.lift, () => mostAtPressure(delivery, worst));
  const shown =
    state && refusal === undefined ? { flow: point.flow, state } : delivery.mostPossible(point.flow);
  return {
    ...ruling,
    staging,
    atRequiredFlow: pressure === undefined || margin === undefined ? undefined : { pressure, margin },
    atRequiredPressure:
      most.flow === undefined ? undefined : { flow: most.flow, margin: most.flow - point.flow },
    limit: most.limit ?? refusal,
    shutoff,
    shutoffState,
    shown,
  };
}

/** The most that an end gives at the pressure that is asked, as far as that can be and is known, and what it ends with. */
function mostAtPressure(delivery: Delivery, { point, state, reachable, refusal }: PointRuled) {
  const { net } = point;
  let end = reachable ? undefined : delivery.endOfCurves();
  const near = end?.flow ?? (state ? { flow: point.flow, state } : point.flow);
  const found = delivery.flowAt(point.pressure, near, net);
  const past = found !== undefined && delivery.offCurve(found.state) !== undefined;
  if (past) end ??= delivery.endOfCurves();
  const limit = end && endOfCurve(end);
  // The required flow is on the curves where it is reachable, so that they end no sooner.
  const most = past ? Math.max(end?.flow ?? 0, reachable ? point.flow : 0) : found?.flow;
  if (most === undefined) return { limit: reachable ? refusal : limit };
  const standing = past ? refusalOf(delivery.at(most)) : found && refusalOf(found.state);
  // A hair past the end of a curve is the end that was found.
  const refused = standing && standing.code !== 'past_curve' ? standing : undefined;
  return { flow: refused ? undefined : most, limit: (reachable ? refusal : undefined) ?? limit };
}

export function stagingAnswer(judged: StagingJudged): StagingAnswer {
  const { staging, verdict, worst, shutoff, atRequiredFlow, atRequiredPressure, limit, reading } = judged;
  return {
    staging,
    verdict,
    atRequiredFlow,
    atRequiredPressure,
    shutoff,
    reachable: worst.reachable,
    limit: limit ?? orificeLimit(judged),
    refusal: worst.reachable ? worst.refusal : undefined,
    shares: worst.state && worst.refusal === undefined ? pumpShares(worst.state) : [],
    ...(reading?.margin !== undefined && { readingMargin: reading.margin }),
  };
}

/** What is said of a staging that makes its points and falls short at the test orifice. */
function orificeLimit({ verdict, worst, reading }: StagingJudged): Statement | undefined {
  if (verdict === 'meets' || !worst.meets || reading === undefined) return undefined;
  if (reading.refusal)
    return { ...reading.refusal, template: `at the test orifice ${reading.refusal.template}` };
  if (reading.reading === undefined || reading.margin === undefined) return undefined;
  return {
    template: 'at the test orifice the gauge reads {reading}, {short} short',
    values: {
      reading: { value: reading.reading, dimension: 'pressure' },
      short: { value: -reading.margin, dimension: 'pressure' },
    },
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
