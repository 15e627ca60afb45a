import type { Network, NetworkFailure } from './network.js';

/**
 * Finds the parts of a network whose heads nothing fixes: no way, open or shut, leads from them to a water surface or
 * the open air, so that no steady answer exists.
 */
export function findUnsupported(network: Network): NetworkFailure | undefined {
  const { nodes, links } = network;
  const supported = reachable(
    network,
    links.map((_, index) => index),
  );
  const cut = nodes.filter((_, index) => !supported[index]);
  if (cut.length === 0) return undefined;
  return {
    code: 'no_source',
    where: cut.slice(0, 5).map((node) => node.name),
    message: `${cut[0].name} has no way to any water surface or to the open air, so nothing fixes its pressure`,
    action: 'Join it to the rest of the layout, or take it out.',
  };
}

/** Nodes that lie behind shut one-way links only: water is trapped there, and its pressure cannot be told. */
export function trappedNodes(network: Network, flows: ArrayLike<number>): number[] {
  const open = network.links
    .map((_, index) => index)
    .filter((l) => !(network.links[l].oneWay && flows[l] <= 0));
  const supported = reachable(network, open);
  return network.nodes.map((_, index) => index).filter((index) => !supported[index]);
}

function reachable(network: Network, through: number[]): Uint8Array {
  const { nodes, links } = network;
  const seen = new Uint8Array(nodes.length);
  const around: number[][] = nodes.map(() => []);
  for (const l of through) {
    around[links[l].from].push(links[l].to);
    around[links[l].to].push(links[l].from);
  }
  const stack: number[] = [];
  nodes.forEach((node, index) => {
    if (node.head !== undefined) {
      seen[index] = 1;
      stack.push(index);
    }
  });
  while (stack.length > 0) {
    for (const next of around[stack.pop() as number]) {
      if (!seen[next]) {
        seen[next] = 1;
        stack.push(next);
      }
    }
  }
  return seen;
}
