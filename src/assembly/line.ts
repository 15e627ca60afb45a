import { riseOf } from '../layout/expand.js';
import type { Path, Step, TankStep } from '../layout/step.js';
import { fittingResistance } from '../physics/fitting.js';
import type { AssembledNozzle, AssembledPump, NamedPlace } from './assembly.js';
import { quadratic } from './laws.js';
import type { NetworkBuilder, Part, Place } from './network-builder.js';
import { outletOf, seep } from './outlet.js';
import type { PartStore } from './part-store.js';
import { isPartStep } from './parts.js';
import { PumpLaw } from './pump-law.js';
import type { Site } from './site.js';

/** A line back to the tank, by its link. */
export interface TankReturn {
  name: string;
  link: number;
}

/** What the steps of a layout leave behind as they are laid: named points, pumps and nozzles. */
export interface Laid {
  pumps: AssembledPump[];
  nozzles: AssembledNozzle[];
  gauges: NamedPlace[];
  reliefs: TankReturn[];
  coolers: TankReturn[];
}

export interface LineContext {
  builder: NetworkBuilder;
  site: Site;
  store: PartStore;
  laid: Laid;
  /** Which nozzles to take as open or shut, whatever the layout says; undefined leaves it to the layout. */
  nozzleState?: (name: string, stated: 'open' | 'shut') => 'open' | 'shut';
}

/**
 * Lays steps one after another from a place, and gives the place where they end; undefined where they end in the air, a
 * cap or a tank. With `to` the last part is led to that place.
 */
export function layLine(
  steps: readonly Step[],
  from: Place,
  group: string,
  context: LineContext,
  to?: Place,
): Place | undefined {
  const { builder, laid } = context;
  const lastPart = to === undefined ? -1 : steps.findLastIndex((step) => leadsOn(step));
  let place: Place | undefined = from;
  for (const [index, step] of steps.entries()) {
    if (place === undefined) throw new TypeError('a step after the end of a line passed the schema');
    const end = index === lastPart ? to : undefined;
    if (isPartStep(step)) {
      place = builder.add(context.store.part(step, place.bore), group, place, end);
      if (step.kind !== 'branch') continue;
      for (const line of step.to) layLine(line.steps, place, line.name, context);
      continue;
    }
    switch (step.kind) {
      case 'gauge':
        laid.gauges.push({ name: step.gauge, place, ...(step.range !== undefined && { range: step.range }) });
        break;
      case 'siamese':
        place = laySiamese(step, place, context, end);
        break;
      case 'pump':
        place = layPump({ ...step, name: step.label }, place, group, context, end);
        break;
      case 'tank':
        place = endInTank(step, place, group, context);
        break;
      case 'cap':
        seep(place, context);
        place = undefined;
        break;
      default: {
        const nozzle = outletOf(step, place, context);
        laid.nozzles.push(nozzle);
        place = undefined;
      }
    }
  }
  if (to !== undefined && lastPart < 0) return builder.passage(group, from, to);
  return place;
}

/** Whether a step can carry water on to a place that is there already. */
function leadsOn(step: Step): boolean {
  return isPartStep(step) || step.kind === 'siamese' || step.kind === 'pump';
}

function laySiamese(
  step: Extract<Step, { kind: 'siamese' }>,
  from: Place,
  context: LineContext,
  to?: Place,
): Place {
  const end = to ?? context.builder.junction(`after ${step.label}`, from.elevation + riseOf(step.siamese[0]));
  step.siamese.forEach((line, index) => {
    layLine(line, from, `line ${index + 1} of ${step.label}`, context, end);
  });
  // Two bores meet here, so that none tells the velocity at the joint.
  return { node: end.node, elevation: end.elevation, lines: 1 };
}

export interface PumpToLay {
  name: string;
  pump: AssembledPump['model'];
  modelName: string;
  /** Part of the speed of its curve. */
  throttle: number;
  wear?: number;
  path: Path;
  ownEngine?: boolean;
}

/** Lays a pump from its inlet, and gives its discharge. */
export function layPump(
  pump: PumpToLay,
  inlet: Place,
  group: string,
  context: LineContext,
  to?: Place,
): Place {
  const { name, modelName, path } = pump;
  const curve = context.store.curve(pump.pump, pump.wear ?? 0);
  const held = context.store.held(pump.pump);
  const law = new PumpLaw(curve, held);
  const part: Part = {
    kind: 'pump',
    name,
    modelName,
    law: law.at(pump.throttle),
    bore: pump.pump.outlet_bore,
    path,
  };
  const discharge = context.builder.add(part, group, inlet, to);
  context.laid.pumps.push({
    name,
    model: pump.pump,
    modelName,
    curve,
    speed: pump.throttle,
    held,
    law,
    link: discharge.link as number,
    inlet,
    discharge,
    booster: !pump.ownEngine,
    path,
  });
  return discharge;
}

/** A line that runs into an open tank: its velocity is lost, and the surface is where a pump may draw from. */
function endInTank(step: TankStep, place: Place, group: string, context: LineContext): Place {
  const { builder } = context;
  const name = step.label;
  const surface = builder.surface(name, place.elevation);
  const law =
    place.bore === undefined ? undefined : quadratic(fittingResistance(1, place.bore) / place.lines ** 2);
  builder.add(
    { kind: 'tank', name, modelName: 'portable tank', law, path: step.path, step },
    group,
    place,
    surface,
  );
  return surface;
}
