import type { Path, Step } from '../layout/step.js';
import type { LinkLaw, Network, NetworkLink, NetworkNode } from '../network/network.js';

/**
 * A point of the plumbing: a node of the network, with what a gauge there needs. A gauge reads static pressure, which is
 * total pressure less the velocity head in the bore of the step that it follows.
 */
export interface Place {
  node: number;
  /** m above the pump inlets. */
  elevation: number;
  /** Bore of the step before, m; undefined where it is not known, and then a gauge reads total pressure. */
  bore?: number;
  /** The link whose flow runs through that bore. */
  link?: number;
  /** Hoses or pipes side by side that share the flow. */
  lines: number;
}

/** What a step adds to the network, before it has a place there. Without a law it loses nothing. */
export interface Part {
  /** `hose`, `pipe`, `valve`, `check valve`, `appliance`, `branch`, `pump`. */
  kind: string;
  /** `hose 2 of the lay`. */
  name: string;
  law?: LinkLaw;
  /** m, up positive. */
  rise?: number;
  /** m; undefined where the part has none of its own. */
  bore?: number;
  /** m; of hose and pipe. */
  length?: number;
  lines?: number;
  oneWay?: boolean;
  /** Shut: it passes nothing. */
  shut?: boolean;
  path: Path;
  /** What the document says of it; pumps have none. */
  step?: Step;
  modelName: string;
}

/** A part in the network. */
export interface Element extends Part {
  link: number;
  law: LinkLaw;
  lines: number;
  /** Which list it stands in: `intake`, `suction a`, `manifold`, `lay`, the name of a branch line. */
  group: string;
  from: Place;
  to: Place;
}

/**
 * A way without loss between two places that must stay two: a third of a millimetre at 10 L/s. It is straight so far up that
 * the rounding of a head does not drive a flow through it that a steep pump, dead-headed, could not come to rest with.
 */
const OPEN_PASSAGE: LinkLaw = { kind: 'resistance', resistance: 1, linearBelow: 0.03 };

/** Collects nodes, links and named parts. */
export class NetworkBuilder {
  readonly nodes: NetworkNode[] = [];
  readonly links: NetworkLink[] = [];
  readonly elements: Element[] = [];

  get network(): Network {
    return { nodes: this.nodes, links: this.links };
  }

  junction(name: string, elevation: number): Place {
    this.nodes.push({ name, elevation });
    return { node: this.nodes.length - 1, elevation, lines: 1 };
  }

  /** A water surface or the open air. */
  surface(name: string, elevation: number, head = elevation): Place {
    this.nodes.push({ name, elevation, head });
    return { node: this.nodes.length - 1, elevation, lines: 1 };
  }

  link(name: string, from: Place, to: Place, law: LinkLaw, oneWay = false): number {
    this.links.push({ name, from: from.node, to: to.node, law, oneWay });
    return this.links.length - 1;
  }

  /** Adds a part and gives the place behind it. A part that changes nothing adds no link, unless it must reach `to`. */
  add(part: Part, group: string, from: Place, to?: Place): Place {
    const lines = part.lines ?? 1;
    if (part.shut) return this.shut(part, from, to);
    const newBore = part.bore !== undefined && part.bore !== from.bore;
    const changes = part.law !== undefined || part.oneWay || part.rise || newBore;
    if (!changes && to === undefined) return from;
    const law = part.law ?? OPEN_PASSAGE;
    const end = to ?? this.junction(`after ${part.name}`, from.elevation + (part.rise ?? 0));
    const link = this.link(part.name, from, end, law, part.oneWay);
    // A pump has bores of its own, and where it does not name them its gauge reads total pressure.
    const bore = part.kind === 'pump' ? part.bore : (part.bore ?? from.bore);
    const behind: Place = { node: end.node, elevation: end.elevation, bore, link, lines };
    this.elements.push({ ...part, law, lines, link, group, from, to: behind });
    return behind;
  }

  /**
   * Nothing passes a shut valve either way: it is two check valves back to back, so that what hangs beyond it still has a
   * pressure, and water drawn there is refused by the valve's name.
   */
  private shut(part: Part, from: Place, to?: Place): Place {
    const end = to ?? this.junction(`after ${part.name}`, from.elevation);
    const within = this.junction(`within ${part.name}`, from.elevation);
    for (const side of [from, end]) {
      const link = this.link(part.name, within, side, OPEN_PASSAGE, true);
      this.links[link] = { ...this.links[link], shut: true };
    }
    return { node: end.node, elevation: end.elevation, bore: part.bore, lines: 1 };
  }

  /** Joins two places that must stay two, without loss. */
  passage(name: string, from: Place, to: Place): Place {
    const link = this.link(name, from, to, OPEN_PASSAGE);
    return { ...to, bore: from.bore, link, lines: from.lines };
  }
}
