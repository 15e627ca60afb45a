import { ChainLosses, LEAST_SLOPE } from './chain-losses.js';
import type { Chain } from './chains.js';
import { SparseSystem } from './matrix.js';
import type { Network } from './network.js';
import { type EliminationPlan, entryAt, planElimination } from './ordering.js';

/**
 * The equations of a network in arrays: mass at every node, energy along every chain, linearised at the present flows and
 * heads. Chains go by their grouped numbers (see ChainLosses), nodes by their position in the elimination; nodes of fixed
 * head stand behind it, where what the assembly adds to them is of no use and does no harm. Nodes within chains have no
 * place here.
 */
export class Equations {
  readonly losses: ChainLosses;
  readonly plan: EliminationPlan;
  /** By node; those of fixed head stand at `plan.size` and beyond, those within a chain nowhere: -1. */
  readonly position: Int32Array;
  /** By position: water drawn, m3/s. */
  readonly demand: Float64Array;
  /** By position, m. */
  readonly head: Float64Array;
  /** By chain, m3/s. */
  readonly flow: Float64Array;
  /** By chain: what the last sweep moved its flow by. */
  readonly step: Float64Array;
  /** By chain: positions of its ends. */
  readonly tail: Int32Array;
  readonly tip: Int32Array;
  /** By chain: its entry in the matrix; the one past the last where an end is fixed. */
  private readonly entry: Int32Array;
  private readonly system: SparseSystem;

  /** What the last `sweep` found. */
  worstHead = Number.NaN;
  worstCorrection = Number.NaN;
  /** Slope of the content along the last step, at its start and at its end. */
  descent = 0;
  along = 0;

  constructor(network: Network, chains: readonly Chain[]) {
    const { nodes, links } = network;
    const ends = new Uint8Array(nodes.length);
    for (const { from, to } of chains) {
      ends[from] = 1;
      ends[to] = 1;
    }
    const unknown = new Int32Array(nodes.length).fill(-1);
    let size = 0;
    nodes.forEach((node, index) => {
      if (node.head === undefined && ends[index]) unknown[index] = size++;
    });
    const pairs: [number, number][] = [];
    for (const { from, to } of chains) {
      if (unknown[from] >= 0 && unknown[to] >= 0) pairs.push([unknown[from], unknown[to]]);
    }
    this.plan = planElimination(size, pairs);
    this.position = new Int32Array(nodes.length).fill(-1);
    let room = size;
    nodes.forEach((node, v) => {
      if (node.head !== undefined) this.position[v] = room++;
      else if (unknown[v] >= 0) this.position[v] = this.plan.position[unknown[v]];
    });
    this.system = new SparseSystem(this.plan, room);
    this.losses = new ChainLosses(
      links,
      chains,
      ({ from, to }) => Math.min(this.position[from], this.position[to]),
      ({ to }) => nodes[to].head !== undefined,
    );
    const { count } = this.losses;
    this.tail = new Int32Array(count);
    this.tip = new Int32Array(count);
    this.entry = new Int32Array(count).fill(this.plan.row.length);
    for (let i = 0; i < count; i++) {
      const a = this.position[this.losses.chains[i].from];
      const b = this.position[this.losses.chains[i].to];
      this.tail[i] = a;
      this.tip[i] = b;
      if (a < size && b < size && a !== b) this.entry[i] = entryAt(this.plan, Math.min(a, b), Math.max(a, b));
    }
    this.demand = new Float64Array(room);
    this.head = new Float64Array(room);
    nodes.forEach((node, v) => {
      if (node.head !== undefined) this.head[this.position[v]] = node.head;
      else if (node.demand) this.demand[this.position[v]] = node.demand;
    });
    this.flow = new Float64Array(count);
    this.step = new Float64Array(count);
  }

  /** Linearises every law at the present flows and judges how far they are from a solution. */
  linearise(): void {
    const { conductance, count } = this.losses;
    // Where nothing conducts, no flow moves.
    for (let i = 0; i < count; i++) conductance[i] = 0;
    this.sweep();
  }

  /**
   * Solves for the heads at which the flows of the linearised laws balance at every node; returns the position of a zero
   * pivot, or -1.
   */
  solveHeads(): number {
    this.system.clear(this.demand);
    this.assemble();
    return this.system.solve(this.head);
  }

  /** Moves every flow to where its linearised law meets the new heads, linearises anew there and judges the outcome. */
  sweep(): void {
    this.sweepPlain();
    this.sweepOther();
  }

  /** Writes the system for the shift of every head. */
  private assemble(): void {
    const { flow, tail, tip, head, entry } = this;
    const { loss, conductance, outletEnd, count } = this.losses;
    const { diagonal, entries, rightSide } = this.system;
    // What ends at a fixed head adds to one node only.
    for (let i = 0; i < outletEnd; i++) {
      const a = tail[i];
      const c = conductance[i];
      diagonal[a] += c;
      rightSide[a] -= flow[i] + (head[a] - head[tip[i]] - loss[i]) * c;
    }
    for (let i = outletEnd; i < count; i++) {
      const a = tail[i];
      const b = tip[i];
      const c = conductance[i];
      const carried = flow[i] + (head[a] - head[b] - loss[i]) * c;
      diagonal[a] += c;
      diagonal[b] += c;
      entries[entry[i]] -= c;
      rightSide[a] -= carried;
      rightSide[b] += carried;
    }
  }

  /** Sweeps the plain chains, in a loop without a call, as a large network is little else. */
  private sweepPlain(): void {
    const { flow, step, tail, tip, head } = this;
    const { loss, conductance, resistance, linearBelow, plainEnd } = this.losses;
    let descent = 0;
    let along = 0;
    let worstHead = 0;
    let worstCorrection = 0;
    for (let i = 0; i < plainEnd; i++) {
      const fall = head[tail[i]] - head[tip[i]];
      const excess = fall - loss[i];
      const change = excess * conductance[i];
      const q = flow[i] + change;
      step[i] = change;
      flow[i] = q;
      descent += excess * change;
      const size = Math.abs(q);
      const linear = linearBelow[i];
      const r = resistance[i] * Math.max(size, linear);
      const slope = size < linear ? r : r + r;
      const lost = r * q;
      const c = 1 / Math.max(slope, LEAST_SLOPE);
      loss[i] = lost;
      conductance[i] = c;
      const residual = fall - lost;
      along -= residual * change;
      const out = Math.abs(residual);
      const correction = out * c;
      worstCorrection = Math.max(worstCorrection, correction);
      worstHead = Math.max(worstHead, out);
    }
    this.descent = descent;
    this.along = along;
    this.worstHead = worstHead;
    this.worstCorrection = worstCorrection;
  }

  /** The same for all others, after those. */
  private sweepOther(): void {
    const { flow, step, tail, tip, head, losses } = this;
    const { loss, conductance, shutFrom, plainEnd, count } = losses;
    let { descent, along, worstHead, worstCorrection } = this;
    for (let i = plainEnd; i < count; i++) {
      const fall = head[tail[i]] - head[tip[i]];
      const excess = fall - loss[i];
      const change = excess * conductance[i];
      step[i] = change;
      flow[i] += change;
      descent += excess * change;
      losses.evaluateAt(i, flow[i]);
      const residual = fall - loss[i];
      along -= residual * change;
      const out = Math.abs(residual);
      const correction = out * Math.abs(conductance[i]);
      worstCorrection = Math.max(worstCorrection, correction);
      // A shut one-way link is exact by its law; its rounding error in metres means nothing.
      if (conductance[i] > shutFrom) worstHead = Math.max(worstHead, out);
    }
    this.descent = descent;
    this.along = along;
    this.worstHead = worstHead;
    this.worstCorrection = worstCorrection;
  }

  /** The chain that is furthest out of balance, or -1. */
  worstChain(): number {
    const { tail, tip, head } = this;
    const { loss, conductance, shutFrom, count } = this.losses;
    let worst = -1;
    let most = 0;
    for (let i = 0; i < count; i++) {
      const out = Math.abs(head[tail[i]] - head[tip[i]] - loss[i]);
      if (!(out > most && conductance[i] > shutFrom)) continue;
      most = out;
      worst = i;
    }
    return worst;
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
}
