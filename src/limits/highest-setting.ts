import { alongHose } from '../assembly/along-hose.js';
import type { AssembledPump, Assembly } from '../assembly/assembly.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { type HoseLimit, settingLimit } from './hose-limit.js';

/** The highest setting that every part allows. */
export interface HighestSetting {
  pressure: number;
  /** The part that sets it: `hose 1 of the lay`, `the casing of pump a`. */
  by: string;
  rule: HoseLimit['rule'] | 'casing';
  source: string;
}

/** A place where a device holds the pressure, and the highest that it may be set to hold there. */
export interface SettingPlace {
  /** `relief valve a`, `the governors`. */
  at: string;
  highest?: HighestSetting;
}

/**
 * The highest setting of each device, Pa gauge where it stands, that keeps every hose that it guards within its rating, all
 * along the ground that it lies on, and every casing too. With everything shut, what lies below the device stands under the
 * height as well, and what lies beyond a booster under what that makes with nothing flowing.
 */
export function highestSettings(layout: Layout, state: OperatingPoint): SettingPlace[] {
  const { assembly } = state;
  const { pumps, reliefs, network } = assembly;
  const own = pumps.filter((pump) => !pump.booster);
  if (layout.throttle.by === 'speed' && reliefs.length > 0)
    return reliefs.map(({ name, link }) => {
      const node = network.links[link].from;
      const guarded = own.filter((pump) => pump.relief === undefined || pump.relief === link);
      return {
        at: name === 'relief valve' ? 'the relief valve' : name,
        highest: highestAt(layout, state, node, guarded),
      };
    });
  return own.map((pump) => ({
    at: `the discharge of ${pump.name}`,
    highest: highestAt(layout, state, pump.discharge.node, [pump]),
  }));
}

/** The least of them; undefined where nothing says what it bears. */
export function lowestOfSettings(places: readonly SettingPlace[]): HighestSetting | undefined {
  return places
    .flatMap(({ highest }) => highest ?? [])
    .reduce<HighestSetting | undefined>(
      (kept, one) => (kept === undefined || one.pressure < kept.pressure ? one : kept),
      undefined,
    );
}

function highestAt(
  layout: Layout,
  state: OperatingPoint,
  node: number,
  guarded: readonly AssembledPump[],
): HighestSetting | undefined {
  const { site, network } = state.assembly;
  const { elevation } = network.nodes[node];
  const over = (height: number) => pressureOfHeight(height - elevation, site.waterDensity);
  const added = addedBeyond(state.assembly, node);
  const settings: HighestSetting[] = [];
  for (const element of state.assembly.elements) {
    const boosted = added.get(element.from.node);
    if (element.step?.kind !== 'hose' || boosted === undefined) continue;
    const limit = settingLimit(element.step.hose);
    if (limit === undefined) continue;
    const lowest = lowestGround(state, element);
    settings.push({
      ...limit,
      by: element.name,
      pressure: limit.pressure + over(lowest) - pressureOfHeight(boosted, site.waterDensity),
    });
  }
  for (const { hose, modelName } of layout.engine.hose_carried ?? []) {
    const limit = settingLimit(hose);
    if (limit) settings.push({ ...limit, by: `${modelName} carried`, pressure: limit.pressure + over(0) });
  }
  for (const { name, model, discharge } of guarded) {
    const casing = model.limits?.casing;
    if (casing === undefined) continue;
    const pressure = casing + over(discharge.elevation);
    settings.push({
      pressure,
      by: `the casing of ${name}`,
      rule: 'casing',
      source: 'limit stated for the pump',
    });
  }
  // What height or a booster alone puts over its rating no setting guards: its own caution tells of it.
  const within = settings.filter(({ pressure }) => pressure > 0);
  return lowestOfSettings(within.map((highest) => ({ at: '', highest })));
}

/** The lowest point of the ground under a hose, m over the pump inlets. */
function lowestGround(state: OperatingPoint, element: Element): number {
  return Math.min(...alongHose(state, element).map(({ height }) => height));
}

/**
 * Every node that water comes to from a node without passing one of the engine's pumps or an open surface, with the head
 * that boosters on the way add with nothing flowing, m.
 */
function addedBeyond({ network, pumps, elements }: Assembly, start: number): Map<number, number> {
  const known = new Map(pumps.map((pump) => [pump.link, pump]));
  const ways = new Map<number, { to: number; head: number }[]>();
  const leads = (from: number, to: number, head: number) => {
    const there = ways.get(from);
    if (there) there.push({ to, head });
    else ways.set(from, [{ to, head }]);
  };
  const forward = new Set(elements.flatMap(({ oneWay, link }) => (oneWay ? [link] : [])));
  // A valve that is shut today is opened tomorrow: what stands beyond it is guarded too.
  network.links.forEach(({ from, to }, link) => {
    const pump = known.get(link);
    if (pump && !pump.booster) return;
    leads(from, to, pump ? headAtRest(pump) : 0);
    if (!pump && !forward.has(link)) leads(to, from, 0);
  });
  const added = new Map([[start, 0]]);
  const next = [start];
  for (let node = next.pop(); node !== undefined; node = next.pop()) {
    const here = added.get(node) ?? 0;
    for (const { to, head } of ways.get(node) ?? []) {
      if (added.has(to) || network.nodes[to].head !== undefined) continue;
      added.set(to, here + head);
      next.push(to);
    }
  }
  return added;
}

function headAtRest({ curve, speed }: AssembledPump): number {
  const out = { head: 0, slope: 0 };
  curve.evaluate(0, out);
  return out.head * speed * speed;
}
