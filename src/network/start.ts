import type { Network, NetworkLink, NetworkNode } from './network.js';

/**
 * A first guess for a cold start.
 *
 * A lay is nearly a tree whose leaves open to the air. Seen from upstream, a leaf of resistance r at height z passes
 * q = g sqrt(H - z) with g = 1 / sqrt(r); a hose before it adds its resistance, and leaves that meet add their g, their
 * height being the mean weighted by g (exact where all are level, close where the head is large against the heights).
 * So every tree folds into one opening at the node it hangs on. What is left, the core (the engine with its two pumps,
 * and any loops), is small and is solved first; then the flows are unfolded down the trees.
 */
export class TreeFold {
  /** What is not folded, with an opening in place of each tree; its first links are those of `coreLinks`. */
  readonly core: Network;
  /** The whole network's number of each of the core's first links. */
  readonly coreLinks: Int32Array;
  /** The whole network's number of each of the core's first nodes. */
  readonly coreNodes: Int32Array;
  /** The openings of the core: its last links and nodes, one for each entry. */
  readonly openingLink: Int32Array;
  readonly openingNode: Int32Array;
  private readonly openingAt: Int32Array;
  /** Folded nodes, leaves first; each with the link to the node upstream, and that node. */
  private readonly folded: Int32Array;
  private readonly foldedLink: Int32Array;
  private readonly foldedInto: Int32Array;
  private readonly foldedSign: Int8Array;
  /** Links that end at a fixed head, each with the node before it. */
  private readonly outlet: Int32Array;
  private readonly outletAt: Int32Array;
  private readonly outletTo: Int32Array;
  private readonly outletSign: Int8Array;
  private readonly conductance: Float64Array;
  private readonly weightedHeight: Float64Array;

  constructor(network: Network) {
    const { nodes, links } = network;
    const fixed = (node: number) => nodes[node].head !== undefined;
    const incident: number[][] = nodes.map(() => []);
    const keptAnyway = new Uint8Array(nodes.length);
    const outlets: number[] = [];
    const coreOutlets = new Set<number>();
    links.forEach((link, l) => {
      if (fixed(link.from) && fixed(link.to)) return;
      if (!fixed(link.from) && !fixed(link.to)) {
        incident[link.from].push(l);
        incident[link.to].push(l);
      } else if (isPump(link)) {
        coreOutlets.add(l);
        keptAnyway[fixed(link.from) ? link.to : link.from] = 1;
      } else outlets.push(l);
    });
    const { order, gone } = foldLeaves(network, incident, keptAnyway);
    this.folded = Int32Array.from(order, (one) => one.node);
    this.foldedLink = Int32Array.from(order, (one) => one.link);
    this.foldedInto = Int32Array.from(order, (one) => one.into);
    this.foldedSign = Int8Array.from(order, (one) => (links[one.link].from === one.into ? 1 : -1));
    this.outlet = Int32Array.from(outlets);
    this.outletAt = Int32Array.from(outlets, (l) => (fixed(links[l].from) ? links[l].to : links[l].from));
    this.outletTo = Int32Array.from(outlets, (l) => (fixed(links[l].from) ? links[l].from : links[l].to));
    this.outletSign = Int8Array.from(outlets, (l) => (fixed(links[l].from) ? -1 : 1));
    this.conductance = new Float64Array(nodes.length);
    this.weightedHeight = new Float64Array(nodes.length);

    const opens = new Uint8Array(nodes.length);
    for (const at of this.outletAt) opens[at] = 1;
    for (const { node, into } of order) if (opens[node]) opens[into] = 1;

    const numberInCore = new Int32Array(nodes.length).fill(-1);
    const coreNodes: number[] = [];
    const keep = (v: number) => {
      if (numberInCore[v] < 0) numberInCore[v] = coreNodes.push(v) - 1;
      return numberInCore[v];
    };
    const coreLinks: number[] = [];
    const linksOfCore: NetworkLink[] = [];
    links.forEach((link, l) => {
      const between = !fixed(link.from) && !fixed(link.to) && !gone[link.from] && !gone[link.to];
      if (!between && !coreOutlets.has(l)) return;
      coreLinks.push(l);
      linksOfCore.push({ ...link, from: keep(link.from), to: keep(link.to) });
    });
    nodes.forEach((_, v) => {
      if (!fixed(v) && !gone[v]) keep(v);
    });
    const nodesOfCore: NetworkNode[] = coreNodes.map((v) => nodes[v]);
    const openingAt: number[] = [];
    const openingLink: number[] = [];
    const openingNode: number[] = [];
    for (const v of coreNodes) {
      if (fixed(v) || !opens[v]) continue;
      openingAt.push(v);
      openingNode.push(nodesOfCore.push({ name: 'opening', elevation: nodes[v].elevation, head: 0 }) - 1);
      openingLink.push(
        linksOfCore.push({
          name: 'opening',
          from: numberInCore[v],
          to: nodesOfCore.length - 1,
          law: { kind: 'resistance', resistance: 1, linearBelow: 1e-6 },
        }) - 1,
      );
    }
    this.coreNodes = Int32Array.from(coreNodes);
    this.coreLinks = Int32Array.from(coreLinks);
    this.openingAt = Int32Array.from(openingAt);
    this.openingNode = Int32Array.from(openingNode);
    this.openingLink = Int32Array.from(openingLink);
    this.core = { nodes: nodesOfCore, links: linksOfCore };
  }

  /** Whether folding leaves less to solve than there was. */
  get worthwhile(): boolean {
    return this.folded.length > 0;
  }

  /** Folds the trees; `resistance` by link (m per (m3/s)^2), `head` by node where it is fixed. */
  fold(resistance: Float64Array, head: Float64Array): void {
    const { conductance, weightedHeight, outlet, outletAt, outletTo, folded, foldedLink, foldedInto } = this;
    conductance.fill(0);
    weightedHeight.fill(0);
    for (let i = 0; i < outlet.length; i++) {
      const g = 1 / Math.sqrt(resistance[outlet[i]]);
      conductance[outletAt[i]] += g;
      weightedHeight[outletAt[i]] += g * head[outletTo[i]];
    }
    for (let i = 0; i < folded.length; i++) {
      const v = folded[i];
      const own = conductance[v];
      if (own === 0) continue;
      const g = 1 / Math.sqrt(1 / (own * own) + resistance[foldedLink[i]]);
      conductance[foldedInto[i]] += g;
      weightedHeight[foldedInto[i]] += (g * weightedHeight[v]) / own;
    }
  }

  openingResistance(index: number): number {
    return 1 / this.conductance[this.openingAt[index]] ** 2;
  }

  openingHeight(index: number): number {
    return this.weightedHeight[this.openingAt[index]] / this.conductance[this.openingAt[index]];
  }

  /** Unfolds the core's answer: `head` by node and, by the number that `place` gives a link, `flow`. */
  unfold(
    resistance: Float64Array,
    core: { flows: readonly number[]; heads: readonly number[] },
    head: Float64Array,
    flow: Float64Array,
    place: Int32Array,
  ): void {
    const { conductance, weightedHeight, folded, foldedLink, foldedInto, foldedSign } = this;
    for (let i = 0; i < this.coreLinks.length; i++) flow[place[this.coreLinks[i]]] = core.flows[i];
    for (let i = 0; i < this.coreNodes.length; i++) head[this.coreNodes[i]] = core.heads[i];
    for (let i = folded.length - 1; i >= 0; i--) {
      const v = folded[i];
      const upstream = head[foldedInto[i]];
      const own = conductance[v];
      if (own === 0) {
        head[v] = upstream;
        flow[place[foldedLink[i]]] = 0;
        continue;
      }
      const r = resistance[foldedLink[i]];
      const drop = upstream - weightedHeight[v] / own;
      const share = drop / (1 / (own * own) + r);
      head[v] = upstream - r * share;
      flow[place[foldedLink[i]]] = foldedSign[i] * (share < 0 ? -Math.sqrt(-share) : Math.sqrt(share));
    }
    for (let i = 0; i < this.outlet.length; i++) {
      const drop = (head[this.outletAt[i]] - head[this.outletTo[i]]) / resistance[this.outlet[i]];
      flow[place[this.outlet[i]]] = this.outletSign[i] * (drop < 0 ? -Math.sqrt(-drop) : Math.sqrt(drop));
    }
  }
}

interface Fold {
  node: number;
  link: number;
  into: number;
}

/** Takes leaves off for as long as there are any that hang on a passive link. */
function foldLeaves(network: Network, incident: number[][], keptAnyway: Uint8Array) {
  const { nodes, links } = network;
  const degree = incident.map((list) => list.length);
  const gone = new Uint8Array(nodes.length);
  const order: Fold[] = [];
  const isLeaf = (v: number) =>
    nodes[v].head === undefined && !nodes[v].demand && !gone[v] && !keptAnyway[v] && degree[v] === 1;
  const queue = nodes.map((_, v) => v).filter(isLeaf);
  for (let next = 0; next < queue.length; next++) {
    const node = queue[next];
    if (!isLeaf(node)) continue;
    const link = incident[node].find((l) => !gone[other(links[l], node)]) as number;
    if (isPump(links[link])) continue;
    const into = other(links[link], node);
    gone[node] = 1;
    degree[into]--;
    order.push({ node, link, into });
    if (isLeaf(into)) queue.push(into);
  }
  return { order, gone };
}

function isPump(link: NetworkLink): boolean {
  return link.law.kind === 'curve' && link.law.speed !== undefined;
}

function other(link: NetworkLink, node: number): number {
  return link.from === node ? link.to : link.from;
}
