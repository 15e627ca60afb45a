import type { AssembledNozzle, Assembly } from '../assembly/assembly.js';
import type { Element, Place } from '../assembly/network-builder.js';

/** What stands before a place, from the outlet on, kept for each place so that a long lay is walked through once. */
interface Way {
  outlet: string | undefined;
  parts: number;
  hose: number;
  /** Of the line that leaves the outlet, up to its last part on this way. */
  trunk: { group: string; parts: number; hose: number } | undefined;
}

function onward(way: Way, element: Element): Way {
  const parts = way.parts + 1;
  const hose = way.hose + (isHose(element) ? (element.length ?? 0) : 0);
  const group = way.trunk?.group ?? element.group;
  const trunk = element.group === group ? { group, parts, hose } : way.trunk;
  return { outlet: way.outlet, parts, hose, trunk };
}

/** Which parts water runs through on its way from the engine's outlets to a place of the lay. */
export class LayPaths {
  private readonly outlets = new Map<number, string>();
  private readonly arriving = new Map<number, Element>();
  private readonly ways = new Map<number, Way | undefined>();

  constructor(assembly: Assembly) {
    // Where two outlets are one place, the first of them stands for both.
    for (const { name, place } of assembly.outlets)
      if (!this.outlets.has(place.node)) this.outlets.set(place.node, name);
    // Where lines part and meet again, the first of them stands for all: each loses the same.
    for (const element of assembly.elements)
      if (!this.arriving.has(element.to.node)) this.arriving.set(element.to.node, element);
  }

  /** From the outlet on, in the order that water meets them; empty for a place that no outlet leads to. */
  to(place: Place): Element[] {
    const path: Element[] = [];
    let { node } = place;
    while (!this.outlets.has(node)) {
      const element = this.arriving.get(node);
      if (element === undefined || path.length > this.arriving.size) return [];
      path.push(element);
      node = element.from.node;
    }
    return path.reverse();
  }

  /** Undefined for a place that no outlet leads to. */
  private wayTo(place: Place): Way | undefined {
    const climbed: Element[] = [];
    let { node } = place;
    while (!this.ways.has(node)) {
      const outlet = this.outlets.get(node);
      const element = this.arriving.get(node);
      // Told before it is known, so that a ring of parts that no outlet feeds ends the climb.
      this.ways.set(node, outlet === undefined ? undefined : { outlet, parts: 0, hose: 0, trunk: undefined });
      if (outlet !== undefined || element === undefined) break;
      climbed.push(element);
      node = element.from.node;
    }
    let way = this.ways.get(node);
    for (const element of climbed.reverse()) {
      way = way && onward(way, element);
      this.ways.set(element.to.node, way);
    }
    return way;
  }

  /** Hose before a place, m; 0 where no outlet leads to it. */
  hoseTo(place: Place): number {
    return this.wayTo(place)?.hose ?? 0;
  }

  /** The name of the outlet that a nozzle hangs on; undefined where it hangs on none. */
  outletOf(nozzle: AssembledNozzle): string | undefined {
    return this.wayTo(nozzle.inlet)?.outlet;
  }

  /**
   * The far nozzle of those given that hang on an outlet: at the end of the longest trunk, or where the trunk has no end
   * of its own, the one with the most hose before it.
   */
  farthest(nozzles: readonly AssembledNozzle[]): AssembledNozzle | undefined {
    let far: { nozzle: AssembledNozzle; trunk: number; beyond: number } | undefined;
    for (const nozzle of nozzles) {
      const way = this.wayTo(nozzle.inlet);
      if (way === undefined) continue;
      const beyond = (way.trunk?.parts ?? 0) === way.parts ? Number.POSITIVE_INFINITY : way.hose;
      const trunk = way.trunk?.hose ?? 0;
      if (far === undefined || trunk > far.trunk || (trunk === far.trunk && beyond >= far.beyond))
        far = { nozzle, trunk, beyond };
    }
    return far?.nozzle;
  }
}

export function isHose(element: Element): boolean {
  return element.step?.kind === 'hose';
}

/** Hose along a path, m. */
export function hoseLength(path: readonly Element[]): number {
  return path.reduce((sum, element) => sum + (isHose(element) ? (element.length ?? 0) : 0), 0);
}

/** How many of the path's parts, from its start, make up the trunk: what follows is a lateral of its own. */
export function trunkOf(path: readonly Element[]): Element[] {
  const group = path[0]?.group;
  return path.slice(0, path.findLastIndex((element) => element.group === group) + 1);
}
