import { joinChains } from './chains.js';
import { Equations } from './equations.js';
import { LevelStart } from './level-start.js';
import type { Network, NetworkLink, NetworkNode } from './network.js';
import { Newton } from './newton.js';
import { TreeFold } from './tree-fold.js';

/** How near the core is solved before the trees are unfolded from it: a guess needs no more. */
const CORE_LIMITS = { flowTolerance: 1e-5, headTolerance: 0.1, maximumIterations: 60 };

/** With no more chains than this, making and solving a core costs more than the iterations that it saves. */
const FEW = 24;

/** A first guess for flows and heads: the core of the network, solved with its trees folded, then unfolded down them. */
export class ColdStart {
  private readonly equations: Equations;
  private readonly level: LevelStart;
  private readonly resistance: Float64Array;
  private readonly fold: TreeFold | undefined;
  private readonly core: Core | undefined;
  private stale = true;

  constructor(network: Network, equations: Equations) {
    this.equations = equations;
    this.level = new LevelStart(equations);
    const { count } = equations.losses;
    this.resistance = new Float64Array(count);
    if (count <= FEW) return;
    const fold = new TreeFold(equations);
    if (!fold.worthwhile) return;
    this.fold = fold;
    this.core = new Core(network, equations, fold);
  }

  /** Says that a resistance, a fixed head or a draw is no longer what it was. */
  changed(): void {
    this.stale = true;
  }

  /** Fills flows and heads; gives whether it has linearised the equations at them, too. */
  begin(): boolean {
    const { core, fold } = this;
    if (!core || !fold) {
      this.level.begin();
      return true;
    }
    if (this.stale) {
      this.resist();
      fold.fold(this.resistance);
      core.open();
      this.stale = false;
    }
    if (core.solve()) {
      fold.unfold();
      return false;
    }
    this.level.begin();
    return true;
  }

  /** What each chain resists a middling flow with. */
  private resist(): void {
    const { losses } = this.equations;
    const usual = this.level.usualFlow;
    for (let i = 0; i < losses.count; i++) {
      losses.evaluateAt(i, usual);
      this.resistance[i] = Math.max(losses.loss[i] / (usual * usual), 1e-9);
    }
  }
}

/** What is left of a network where its trees are folded into openings: a small network of its own. */
class Core {
  private readonly whole: Equations;
  private readonly fold: TreeFold;
  private readonly equations: Equations;
  private readonly newton: Newton;
  private readonly level: LevelStart;
  /** Of each chain of the core, its number here and there, and whether it leads the same way. */
  private readonly chainThere: number[] = [];
  private readonly chainHere: number[] = [];
  private readonly sign: number[] = [];
  /** Of each node that both have, its position here and there. */
  private readonly nodeThere: number[] = [];
  private readonly nodeHere: number[] = [];
  /** Of each pump, its link here and there. */
  private readonly pumpThere: number[] = [];
  private readonly pumpHere: number[] = [];
  /** Of each quadratic link, its number there and here. */
  private readonly quadratic: [number, number][] = [];
  /** Of each opening, its link and its fixed end here, and where it opens there. */
  private readonly openingLink: number[] = [];
  private readonly openingEnd: number[] = [];

  constructor(network: Network, whole: Equations, fold: TreeFold) {
    this.whole = whole;
    this.fold = fold;
    const nodes: NetworkNode[] = [];
    const links: NetworkLink[] = [];
    const here = new Map<number, number>();
    const keep = (node: number): number => {
      let number = here.get(node);
      if (number === undefined) {
        number = nodes.push({ ...network.nodes[node], demand: undefined }) - 1;
        here.set(node, number);
      }
      return number;
    };
    const { losses, position } = whole;
    const firstLink: number[] = [];
    for (const chain of fold.core) {
      const { members } = losses.chains[chain];
      firstLink.push(links.length);
      for (const l of members) {
        const link = network.links[l];
        const number = links.push({ ...link, from: keep(link.from), to: keep(link.to) }) - 1;
        if (link.law.kind === 'resistance') this.quadratic.push([l, number]);
        else if (losses.laws.isPump(l)) {
          this.pumpThere.push(l);
          this.pumpHere.push(number);
        }
      }
    }
    const nodeAt = new Map<number, number>();
    for (const node of here.keys()) if (position[node] >= 0) nodeAt.set(position[node], node);
    const opensAt = (at: number) => keep(nodeAt.get(at) ?? position.indexOf(at));
    for (const at of fold.openings) {
      const from = opensAt(at);
      const { elevation } = nodes[from];
      const to = nodes.push({ name: 'opening', elevation, head: 0 }) - 1;
      const law = { kind: 'resistance', resistance: 1, linearBelow: 1e-6 } as const;
      this.openingLink.push(links.push({ name: 'opening', from, to, law }) - 1);
      this.openingEnd.push(to);
    }
    // Every node stays that the trees hang on or water is drawn at: its head is asked for, or its draw is set.
    const kept = new Set<number>();
    for (const [node, number] of here) if (position[node] >= 0) kept.add(number);
    this.equations = new Equations({ nodes, links }, joinChains({ nodes, links }, kept));
    this.newton = new Newton(this.equations);
    this.level = new LevelStart(this.equations);
    fold.core.forEach((chain, c) => {
      const own = this.equations.losses.chainOf[firstLink[c]];
      const sameWay = this.equations.losses.chains[own].from === here.get(losses.chains[chain].from);
      this.chainThere.push(chain);
      this.chainHere.push(own);
      this.sign.push(sameWay ? 1 : -1);
    });
    for (const [node, number] of here) {
      if (position[node] < 0) continue;
      this.nodeThere.push(position[node]);
      this.nodeHere.push(this.equations.position[number]);
    }
  }

  /** Takes over resistances, heads and draws, and what the trees fold into. */
  open(): void {
    const { whole, fold, equations } = this;
    for (let n = 0; n < this.nodeHere.length; n++) {
      const at = this.nodeThere[n];
      if (at >= whole.plan.size) equations.head[this.nodeHere[n]] = whole.head[at];
      else equations.demand[this.nodeHere[n]] = fold.drawnFrom(at);
    }
    for (const [there, here] of this.quadratic) {
      equations.losses.setResistance(here, whole.losses.laws.resistance[there]);
    }
    for (let o = 0; o < this.openingLink.length; o++) {
      const at = fold.openings[o];
      equations.losses.setResistance(this.openingLink[o], fold.openingResistance(at));
      equations.head[equations.position[this.openingEnd[o]]] = fold.openingHeight(at);
    }
  }

  /** Solves it and hands heads and flows over to the whole; gives whether it could. */
  solve(): boolean {
    const { whole, equations, pumpHere, pumpThere, nodeHere, nodeThere, chainHere, chainThere } = this;
    for (let p = 0; p < pumpHere.length; p++) {
      equations.losses.laws.speed[pumpHere[p]] = whole.losses.laws.speed[pumpThere[p]];
    }
    this.level.begin();
    if (this.newton.iterate(CORE_LIMITS, true) !== 'solved') return false;
    for (let n = 0; n < nodeHere.length; n++) whole.head[nodeThere[n]] = equations.head[nodeHere[n]];
    for (let c = 0; c < chainHere.length; c++) {
      whole.flow[chainThere[c]] = this.sign[c] * equations.flow[chainHere[c]];
    }
    return true;
  }
}
