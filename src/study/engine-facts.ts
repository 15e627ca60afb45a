import type { OperatingPoint } from '../assembly/operating-point.js';
import type { TypingAsked } from '../layout/layout.js';
import type { Verdict } from './answer.js';
import { axlesOf } from './axles.js';
import { under } from './conditions.js';
import type { EngineFacts } from './engine-answer.js';
import { heatOf } from './heat.js';
import type { Beside } from './if-steady.js';
import { slackHere } from './judge.js';
import { lifeOf } from './life.js';
import { pumpsOut } from './one-out.js';
import { pairCost } from './pair-cost.js';
import { atItsLimit, LUGGING, restsOnPower } from './power-bracket.js';
import type { Rig } from './rig.js';
import type { StagingJudged } from './staging.js';

/** Hottest air that a test is made in, K (110 degF). NFPA 1911 (from memory). */
const HOTTEST = ((110 - 32) * 5) / 9 + 273.15;

/** Heat, one pump out, life, weight and cost of the engine. */
export function engineFacts(
  rig: Rig,
  typing: TypingAsked,
  judged: readonly StagingJudged[],
  states: { working: OperatingPoint | undefined; shut: OperatingPoint },
  beside: Beside,
): EngineFacts {
  const { layout } = rig;
  return {
    hotDay: beside('a hot day', () => hotDay(rig, typing)),
    heat: states.working ? heatOf(layout, states.working, states.shut) : [],
    pumpsOut: beside('one pump out', () => pumpsOut(rig, typing, judged)) ?? [],
    life: beside('wear and service', () => lifeOf(rig, typing)),
    axles: axlesOf(layout),
    pairCost: pairCost(layout),
  };
}

function hotDay(rig: Rig, typing: TypingAsked): EngineFacts['hotDay'] {
  const { layout } = rig;
  if (layout.site.air_temperature >= HOTTEST) return undefined;
  const there = rig.with(under(layout, { airTemperature: HOTTEST }));
  const verdictOf = (one: Rig): Verdict => (slackHere(one, typing) < 0 ? 'falls_short' : 'meets');
  const verdict = verdictOf(there);
  if (!restsOnPower(there)) return { airTemperature: HOTTEST, verdict };
  const cases = [
    { engine: 'power_to_spare' as const, verdict },
    ...LUGGING.map((engine) => ({ engine, verdict: verdictOf(atItsLimit(there, engine)) })),
  ];
  const least = cases.every((one) => one.verdict === 'meets') ? 'meets' : 'falls_short';
  return { airTemperature: HOTTEST, verdict: least, cases };
}
