import { DEAD } from './chain-losses.js';
import type { Equations } from './equations.js';
import type { Network } from './network.js';

/** The flow of every link, m3/s, the way that it is drawn. */
export function flowsByLink(network: Network, equations: Equations): number[] {
  // Plain arrays: a typed array of more than a few numbers costs more to make than a small network takes to solve.
  const flows = new Array<number>(network.links.length);
  const { losses, flow } = equations;
  for (let i = 0; i < losses.count; i++) {
    const { members, signs } = losses.chains[i];
    const q = flow[i];
    for (let m = 0; m < members.length; m++) flows[members[m]] = signs[m] * q;
  }
  return flows;
}

/** The head at every node, m; within a chain by the losses of its links, one after another. */
export function headsByNode(network: Network, equations: Equations): number[] {
  const { nodes, links } = network;
  const { losses, flow, head, position } = equations;
  const heads = new Array<number>(nodes.length);
  for (let v = 0; v < nodes.length; v++) if (position[v] >= 0) heads[v] = head[position[v]];
  for (let i = 0; i < losses.count; i++) {
    const { members, signs, from } = losses.chains[i];
    if (members.length === 1) continue;
    const q = flow[i];
    const shut = losses.oneWay[i] > 0 && q < -DEAD;
    // What a shut link holds is told by the heads on its two sides, so they are followed up to it from either.
    let last = members.length - 1;
    if (shut) {
      while (!links[members[last]].oneWay) last--;
      let at = losses.chains[i].to;
      for (let m = members.length - 1; m > last; m--) {
        const before = signs[m] > 0 ? links[members[m]].from : links[members[m]].to;
        heads[before] = heads[at] + lossAlong(losses, i, m, q);
        at = before;
      }
    }
    let at = from;
    for (let m = 0; m < last; m++) {
      const beyond = signs[m] > 0 ? links[members[m]].to : links[members[m]].from;
      heads[beyond] = heads[at] - lossAlong(losses, i, m, q);
      at = beyond;
    }
  }
  return heads;
}

/** What one link of a chain loses the chain's way, m. */
function lossAlong(losses: Equations['losses'], chain: number, place: number, flow: number): number {
  const { members, signs } = losses.chains[chain];
  return signs[place] * losses.lossOf(members[place], signs[place] * flow);
}

/** The worst imbalance of a node at the flows, m3/s, and which node it is; -1 where none is out. */
export function imbalance(equations: Equations): { flowResidual: number; worstNode: number } {
  const { flow, tail, tip, demand, position, plan } = equations;
  const excess = new Array<number>(demand.length);
  for (let k = 0; k < demand.length; k++) excess[k] = -demand[k];
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
