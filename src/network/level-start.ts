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
  /** By pump, in the order of `losses.pumps`: a middling flow of its chain, over its speed. */
  private readonly middling: readonly number[];

  constructor(equations: Equations) {
    this.equations = equations;
    const { losses } = equations;
    this.middling = losses.pumps.map((link) => {
      const speed = losses.laws.speed[link];
      return (MIDDLING * runout(equations, losses.chainOf[link])) / speed;
    });
  }

  /** The most that a pump moves at a middling flow, m3/s, or a usual flow where there is no pump. */
  get usualFlow(): number {
    const { pumps, laws } = this.equations.losses;
    let most = 0;
    for (let p = 0; p < pumps.length; p++) most = Math.max(most, this.middling[p] * laws.speed[pumps[p]]);
    return most || USUAL_FLOW;
  }

  /** Fills flows and heads, and leaves the equations linearised at them. */
  begin(): void {
    const { equations, middling } = this;
    const { losses, flow } = equations;
    flow.fill(this.usualFlow);
    for (let p = 0; p < middling.length; p++) {
      const link = losses.pumps[p];
      flow[losses.chainOf[link]] = middling[p] * losses.laws.speed[link];
    }
    losses.evaluate(flow);
    for (let i = 0; i < losses.count; i++) {
      if (losses.isPump(i)) continue;
      losses.loss[i] = Math.max(losses.loss[i], LEAST_SLOPE * flow[i]);
      losses.conductance[i] = flow[i] / losses.loss[i];
    }
    equations.assemble();
    equations.solveHeads();
    equations.sweep();
  }
}

/** The flow at which a chain with a pump has no head left, m3/s, to a factor of two. */
function runout({ losses }: Equations, chain: number): number {
  let flow = 1e-4;
  for (; flow < 10; flow *= 2) {
    losses.evaluateAt(chain, flow);
    if (losses.loss[chain] >= 0) break;
  }
  return flow;
}
