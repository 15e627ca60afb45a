import type { Assembly } from '../assembly/assembly.js';
import type { Element, Place } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { bearingLimit, type HoseLimit } from '../limits/hose-limit.js';
import { boilingPressure } from '../limits/impossible.js';
import { surgeOfClosure, surgePressure } from '../physics/joukowsky.js';

/** Speed of a pressure wave in hose where the layout states none, m/s: the upper end of some 100 to 400, from memory. */
const HOSE_WAVE_SPEED = 400;

/** What shutting a nozzle adds to the pressure before it. */
export interface Surge {
  nozzle: string;
  velocity: number;
  waveSpeed: number;
  /** Whether the layout states the wave speed. */
  stated: boolean;
  /** s; undefined where the nozzle is taken to be slammed. */
  closingTime?: number;
  rise: number;
  /** Pressure at the nozzle before, with the rise on top, Pa. */
  peak: number;
  /** What the hose that the nozzle hangs on bears; undefined where none is told. */
  hoseLimit?: HoseLimit;
}

/** The surge at every open nozzle of a state, largest first: Joukowsky's whole rise, or what a slower closing leaves of it. */
export function surgesOf(layout: Layout, state: OperatingPoint): Surge[] {
  const { site, nozzles, elements } = state.assembly;
  const { wave_speed, closing_time } = layout.surge ?? {};
  const waveSpeed = wave_speed ?? HOSE_WAVE_SPEED;
  // Slammed, the rise is the same over any length.
  const columnTo = closing_time === undefined ? () => 0 : columns(state.assembly);
  const hoseLimits = new Map(
    elements.flatMap(({ step, to }) =>
      step?.kind === 'hose' ? [[to.node, bearingLimit(step.hose)] as const] : [],
    ),
  );
  return nozzles
    .flatMap((nozzle): Surge[] => {
      const velocity = state.velocityAt(nozzle.inlet);
      if (nozzle.state === 'shut' || !(velocity > 0)) return [];
      // What stands nowhere cannot be stopped.
      if (state.totalPressure(nozzle.inlet) <= boilingPressure(state)) return [];
      const rise =
        closing_time === undefined
          ? surgePressure(site.waterDensity, waveSpeed, velocity)
          : surgeOfClosure(site.waterDensity, waveSpeed, velocity, columnTo(nozzle.inlet), closing_time);
      return [
        {
          nozzle: nozzle.name,
          velocity,
          waveSpeed,
          stated: wave_speed !== undefined,
          closingTime: closing_time,
          rise,
          peak: state.totalPressure(nozzle.inlet) + rise,
          hoseLimit: hoseLimits.get(nozzle.inlet.node),
        },
      ];
    })
    .sort((a, b) => b.rise - a.rise);
}

/** A stretch of line: its length and the area that water runs through. */
interface Stretch {
  length: number;
  area: number;
}

/**
 * Length of the water that a nozzle stops, back through wyes and pumps to the engine's outlet or to an open tank, m, as if it all
 * ran at the nozzle's velocity: narrower line counts for more by its own, wider line for no less, which is the safe side, as is
 * that no other nozzle is fed by it.
 */
function columns({ elements, outlets }: Assembly): (inlet: Place) => number {
  const arriving = new Map<number, Element>();
  // Where lines part and meet again, the first of them stands for all.
  for (const element of elements)
    if (element.kind !== 'tank' && !arriving.has(element.to.node)) arriving.set(element.to.node, element);
  // By area, so that a long lay is climbed once: lays have few bores.
  const known = new Map<number, readonly Stretch[]>(outlets.map(({ place }) => [place.node, []]));
  const stretchesTo = (end: number): readonly Stretch[] => {
    const climbed: Element[] = [];
    let node = end;
    while (!known.has(node)) {
      // Told before it is known, so that a ring of parts that no outlet feeds ends the climb.
      known.set(node, []);
      const element = arriving.get(node);
      if (element === undefined) break;
      climbed.push(element);
      node = element.from.node;
    }
    let stretches = known.get(node) ?? [];
    for (const element of climbed.reverse()) {
      stretches = longer(stretches, element);
      known.set(element.to.node, stretches);
    }
    return stretches;
  };
  return ({ node, bore, lines }) => {
    const area = bore === undefined ? 0 : lines * bore ** 2;
    return stretchesTo(node).reduce((sum, one) => sum + one.length * Math.max(1, area / one.area), 0);
  };
}

function longer(stretches: readonly Stretch[], { length, bore, lines }: Element): readonly Stretch[] {
  if (length === undefined || bore === undefined) return stretches;
  const area = lines * bore ** 2;
  const same = stretches.find((one) => one.area === area);
  if (same === undefined) return [...stretches, { length, area }];
  return stretches.map((one) => (one === same ? { length: one.length + length, area } : one));
}
