import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout, PumpName, TypingAsked } from '../layout/layout.js';
import { whyImpossible } from '../limits/impossible.js';
import { Delivery, deliveries } from './delivery.js';
import type { PumpOutAnswer, StandingPump, TypeMet } from './engine-answer.js';
import { ifSteady } from './if-steady.js';
import { takeInventory } from './inventory.js';
import { judge, largestPossible } from './judge.js';
import { ratingPoints } from './requirement.js';
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

/** The classes of the typing's table that one pump makes at every end, most demanding first. */
function typesMet(rig: Rig, typing: TypingAsked, staging: StagingName): TypeMet[] {
  const { table } = typing;
  const classes: [string, TypingAsked][] = table
    ? Object.entries(table.classes).map(([name, requirement]) => [
        name,
        { ...typing, class: name, requirement },
      ])
    : [[typing.class ?? 'custom', typing]];
  const most = Math.max(...deliveries(rig, staging).map((delivery) => delivery.endOfCurves().flow));
  return classes
    .flatMap(([name, asked]) => typeMet(rig, staging, name, asked, most) ?? [])
    .sort((a, b) => b.flow * b.pressure - a.flow * a.pressure);
}

/** A class that one pump makes, by the judge of every verdict; `most` is all that it passes on its curve. */
function typeMet(
  rig: Rig,
  staging: StagingName,
  name: string,
  asked: TypingAsked,
  most: number,
): TypeMet | undefined {
  const { requirement } = asked;
  if (!requirement.points && requirement.pressure === undefined && asked.pressure === undefined)
    return undefined;
  if (requirement.points?.some(({ pressure }) => pressure === undefined) && asked.pressure === undefined)
    return undefined;
  // Far past the curves nothing is known, and no balance need be there.
  if (ratingPoints(asked).some(({ flow }) => flow > most)) return undefined;
  const judged = ifSteady(() => judge(rig, staging, asked, true));
  if (judged?.verdict !== 'meets') return undefined;
  const { point, margin } = judged.worst;
  const { flow, pressure } = point;
  const { inventory, missing } = inventoryOf(rig.layout, asked);
  return { class: name, title: requirement.name ?? name, flow, pressure, margin, inventory, missing };
}

function inventoryOf(layout: Layout, asked: TypingAsked): Pick<TypeMet, 'inventory' | 'missing'> {
  const items = takeInventory(layout, asked);
  const missing = items.filter(({ verdict }) => verdict === 'falls_short').map(({ item }) => item);
  if (missing.length > 0) return { inventory: 'falls_short', missing };
  const silent = items.some(({ verdict }) => verdict === 'not_stated');
  return { inventory: silent ? 'not_stated' : 'meets', missing };
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
  const returning = (state: OperatingPoint) => (stopped ? Math.max(0, -state.flow(stopped.link)) : 0);
  const shut = delivery.atRest();
  const { point, atRequiredPressure } = left.worst;
  const found = delivery.flowAt(point.pressure, Math.max(atRequiredPressure?.flow ?? 0, point.flow / 4));
  const most = found && whyImpossible(found.state) ? largestPossible(delivery, found.flow, 0) : found;
  const still = whyImpossible(shut) === undefined;
  return {
    staging,
    check,
    flow: most?.flow,
    impossible: found && most === undefined ? whyImpossible(found.state) : undefined,
    shutoff: still ? delivery.pressure(shut, 0, false) : undefined,
    backflowShut: still ? returning(shut) : undefined,
    backflow: most && returning(most.state),
  };
}
