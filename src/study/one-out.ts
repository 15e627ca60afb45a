import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout, PumpName, TypingAsked } from '../layout/layout.js';
import { Delivery } from './delivery.js';
import type { PumpOutAnswer, StandingPump, TypeMet } from './engine-answer.js';
import { ifSteady } from './if-steady.js';
import { takeInventory } from './inventory.js';
import { ruleOn } from './judge.js';
import { endOfCurve, refusalOf } from './refusal.js';
import { type Rig, SolvedAssembly } from './rig.js';
import type { StagingJudged } from './staging.js';

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
        verdict: left.verdict,
        types: typesMet(rig, typing, left.staging),
        standing: STANDING.flatMap(
          ([staging, check]) => ifSteady(() => standing(rig, staging, out, check, left)) ?? [],
        ),
      },
    ];
  });
}

/** The classes of the typing's table that one pump makes, most demanding first. */
function typesMet(rig: Rig, typing: TypingAsked, staging: StagingName): TypeMet[] {
  const { table } = typing;
  const classes: [string, TypingAsked][] = table
    ? Object.entries(table.classes).map(([name, requirement]) => [
        name,
        { ...typing, class: name, requirement },
      ])
    : [[typing.class ?? 'custom', typing]];
  return classes
    .flatMap(([name, asked]) => ifSteady(() => typeMet(rig, name, asked, staging)) ?? [])
    .sort((a, b) => b.flow * b.pressure - a.flow * a.pressure);
}

function typeMet(rig: Rig, name: string, asked: TypingAsked, staging: StagingName): TypeMet[] {
  const { requirement, pressure: stated } = asked;
  const silent = requirement.points
    ? requirement.points.some(({ pressure }) => pressure === undefined)
    : requirement.pressure === undefined;
  if (silent && stated === undefined) return [];
  const { verdict, worst } = ruleOn(rig, asked, staging, 'if_it_decides');
  if (verdict !== 'meets' || worst.margin === undefined) return [];
  const { flow, pressure } = worst.point;
  return [
    {
      class: name,
      title: requirement.name ?? name,
      flow,
      pressure,
      margin: worst.margin,
      ...inventoryOf(rig.layout, asked),
    },
  ];
}

function inventoryOf(layout: Layout, asked: TypingAsked): Pick<TypeMet, 'inventory' | 'missing'> {
  const lines = takeInventory(layout, asked);
  const missing = lines.filter(({ verdict }) => verdict === 'falls_short').map(({ item }) => item);
  const silent = lines.some(({ verdict }) => verdict === 'not_stated');
  return { inventory: missing.length > 0 ? 'falls_short' : silent ? 'not_stated' : 'meets', missing };
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
  const { point } = left.worst;
  const near = Math.max(left.atRequiredPressure?.flow ?? 0, point.flow / 4);
  const found = delivery.flowAt(point.pressure, near);
  const returning = (state: OperatingPoint) => (stopped ? back(state.flow(stopped.link)) : 0);
  const refusedShut = refusalOf(shut);
  const common = {
    staging,
    check,
    shutoff: refusedShut ? undefined : delivery.pressure(shut, 0, false),
    backflowShut: refusedShut ? undefined : returning(shut),
    refusedShut,
  };
  if (found === undefined) return { ...common, reaches: false };
  // Past the end of a curve nothing is known, so that the flow is that at its end.
  const end = delivery.offCurve(found.state) ? delivery.endOfCurves() : undefined;
  const most = end && end.flow > 0 ? delivery.drawn(end.flow) : found;
  const refusal = end?.flow === 0 ? endOfCurve(end) : refusalOf(most.state);
  const told = refusal === undefined || (end && end.flow > 0 && refusal.code === 'past_curve');
  return told
    ? { ...common, reaches: true, flow: most.flow, backflow: returning(most.state) }
    : { ...common, reaches: true, refusal };
}
