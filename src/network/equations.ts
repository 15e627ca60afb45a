import { LinkLosses, SHUT_SLOPE } from './losses.js';
import { SparseSystem } from './matrix.js';
import type { Network } from './network.js';
import { type EliminationPlan, entryAt, planElimination } from './ordering.js';

/**
 * The equations of a network in arrays: mass at every node, energy along every link, linearised at the present flows.
 * Links go by their grouped numbers (see LinkLosses), unknown heads by their position in the elimination.
 */
export class Equations {
  readonly losses: LinkLosses;
  readonly plan: EliminationPlan;
  /** By node: its position among the unknown heads, or -1 where its head is fixed. */
  readonly position: Int32Array;
  /** By node: its fixed head, m. */
  readonly fixedHead: Float64Array;
  /** By position: water drawn, m3/s. */
  readonly demand: Float64Array;
  readonly head: Float64Array;
  /** By link. */
  readonly flow: Float64Array;
  readonly step: Float64Array;
  private readonly excess: Float64Array;
  /** By link: positions of its ends, or -1 where the head is fixed. */
  readonly tail: Int32Array;
  readonly tip: Int32Array;
  private readonly entry: Int32Array;
  private readonly tailHead: Float64Array;
  private readonly tipHead: Float64Array;
  private readonly system: SparseSystem;
  /** By fixed node: the links that leave it, and the complements of those that reach it. */
  private readonly endsAt: number[][];

  /** What the last `measure` found. */
  worstHead = Number.NaN;
  worstCorrection = Number.NaN;
  worstLink = -1;

  constructor(network: Network) {
    const { nodes, links } = network;
    const unknown = new Int32Array(nodes.length).fill(-1);
    let size = 0;
    nodes.forEach((node, index) => {
      if (node.head === undefined) unknown[index] = size++;
    });
    const pairs: [number, number][] = [];
    for (const link of links) {
      if (unknown[link.from] >= 0 && unknown[link.to] >= 0)
        pairs.push([unknown[link.from], unknown[link.to]]);
    }
    this.plan = planElimination(size, pairs);
    this.system = new SparseSystem(this.plan);
    this.position = unknown.map((u) => (u < 0 ? -1 : this.plan.position[u]));
    this.losses = new LinkLosses(links, (link) => Math.max(this.position[link.from], this.position[link.to]));
    const count = links.length;
    this.tail = new Int32Array(count);
    this.tip = new Int32Array(count);
    this.entry = new Int32Array(count).fill(-1);
    this.tailHead = new Float64Array(count);
    this.tipHead = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const link = links[this.losses.linkOf[i]];
      const a = this.position[link.from];
      const b = this.position[link.to];
      this.tail[i] = a;
      this.tip[i] = b;
      if (a >= 0 && b >= 0 && a !== b) this.entry[i] = entryAt(this.plan, Math.min(a, b), Math.max(a, b));
    }
    this.endsAt = nodes.map(() => []);
    for (let i = 0; i < count; i++) {
      const link = links[this.losses.linkOf[i]];
      if (this.tail[i] < 0) this.endsAt[link.from].push(i);
      if (this.tip[i] < 0) this.endsAt[link.to].push(~i);
    }
    this.demand = new Float64Array(size);
    this.fixedHead = new Float64Array(nodes.length);
    nodes.forEach((node, index) => {
      if (this.position[index] >= 0) this.demand[this.position[index]] = node.demand ?? 0;
      else this.setHead(index, node.head as number);
    });
    this.flow = new Float64Array(count);
    this.step = new Float64Array(count);
    this.head = new Float64Array(size);
    this.excess = new Float64Array(size);
  }

  setHead(node: number, head: number): void {
    this.fixedHead[node] = head;
    for (const end of this.endsAt[node]) {
      if (end >= 0) this.tailHead[end] = head;
      else this.tipHead[~end] = head;
    }
  }

  /** Residuals at the flows with the heads of the last solve; returns the slope of the content along the last step. */
  measure(): number {
    const { flow, step, tail, tip, tailHead, tipHead, head } = this;
    const { loss, slope, count } = this.losses;
    let worstHead = 0;
    let worstLink = -1;
    let worstCorrection = 0;
    let along = 0;
    for (let i = 0; i < count; i++) {
      const a = tail[i];
      const b = tip[i];
      const residual = loss[i] - ((a < 0 ? tailHead[i] : head[a]) - (b < 0 ? tipHead[i] : head[b]));
      along += residual * step[i];
      const size = Math.abs(residual);
      const correction = size / Math.abs(slope[i]);
      if (correction > worstCorrection) worstCorrection = correction;
      // A shut one-way link is exact by its law; its rounding error in metres means nothing.
      if (size > worstHead && !(flow[i] < 0 && slope[i] === SHUT_SLOPE)) {
        worstHead = size;
        worstLink = i;
      }
    }
    this.worstHead = worstHead;
    this.worstLink = worstLink;
    this.worstCorrection = worstCorrection;
    return along;
  }

  /** Solves the linearised equations for the heads; returns the position of a zero pivot, or -1. */
  solveHeads(): number {
    const { flow, tail, tip, tailHead, tipHead, entry, system, demand } = this;
    const { loss, slope, count } = this.losses;
    const { diagonal, entries, rightSide } = system;
    diagonal.fill(0);
    entries.fill(0);
    for (let k = 0; k < demand.length; k++) rightSide[k] = -demand[k];
    for (let i = 0; i < count; i++) {
      const conductance = 1 / slope[i];
      const balance = flow[i] - conductance * loss[i];
      const a = tail[i];
      const b = tip[i];
      if (a >= 0) {
        diagonal[a] += conductance;
        if (b >= 0) {
          diagonal[b] += conductance;
          entries[entry[i]] -= conductance;
          rightSide[a] -= balance;
          rightSide[b] += balance;
        } else rightSide[a] -= balance - conductance * tipHead[i];
      } else if (b >= 0) {
        diagonal[b] += conductance;
        rightSide[b] += balance + conductance * tailHead[i];
      }
    }
    const zeroPivot = system.solve();
    if (zeroPivot < 0) this.head.set(rightSide);
    return zeroPivot;
  }

  /** Moves the flows to where the linearised laws meet the new heads; returns how steeply the content falls. */
  advance(): number {
    const { flow, step, tail, tip, tailHead, tipHead, head } = this;
    const { loss, slope, count } = this.losses;
    let descent = 0;
    for (let i = 0; i < count; i++) {
      const a = tail[i];
      const b = tip[i];
      const drop = (a < 0 ? tailHead[i] : head[a]) - (b < 0 ? tipHead[i] : head[b]);
      const change = (drop - loss[i]) / slope[i];
      step[i] = change;
      flow[i] += change;
      descent += slope[i] * change * change;
    }
    return descent;
  }

  /** The worst imbalance of a node at the flows, m3/s, and which node it is. */
  imbalance(): { flowResidual: number; worstNode: number } {
    const { flow, tail, tip, excess, demand, position } = this;
    for (let k = 0; k < excess.length; k++) excess[k] = -demand[k];
    for (let i = 0; i < flow.length; i++) {
      if (tail[i] >= 0) excess[tail[i]] -= flow[i];
      if (tip[i] >= 0) excess[tip[i]] += flow[i];
    }
    let flowResidual = 0;
    let worst = -1;
    for (let k = 0; k < excess.length; k++) {
      const size = Math.abs(excess[k]);
      if (size > flowResidual) {
        flowResidual = size;
        worst = k;
      }
    }
    return { flowResidual, worstNode: worst < 0 ? -1 : position.indexOf(worst) };
  }

  // Plain arrays: a typed array of more than a few numbers costs more to make than a small network takes to solve.
  flowsByLink(): number[] {
    const { flow } = this;
    const { numberOf } = this.losses;
    const flows: number[] = [];
    for (let l = 0; l < numberOf.length; l++) flows.push(flow[numberOf[l]]);
    return flows;
  }

  headsByNode(): number[] {
    const { position, head, fixedHead } = this;
    const heads: number[] = [];
    for (let v = 0; v < position.length; v++) heads.push(position[v] < 0 ? fixedHead[v] : head[position[v]]);
    return heads;
  }
}
