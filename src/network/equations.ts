import { ChainLosses } from './chain-losses.js';
import type { Chain } from './chains.js';
import type { Network } from './network.js';
import { type EliminationPlan, entryAt, planElimination } from './ordering.js';
import { Workspace } from './workspace.js';

/**
 * The equations of a network in arrays: mass at every node, energy along every chain, linearised at the present flows and
 * heads. Chains go by their grouped numbers (see ChainLosses), nodes by their position in the elimination; nodes of fixed
 * head stand behind it, where what the assembly adds to them is of no use and does no harm. Nodes within chains have no
 * place here.
 */
export class Equations {
  readonly losses: ChainLosses;
  readonly plan: EliminationPlan;
  readonly workspace: Workspace;
  /** By node; those of fixed head stand at `plan.size` and beyond, those within a chain nowhere: -1. */
  readonly position: Int32Array;
  // Of the workspace.
  readonly demand: Float64Array;
  readonly head: Float64Array;
  readonly flow: Float64Array;
  readonly step: Float64Array;
  readonly tail: Int32Array;
  readonly tip: Int32Array;
  /** By position, to reckon with: water that comes in and does not go out, m3/s. */
  readonly excess: Float64Array;

  /** What the last step found. */
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
    const workspace = new Workspace(chains.length, room, this.plan);
    this.workspace = workspace;
    this.losses = new ChainLosses(
      links,
      chains,
      workspace,
      ({ from, to }) => Math.min(this.position[from], this.position[to]),
      ({ to }) => nodes[to].head !== undefined,
    );
    this.demand = workspace.demand;
    this.head = workspace.head;
    this.flow = workspace.flow;
    this.step = workspace.step;
    this.tail = workspace.tail;
    this.tip = workspace.tip;
    this.excess = workspace.rightSide;
    const { entry } = workspace;
    entry.fill(this.plan.row.length);
    for (let i = 0; i < chains.length; i++) {
      const a = this.position[this.losses.chains[i].from];
      const b = this.position[this.losses.chains[i].to];
      this.tail[i] = a;
      this.tip[i] = b;
      if (a < size && b < size && a !== b) entry[i] = entryAt(this.plan, Math.min(a, b), Math.max(a, b));
    }
    nodes.forEach((node, v) => {
      if (node.head !== undefined) this.head[this.position[v]] = node.head;
      else if (node.demand) this.demand[this.position[v]] = node.demand;
    });
  }

  /** Linearises every law at the present flows. */
  linearise(): void {
    this.workspace.linearise();
    this.lineariseOthers();
  }

  /** Linearises the laws that the workspace leaves to this, but those of chains where that is done already. */
  lineariseOthers(done?: Uint8Array): void {
    const { losses } = this;
    for (let i = losses.plainEnd; i < losses.count; i++) if (done?.[i] !== 1) losses.evaluateChain(i);
  }

  /**
   * One step of Newton's method: solves for the heads at which the flows of the linearised laws balance at every node, moves
   * every flow to where its linearised law meets them, linearises anew there and judges the outcome. Returns the position of
   * a zero pivot, and has done nothing then; or -1.
   */
  advance(): number {
    const zeroPivot = this.workspace.advance();
    if (zeroPivot < 0) this.sweepOthers();
    return zeroPivot;
  }

  /** Does with the chains that are not plain what the workspace has done with those. */
  private sweepOthers(): void {
    const { flow, step, tail, tip, head, losses } = this;
    const { loss, conductance, shutFrom, plainEnd, count } = losses;
    const { found } = this.workspace;
    let descent = found[0];
    let along = found[1];
    let worstHead = found[2];
    let worstCorrection = found[3];
    for (let i = plainEnd; i < count; i++) {
      const fall = head[tail[i]] - head[tip[i]];
      const excess = fall - loss[i];
      const change = excess * conductance[i];
      step[i] = change;
      flow[i] += change;
      descent += excess * change;
      losses.evaluateChain(i);
      const residual = fall - loss[i];
      along -= residual * change;
      const out = Math.abs(residual);
      worstCorrection = Math.max(worstCorrection, out * Math.abs(conductance[i]));
      // A shut one-way link is exact by its law; its rounding error in metres means nothing.
      if (conductance[i] > shutFrom) worstHead = Math.max(worstHead, out);
    }
    this.descent = descent;
    this.along = along;
    this.worstHead = worstHead;
    this.worstCorrection = worstCorrection;
  }

  /** The chain that is furthest out of balance, or -1, and how far it is, m. */
  worst(): { chain: number; head: number } {
    const { tail, tip, head } = this;
    const { loss, conductance, shutFrom, count } = this.losses;
    const worst = { chain: -1, head: 0 };
    for (let i = 0; i < count; i++) {
      const out = Math.abs(head[tail[i]] - head[tip[i]] - loss[i]);
      if (!(out > worst.head && conductance[i] > shutFrom)) continue;
      worst.head = out;
      worst.chain = i;
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
