import type { Network, NetworkFailure } from './network.js';

/**
 * Finds the parts of a network whose heads nothing fixes: no way, open or shut, leads from them to a water surface or
 * the open air, so that no steady answer exists.
 */
export function findUnsupported(network: Network): NetworkFailure | undefined {
  const { nodes } = network;
  const supported = reachable(network);
  const cut = nodes.filter((_, index) => !supported[index]);
  if (cut.length === 0) return undefined;
  return {
    code: 'no_source',
    where: cut.slice(0, 5).map((node) => node.name),
    message: `${cut[0].name} has no way to any water surface or to the open air, so nothing fixes its pressure`,
    action: 'Join it to the rest of the layout, or take it out.',
  };
}

function reachable(network: Network): Uint8Array {
  const { nodes, links } = network;
  const seen = new Uint8Array(nodes.length);
  const around: number[][] = nodes.map(() => []);
  for (const { from, to } of links) {
    around[from].push(to);
    around[to].push(from);
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
