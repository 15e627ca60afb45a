import type { StagingName } from '../assembly/assembly.js';
import { coolingFlow, delivered } from '../assembly/delivered.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { TypingAsked } from '../layout/layout.js';
import { type Impossibility, reasonOf, whyImpossible } from '../limits/impossible.js';
import type { PumpShare, StagingAnswer, Statement } from './answer.js';
import type { Delivery } from './delivery.js';
import { type EndJudged, judge } from './judge.js';
import type { Rig } from './rig.js';

/** A staging judged, with what it does at its best end with nothing drawn. */
export interface StagingJudged extends EndJudged {
  shutoffState: OperatingPoint;
  shutoff: number;
}

export function judgeStaging(rig: Rig, staging: StagingName, typing: TypingAsked): StagingJudged {
  const end = judge(rig, staging, typing);
  const { delivery, worst } = end;
  const shutoffState = delivery.atRest();
  return { ...end, shutoffState, shutoff: delivery.pressure(shutoffState, 0, worst.point.net) };
}

export function stagingAnswer(judged: StagingJudged): StagingAnswer {
  const { staging, verdict, worst, orifice, shutoff, shutoffState, delivery } = judged;
  const { impossible, margin, pressure, atRequiredPressure, state, endedBy } = worst;
  const why = impossible ?? (verdict === 'falls_short' ? orifice?.impossible : undefined) ?? endedBy;
  return {
    staging,
    verdict,
    atRequiredFlow: impossible ? undefined : { pressure, margin },
    atRequiredPressure,
    shutoff: whyImpossible(shutoffState) === undefined ? shutoff : undefined,
    reachable: impossible?.code !== 'past_curve',
    reading: orifice && !orifice.impossible ? orifice.answer : undefined,
    limit: why && limitOf(why, delivery),
    impossible,
    shares: state ? pumpShares(state) : [],
  };
}

/** What ends a staging, in words; a pump past its curve by what is drawn then, which is what a reader can hold to. */
function limitOf(why: Impossibility, delivery: Delivery): Statement {
  if (why.code !== 'past_curve') return reasonOf(why);
  const end = delivery.endOfCurves();
  return {
    template: '{pump} reaches the end of its curve when {flow} is drawn; more is not known of it',
    values: { pump: end.pump.name, flow: { value: end.flow, dimension: 'flow' } },
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
