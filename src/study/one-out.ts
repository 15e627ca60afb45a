import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { cavitating } from '../assembly/suction-head.js';
import type { Layout, PumpName, TypingAsked } from '../layout/layout.js';
import { Delivery, deliveries } from './delivery.js';
import type { PumpOutAnswer, StandingPump, TypeMet } from './engine-answer.js';
import { ifSteady } from './if-steady.js';
import { takeInventory } from './inventory.js';
import { ratingPoints } from './requirement.js';
import { type Rig, SolvedAssembly } from './rig.js';
import type { StagingJudged } from './staging.js';
import { passesTestOrifice } from './test-orifice.js';

const OTHER: Record<PumpName, PumpName> = { a: 'b', b: 'a' };

const STANDING = [
  ['parallel', 'works'],
  ['parallel', 'stuck_open'],
  ['series', 'works'],
] as const;

/** With either pump out: what the engine still makes, and what the pump that is out does where its valves stay open. */
export function pumpsOut(rig: Rig, typing: TypingAsked, judged: readonly StagingJudged[]): PumpOutAnswer[] {
  if (rig.layout.engine.pumps.b === undefined) return [];
  return (['a', 'b'] as const).flatMap((out) => {
    const left = judged.find(({ staging }) => staging === OTHER[out]);
    if (left === undefined) return [];
    return [
      {
        out: `pump ${out}`,
        staging: left.staging,
        verdict: left.worst.verdict,
        types: typesMet(rig, typing, left.staging),
        standing: STANDING.flatMap(
          ([staging, check]) => ifSteady(() => standing(rig, staging, out, check, left)) ?? [],
        ),
      },
    ];
  });
}

/** The classes of the typing's table that one pump makes at every end, most demanding first. */
function typesMet(rig: Rig, typing: TypingAsked, staging: StagingName): TypeMet[] {
  const { table } = typing;
  const classes: [string, TypingAsked][] = table
    ? Object.entries(table.classes).map(([name, requirement]) => [
        name,
        { ...typing, class: name, requirement },
      ])
    : [[typing.class ?? 'custom', typing]];
  const ends = deliveries(rig, staging).map((delivery) => ({
    delivery,
    most: delivery.endOfCurves().flow,
  }));
  return classes
    .flatMap(([name, asked]) => typeMet(rig.layout, name, asked, ends) ?? [])
    .sort((a, b) => b.flow * b.pressure - a.flow * a.pressure);
}

function typeMet(
  layout: Layout,
  name: string,
  asked: TypingAsked,
  ends: readonly { delivery: Delivery; most: number }[],
): TypeMet | undefined {
  const { requirement } = asked;
  if (!requirement.points && requirement.pressure === undefined && asked.pressure === undefined)
    return undefined;
  if (requirement.points?.some(({ pressure }) => pressure === undefined) && asked.pressure === undefined)
    return undefined;
  let least: Omit<TypeMet, 'inventory'> | undefined;
  for (const { delivery, most } of ends) {
    for (const { flow, pressure, net } of ratingPoints(asked)) {
      if (flow > mostOnCurves(delivery)) return undefined;
      // Far past the curves nothing is known, and no balance need be there.
      if (flow > most) return undefined;
      const state = delivery.at(flow);
      if (delivery.offCurve(state) || cavitating(state).length > 0) return undefined;
      const margin = delivery.pressure(state, flow, net) - pressure;
      if (margin < 0) return undefined;
      if (least === undefined || margin / pressure < least.margin / least.pressure)
        least = { class: name, title: requirement.name ?? name, flow, pressure, margin };
    }
    const { test_orifice } = requirement;
    if (test_orifice && !passesTestOrifice(delivery, test_orifice)) return undefined;
  }
  return least && { ...least, inventory: inventoryOf(layout, asked) };
}

/** More than this no pump of a delivery passes on its curve, m3/s. */
function mostOnCurves({ assembly }: Delivery): number {
  return assembly.pumps.reduce((sum, { curve, speed }) => sum + curve.lastFlow * speed, 0);
}

function inventoryOf(layout: Layout, asked: TypingAsked): TypeMet['inventory'] {
  const verdicts = takeInventory(layout, asked).map(({ verdict }) => verdict);
  if (verdicts.includes('falls_short')) return 'falls_short';
  return verdicts.includes('not_stated') ? 'not_stated' : 'meets';
}

/** One pump at work and the other standing with its valves open. */
function standing(
  rig: Rig,
  staging: StagingName,
  out: PumpName,
  check: StandingPump['check'],
  left: StagingJudged,
): StandingPump {
  const assembly = rig.assemble({ staging, lay: 'none', stopped: { pump: out, check } });
  const delivery = new Delivery(new SolvedAssembly(assembly), assembly.ends[0]);
  const stopped = assembly.elements.find(({ kind }) => kind === 'stopped pump');
  const back = (flow: number) => Math.max(0, -flow);
  const shut = delivery.atRest();
  const { point, atRequiredPressure } = left.worst;
  const found = delivery.flowAt(point.pressure, Math.max(atRequiredPressure?.flow ?? 0, point.flow / 4));
  const returning = (state: OperatingPoint) => (stopped ? back(state.flow(stopped.link)) : 0);
  // Past the end of a curve nothing is known, so that the flow is that at its end. What runs back may by itself be more than that.
  const past = found && delivery.offCurve(found.state) && returning(found.state) < STANDSTILL;
  const end = past ? delivery.endOfCurves().flow : 0;
  const most = end > 0 ? delivery.drawn(end) : found;
  return {
    staging,
    check,
    flow: most?.flow,
    shutoff: delivery.pressure(shut, 0, false),
    backflowShut: returning(shut),
    backflow: most && returning(most.state),
  };
}
