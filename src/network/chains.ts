import type { Network, NetworkLink } from './network.js';

/** Links in a row, with nothing drawn or joined between them, so that one flow passes them all. */
export interface Chain {
  /** Nodes at its ends; `from` is where positive flow enters. */
  from: number;
  to: number;
  /** Its links, from `from` to `to`. */
  members: number[];
  /** By member: 1 where it is drawn the chain's way, -1 where against it. */
  signs: number[];
}

/**
 * Joins links in a row to chains. A node stays where three links meet, at an end, where a head is fixed or water is drawn,
 * and where `kept` asks for it; and between links that cannot share a law: one-way links that face each other, and power
 * laws of unlike exponents. A chain with a one-way link in it leads that link's way, and one with a pump the pump's.
 */
export function joinChains(network: Network, kept: ReadonlySet<number>): Chain[] {
  const { nodes, links } = network;
  const incident: number[][] = nodes.map(() => []);
  for (let l = 0; l < links.length; l++) {
    incident[links[l].from].push(l);
    if (links[l].to !== links[l].from) incident[links[l].to].push(l);
  }
  const joins = nodes.map(
    (node, v) => incident[v].length === 2 && node.head === undefined && !node.demand && !kept.has(v),
  );
  const taken = new Uint8Array(links.length);
  const chains: Chain[] = [];
  const walk = (start: number, first: number) => {
    let from = start;
    let at = start;
    let members: number[] = [];
    let signs: number[] = [];
    let kind = { way: 0, exponent: 0 };
    for (let link = first; ; ) {
      const sign = links[link].from === at ? 1 : -1;
      const together = shared(kind, links[link], sign);
      if (together === undefined) {
        chains.push(turned({ from, to: at, members, signs }, links));
        from = at;
        members = [];
        signs = [];
        kind = shared({ way: 0, exponent: 0 }, links[link], sign) as Kind;
      } else kind = together;
      taken[link] = 1;
      members.push(link);
      signs.push(sign);
      at = sign > 0 ? links[link].to : links[link].from;
      if (!joins[at] || at === start) break;
      link = incident[at][0] === link ? incident[at][1] : incident[at][0];
      if (taken[link]) break;
    }
    if (from === at && members.length > 1) {
      // A ring needs a node of its own: a chain from a node to itself would have no say in the flow.
      const last = members.pop() as number;
      const sign = signs.pop() as number;
      const before = sign > 0 ? links[last].from : links[last].to;
      chains.push(turned({ from: before, to: at, members: [last], signs: [sign] }, links));
      at = before;
    }
    chains.push(turned({ from, to: at, members, signs }, links));
  };
  for (let v = 0; v < nodes.length; v++) {
    if (joins[v]) continue;
    for (const link of incident[v]) if (!taken[link]) walk(v, link);
  }
  // What is left are rings that nothing else joins.
  for (let l = 0; l < links.length; l++) if (!taken[l]) walk(links[l].from, l);
  return chains;
}

/** What the links of a chain so far have settled: which way it is open, where only one, and the exponent of its power laws. */
interface Kind {
  way: number;
  exponent: number;
}

/** The same with one link more; undefined where that cannot be. */
function shared(kind: Kind, link: NetworkLink, sign: number): Kind | undefined {
  const exponent = link.law.kind === 'power' ? link.law.exponent : 0;
  if (exponent > 0 && kind.exponent > 0 && exponent !== kind.exponent) return undefined;
  if (link.oneWay && kind.way === -sign) return undefined;
  return { way: link.oneWay ? sign : kind.way, exponent: exponent || kind.exponent };
}

/** The chain the way that its one-way links lead; without any, the way of its first pump. */
function turned(chain: Chain, links: readonly NetworkLink[]): Chain {
  const { from, to, members, signs } = chain;
  const leads = (l: number) => links[l].oneWay;
  const pumps = (l: number) => {
    const { law } = links[l];
    return law.kind === 'curve' && law.speed !== undefined;
  };
  const leader = Math.max(members.findIndex(leads), -1);
  const one = leader >= 0 ? leader : members.findIndex(pumps);
  if (one < 0 || signs[one] > 0) return chain;
  return {
    from: to,
    to: from,
    members: [...members].reverse(),
    signs: signs.map((sign) => -sign).reverse(),
  };
}
