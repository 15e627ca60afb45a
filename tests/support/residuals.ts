import type { LossAtFlow, Network, NetworkLink } from '../../src/network/network.js';

interface Answer {
  heads: ArrayLike<number>;
  flows: ArrayLike<number>;
}

/** Loss of a link's law at a flow, m, written a second time so that the solver is not its own judge. */
export function lossOf(link: NetworkLink, flow: number): number {
  const { law } = link;
  if (law.kind === 'curve') {
    const at: LossAtFlow = { loss: 0, slope: 0 };
    const speed = law.speed ?? 1;
    law.curve.evaluate(flow / speed, at);
    return speed ** 2 * at.loss;
  }
  const size = Math.max(Math.abs(flow), law.linearBelow);
  if (law.kind === 'resistance') return law.resistance * size * flow;
  return (law.resistance * size ** (law.exponent - 1) + law.minor * size) * flow;
}

/** The largest amount by which what flows into a node is not what flows out of it, m3/s. */
export function worstImbalance(network: Network, { flows }: Answer): number {
  const balance = network.nodes.map((node) => -(node.demand ?? 0));
  network.links.forEach((link, index) => {
    balance[link.from] -= flows[index];
    balance[link.to] += flows[index];
  });
  return worst(balance.filter((_, index) => network.nodes[index].head === undefined));
}

/**
 * The largest amount by which the heads at a link's ends do not differ by its loss, m. A one-way link without flow may
 * have any head against it.
 */
export function worstEnergyResidual(network: Network, { heads, flows }: Answer): number {
  return worst(
    network.links.map((link, index) => {
      const flow = flows[index];
      const drop = heads[link.from] - heads[link.to];
      if (link.oneWay && flow < 1e-9) return Math.max(0, drop - lossOf(link, Math.max(flow, 0)));
      return drop - lossOf(link, flow);
    }),
  );
}

/** NaN where any is. */
function worst(values: number[]): number {
  return values.reduce((most, value) => (Math.abs(value) <= most ? most : Math.abs(value)), 0);
}
