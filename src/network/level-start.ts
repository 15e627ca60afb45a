import { LEAST_SLOPE } from './chain-losses.js';
import type { Equations } from './equations.js';

/** The part of a pump's runout that a start takes it to move. */
const MIDDLING = 0.6;

/** Where no pump tells how much flows, a start is made from this, m3/s (80 gpm). */
const USUAL_FLOW = 5e-3;

/**
 * A first guess that asks nothing of the network's shape: every passive chain taken as a straight line through the origin and
 * every pump as its tangent at a middling flow. The linear network that follows gives each flow its direction.
 */
export class LevelStart {
  private readonly equations: Equations;
  /** By chain: one over the slope of its straight line, m3/s per m. */
  private readonly straight: number[] = [];
  /** The flow at which those lines meet the laws, m3/s. */
  private usual = USUAL_FLOW;
  /** By pump, in the order of `losses.pumps`: its chain's tangent at full speed. */
  private readonly tangents: Tangent[];

  constructor(equations: Equations) {
    this.equations = equations;
    const { losses } = equations;
    this.tangents = losses.pumps.map((link) => {
      const chain = losses.chainOf[link];
      const speed = losses.laws.speed[link];
      const flow = MIDDLING * runout(equations, chain);
      losses.flow[chain] = flow;
      losses.evaluateChain(chain);
      // By the affinity laws, which leave out of account what the chain has beside its pump: enough for a guess.
      return {
        flow: flow / speed,
        loss: losses.loss[chain] / speed ** 2,
        conductance: losses.conductance[chain] * speed,
      };
    });
  }

  /** The most that a pump moves at a middling flow, m3/s, or a usual flow where there is no pump. */
  get usualFlow(): number {
    const { pumps, laws } = this.equations.losses;
    const most = this.tangents.reduce((m, { flow }, p) => Math.max(m, flow * laws.speed[pumps[p]]), 0);
    return most || USUAL_FLOW;
  }

  /** Draws every passive chain's line to its loss at a flow, m3/s; serves until a resistance changes. */
  prepare(flow: number): void {
    const { losses } = this.equations;
    this.usual = flow;
    for (let i = 0; i < losses.count; i++) {
      losses.flow[i] = flow;
      losses.evaluateChain(i);
      this.straight[i] = 1 / Math.max(losses.loss[i] / flow, LEAST_SLOPE);
    }
  }

  /** What a chain resists that flow with, m per (m3/s)^2; `flow` as it was prepared for. */
  resistanceAt(chain: number, flow: number): number {
    return 1 / (this.straight[chain] * flow);
  }

  /** Fills flows and heads, and leaves the equations linearised at them. */
  begin(): void {
    const { equations, tangents, straight, usual } = this;
    const { losses, flow, head, tail, tip } = equations;
    const { pumps, laws, loss, conductance, chainOf, count } = losses;
    for (let i = 0; i < count; i++) {
      flow[i] = 0;
      loss[i] = 0;
      conductance[i] = straight[i];
    }
    for (let p = 0; p < tangents.length; p++) {
      const chain = chainOf[pumps[p]];
      const speed = laws.speed[pumps[p]];
      flow[chain] = tangents[p].flow * speed;
      loss[chain] = tangents[p].loss * speed * speed;
      conductance[chain] = tangents[p].conductance / speed;
    }
    equations.workspace.solveHeads();
    for (let i = 0; i < count; i++) {
      const fall = head[tail[i]] - head[tip[i]];
      if (losses.isPump(i)) flow[i] += (fall - loss[i]) * conductance[i];
      else {
        // Where the straight line is far from the law its flow is too, and Newton's method would come nearer by halves only.
        const squared = Math.abs(fall) * straight[i] * usual;
        flow[i] = fall < 0 ? -Math.sqrt(squared) : Math.sqrt(squared);
      }
    }
    equations.linearise();
  }
}

/** The loss of a pump's chain at a flow, and one over its slope there. */
interface Tangent {
  flow: number;
  loss: number;
  conductance: number;
}

/** The flow at which a chain with a pump has no head left, m3/s, to a factor of two. */
function runout({ losses }: Equations, chain: number): number {
  let flow = 1e-4;
  for (; flow < 10; flow *= 2) {
    losses.flow[chain] = flow;
    losses.evaluateChain(chain);
    if (losses.loss[chain] >= 0) break;
  }
  return flow;
}
