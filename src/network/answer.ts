import { DEAD } from './chain-losses.js';
import type { Equations } from './equations.js';
import type { Network } from './network.js';

/** The flow of a link, m3/s, the way that it is drawn. */
export function flowOf({ losses, flow }: Equations, link: number): number {
  return losses.signOf[link] * flow[losses.chainOf[link]];
}

/** An array longer than this V8 makes as a dictionary, unless it is filled at once. */
const LONG = 32_000;

/** So many numbers to be filled in: a plain array, as a typed one of a few costs more to make than a small network takes to solve. */
function room(length: number): number[] {
  return length > LONG ? new Array<number>(length).fill(0) : new Array<number>(length);
}

/** The flow of every link. */
export function flowsByLink({ losses, flow }: Equations): number[] {
  const { chainOf, signOf } = losses;
  const flows = room(chainOf.length);
  for (let l = 0; l < flows.length; l++) flows[l] = signOf[l] * flow[chainOf[l]];
  return flows;
}

/** The head at a node, m; within a chain by the losses of its links, one after another. */
export function headOf(network: Network, equations: Equations, node: number): number {
  const { head, position, losses } = equations;
  if (position[node] >= 0) return head[position[node]];
  const heads: number[] = [];
  const link = network.links.findIndex(({ from, to }) => from === node || to === node);
  fillChain(network, equations, losses.chainOf[link], heads);
  return heads[node];
}

/** The head at every node. */
export function headsByNode(network: Network, equations: Equations): number[] {
  const { losses, head, position } = equations;
  const heads = room(position.length);
  for (let v = 0; v < heads.length; v++) heads[v] = position[v] >= 0 ? head[position[v]] : Number.NaN;
  for (let i = 0; i < losses.count; i++) {
    if (losses.chains[i].members.length > 1) fillChain(network, equations, i, heads);
  }
  return heads;
}

/** Fills in the heads within a chain. */
function fillChain({ links }: Network, equations: Equations, chain: number, heads: number[]): void {
  const { losses, flow, head, tail, tip } = equations;
  const { members, signs } = losses.chains[chain];
  const q = flow[chain];
  // What a shut link holds is told by the heads on its two sides, so they are followed up to it from either.
  let last = members.length - 1;
  if (q < -DEAD && losses.oneWay[chain] > 0) {
    let at = head[tip[chain]];
    for (; !links[members[last]].oneWay; last--) {
      const link = members[last];
      at += signs[last] * losses.lossOf(link, signs[last] * q);
      heads[signs[last] > 0 ? links[link].from : links[link].to] = at;
    }
  }
  let at = head[tail[chain]];
  for (let m = 0; m < last; m++) {
    const link = members[m];
    at -= signs[m] * losses.lossOf(link, signs[m] * q);
    heads[signs[m] > 0 ? links[link].to : links[link].from] = at;
  }
}

/** The worst imbalance of a node at the flows, m3/s, and which node it is; -1 where none is out. */
export function imbalance(equations: Equations): { flowResidual: number; worstNode: number } {
  const { flow, tail, tip, demand, position, plan, excess } = equations;
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
