import type { Network } from '../../src/network/network.js';
import { EPANET_SHUT_SLOPE } from './epanet.js';
import { GPM, HEAD_PER_PSI } from './units.js';

interface Answer {
  heads: ArrayLike<number>;
  flows: ArrayLike<number>;
}

interface OtherAnswer extends Answer {
  shut: readonly number[];
}

export interface Difference {
  /** The largest difference of a head, psi, and where. */
  psi: number;
  node: string;
  /** The largest difference of a flow, gpm, and where. */
  gpm: number;
  link: string;
  /** Nodes whose head nothing fixes, which were left out. */
  trapped: number;
}

/** A flow below this through a one-way link is none, m3/s: what EPANET lets past a shut link at 1,000 ft (0.0045 gpm). */
const NO_FLOW = 3e-7;

/**
 * Compares every flow, and the head of every node that steady flow fixes: that a way of links joins to a fixed head, none
 * of them shut or one-way without flow. Elsewhere water is trapped, and any head above (or between) satisfies the equations.
 */
export function compare(network: Network, ours: Answer, theirs: OtherAnswer): Difference {
  const joined = joinedToHead(network, theirs);
  const difference: Difference = { psi: 0, node: '', gpm: 0, link: '', trapped: 0 };
  network.nodes.forEach((node, index) => {
    if (!joined.has(index)) {
      difference.trapped += 1;
      return;
    }
    const psi = Math.abs(ours.heads[index] - theirs.heads[index]) / HEAD_PER_PSI;
    // Written so that a number that is none counts as a difference.
    if (!(psi <= difference.psi)) Object.assign(difference, { psi, node: node.name });
  });
  network.links.forEach((link, index) => {
    const gpm = Math.abs(ours.flows[index] - theirs.flows[index]) / GPM;
    if (!(gpm <= difference.gpm)) Object.assign(difference, { gpm, link: link.name });
  });
  return difference;
}

function joinedToHead(network: Network, theirs: OtherAnswer): Set<number> {
  const joined = new Set<number>();
  const waiting: number[] = [];
  const join = (node: number) => {
    if (joined.has(node)) return;
    joined.add(node);
    waiting.push(node);
  };
  const around = network.nodes.map(() => [] as number[]);
  network.links.forEach((link, index) => {
    if (theirs.shut.includes(index) || (link.oneWay && Math.abs(theirs.flows[index]) < NO_FLOW)) return;
    around[link.from].push(link.to);
    around[link.to].push(link.from);
  });
  network.nodes.forEach((node, index) => {
    if (node.head !== undefined) join(index);
  });
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) around[node].forEach(join);
  return joined;
}

/** The same network with the leak that EPANET lets through each link it holds shut, so that both solve the same equations. */
export function withLeaks(network: Network, shut: readonly number[]): Network {
  const links = [...network.links];
  for (const index of shut) {
    const { name, from, to } = links[index];
    links[index] = {
      name,
      from,
      to,
      // Linear over any flow that can occur.
      law: { kind: 'resistance', resistance: EPANET_SHUT_SLOPE, linearBelow: 1 },
    };
  }
  return { nodes: network.nodes, links };
}
