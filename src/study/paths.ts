import type { AssembledNozzle, Assembly } from '../assembly/assembly.js';
import type { Element, Place } from '../assembly/network-builder.js';

/** Which parts water runs through on its way from the engine's outlets to a place of the lay. */
export class LayPaths {
  private readonly assembly: Assembly;
  private readonly outlets: ReadonlySet<number>;
  private readonly arriving = new Map<number, Element>();

  constructor(assembly: Assembly) {
    this.assembly = assembly;
    this.outlets = new Set(assembly.outlets.map(({ place }) => place.node));
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
      if (element === undefined || path.length > this.assembly.elements.length) return [];
      path.push(element);
      node = element.from.node;
    }
    return path.reverse();
  }

  /** The name of the outlet that a nozzle hangs on; undefined where it hangs on none. */
  outletOf(nozzle: AssembledNozzle): string | undefined {
    const [first] = this.to(nozzle.inlet);
    const node = first === undefined ? nozzle.inlet.node : first.from.node;
    return this.assembly.outlets.find(({ place }) => place.node === node)?.name;
  }

  /**
   * The far nozzle of those given that hang on an outlet: at the end of the longest trunk, or where the trunk has no end
   * of its own, the one with the most hose before it.
   */
  farthest(nozzles: readonly AssembledNozzle[]): AssembledNozzle | undefined {
    let far: { nozzle: AssembledNozzle; trunk: number; beyond: number } | undefined;
    for (const nozzle of nozzles) {
      if (this.outletOf(nozzle) === undefined) continue;
      const path = this.to(nozzle.inlet);
      const own = trunkOf(path);
      const beyond = own.length === path.length ? Number.POSITIVE_INFINITY : hoseLength(path);
      const trunk = hoseLength(own);
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
