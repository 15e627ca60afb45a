import { DEAD, LEAST_SLOPE, LinkLosses, SHUT_SLOPE } from './losses.js';
import { SparseSystem } from './matrix.js';
import type { Network } from './network.js';
import { type EliminationPlan, entryAt, planElimination } from './ordering.js';

/** A shut one-way link is exact by its law; its rounding error in metres means nothing. */
const SHUT_CONDUCTANCE = 1 / SHUT_SLOPE;

/**
 * The equations of a network in arrays: mass at every node, energy along every link, linearised at the present flows.
 * Links go by their grouped numbers (see LinkLosses), nodes by their position in the elimination; nodes of fixed head
 * stand behind it, where what the assembly adds to them is of no use and does no harm.
 */
export class Equations {
  readonly losses: LinkLosses;
  readonly plan: EliminationPlan;
  /** By node; those of fixed head stand at `plan.size` and beyond. */
  readonly position: Int32Array;
  /** By position: water drawn, m3/s. */
  readonly demand: Float64Array;
  /** By position, m. */
  readonly head: Float64Array;
  /** By link, m3/s. */
  readonly flow: Float64Array;
  /** By link: what the last sweep moved its flow by. */
  readonly step: Float64Array;
  /** By link: positions of its ends. */
  private readonly tail: Int32Array;
  private readonly tip: Int32Array;
  /** By link: its entry in the matrix; the one past the last where an end is fixed. */
  private readonly entry: Int32Array;
  /** By link: 1 where that end is fixed. */
  private readonly tailFixed: Float64Array;
  private readonly tipFixed: Float64Array;
  private readonly system: SparseSystem;
  private readonly excess: Float64Array;

  /** What the last `sweep` or `measure` found. */
  worstHead = Number.NaN;
  worstCorrection = Number.NaN;
  worstLink = -1;
  /** Slope of the content along the last step, at its start and at its end. */
  descent = 0;
  along = 0;

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
    this.position = new Int32Array(nodes.length);
    let fixed = size;
    for (let v = 0; v < nodes.length; v++)
      this.position[v] = unknown[v] < 0 ? fixed++ : this.plan.position[unknown[v]];
    this.system = new SparseSystem(this.plan, nodes.length);
    this.losses = new LinkLosses(links, (link) => Math.min(this.position[link.from], this.position[link.to]));
    const count = links.length;
    this.tail = new Int32Array(count);
    this.tip = new Int32Array(count);
    this.entry = new Int32Array(count).fill(this.plan.row.length);
    this.tailFixed = new Float64Array(count);
    this.tipFixed = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const link = links[this.losses.linkOf[i]];
      const a = this.position[link.from];
      const b = this.position[link.to];
      this.tail[i] = a;
      this.tip[i] = b;
      this.tailFixed[i] = a < size ? 0 : 1;
      this.tipFixed[i] = b < size ? 0 : 1;
      if (a < size && b < size && a !== b) this.entry[i] = entryAt(this.plan, Math.min(a, b), Math.max(a, b));
    }
    this.demand = new Float64Array(nodes.length);
    this.head = new Float64Array(nodes.length);
    nodes.forEach((node, index) => {
      if (node.head === undefined) this.demand[this.position[index]] = node.demand ?? 0;
      else this.head[this.position[index]] = node.head;
    });
    this.flow = new Float64Array(count);
    this.step = new Float64Array(count);
    this.excess = new Float64Array(nodes.length);
  }

  isFixed(node: number): boolean {
    return this.position[node] >= this.plan.size;
  }

  /** Linearises every law at the present flows and writes the system of heads that follows. */
  linearise(): void {
    // With no conductance a sweep moves no flow.
    this.losses.conductance.fill(0);
    this.sweep();
  }

  /** Writes the system of heads from the losses and conductances as they are. */
  assemble(): void {
    const { flow, tail, tip, head, entry, tailFixed, tipFixed, system } = this;
    const { loss, conductance, count } = this.losses;
    const { diagonal, entries, rightSide } = system;
    system.clear(this.demand);
    for (let i = 0; i < count; i++) {
      const a = tail[i];
      const b = tip[i];
      const c = conductance[i];
      const balance = flow[i] - c * loss[i];
      diagonal[a] += c;
      diagonal[b] += c;
      entries[entry[i]] -= c;
      rightSide[a] -= balance - c * tipFixed[i] * head[b];
      rightSide[b] += balance + c * tailFixed[i] * head[a];
    }
  }

  /** Solves for the heads; returns the position of a zero pivot, or -1. */
  solveHeads(): number {
    return this.system.solve(this.head);
  }

  /**
   * Moves every flow to where its linearised law meets the new heads, judges the outcome, and linearises anew: one pass
   * over the links, since passing over them is what a large network costs. The quadratic law is written out here once
   * more for the same reason.
   */
  sweep(): void {
    const { flow, step, tail, tip, head, entry, tailFixed, tipFixed, system, losses } = this;
    const { loss, conductance, oneWay, resistance, linearBelow, powerFrom, count } = losses;
    const { diagonal, entries, rightSide } = system;
    system.clear(this.demand);
    let descent = 0;
    let along = 0;
    let worstHead = 0;
    let worstCorrection = 0;
    let worstLink = -1;
    for (let i = 0; i < count; i++) {
      const a = tail[i];
      const b = tip[i];
      const drop = head[a] - head[b];
      const excess = drop - loss[i];
      const change = excess * conductance[i];
      const q = flow[i] + change;
      flow[i] = q;
      step[i] = change;
      descent += excess * change;
      let c: number;
      let lost: number;
      if (i >= powerFrom || (q < -DEAD && oneWay[i] === 1)) {
        losses.evaluateAt(i, q);
        c = conductance[i];
        lost = loss[i];
      } else {
        const size = q < 0 ? -q : q;
        const linear = linearBelow[i];
        const r = resistance[i] * (size < linear ? linear : size);
        const steep = size < linear ? r : r + r;
        lost = r * q;
        c = 1 / (steep < LEAST_SLOPE ? LEAST_SLOPE : steep);
        loss[i] = lost;
        conductance[i] = c;
      }
      const residual = lost - drop;
      along += residual * change;
      const size = residual < 0 ? -residual : residual;
      const correction = size * (c < 0 ? -c : c);
      if (correction > worstCorrection) worstCorrection = correction;
      if (size > worstHead && c !== SHUT_CONDUCTANCE) {
        worstHead = size;
        worstLink = i;
      }
      const balance = q - c * lost;
      diagonal[a] += c;
      diagonal[b] += c;
      entries[entry[i]] -= c;
      rightSide[a] -= balance - c * tipFixed[i] * head[b];
      rightSide[b] += balance + c * tailFixed[i] * head[a];
    }
    this.descent = descent;
    this.along = along;
    this.worstHead = worstHead;
    this.worstCorrection = worstCorrection;
    this.worstLink = worstLink;
  }

  /** The slope of the content along the last step at the present flows, for which the losses stand ready. */
  measure(): number {
    const { step, tail, tip, head } = this;
    const { loss, count } = this.losses;
    let along = 0;
    for (let i = 0; i < count; i++) along += (loss[i] - (head[tail[i]] - head[tip[i]])) * step[i];
    return along;
  }

  /** The greatest of the heads either way, m. */
  greatestHead(): number {
    return this.head.reduce((most, head) => Math.max(most, Math.abs(head)), 0);
  }

  /** The worst imbalance of a node at the flows, m3/s, and which node it is. */
  imbalance(): { flowResidual: number; worstNode: number } {
    const { flow, tail, tip, excess, demand, position, plan } = this;
    for (let k = 0; k < plan.size; k++) excess[k] = -demand[k];
    for (let i = 0; i < flow.length; i++) {
      excess[tail[i]] -= flow[i];
      excess[tip[i]] += flow[i];
    }
    let flowResidual = 0;
    let worst = -1;
    for (let k = 0; k < plan.size; k++) {
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
    return gather(this.flow, this.losses.numberOf);
  }

  headsByNode(): number[] {
    return gather(this.head, this.position);
  }
}

function gather(values: Float64Array, from: Int32Array): number[] {
  const gathered = new Array<number>(from.length);
  for (let i = 0; i < from.length; i++) gathered[i] = values[from[i]];
  return gathered;
}
