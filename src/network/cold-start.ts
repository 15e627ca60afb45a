import { joinChains } from './chains.js';
import { Equations } from './equations.js';
import { LevelStart } from './level-start.js';
import type { Network, NetworkLink, NetworkNode } from './network.js';
import { Newton } from './newton.js';
import { TreeFold } from './tree-fold.js';

/** How near the core is solved before the trees are unfolded from it: a guess needs no more. */
const CORE_LIMITS = { flowTolerance: 5e-4, headTolerance: 5, maximumIterations: 60 };

/** With no more chains than this, a core costs more to make than it saves, unless a network is solved from cold this often. */
const FEW = 24;
const OFTEN = 3;

/** A first guess for flows and heads: the core of the network, solved with its trees folded, then unfolded down them. */
export class ColdStart {
  private readonly network: Network;
  private readonly equations: Equations;
  private readonly level: LevelStart;
  private folded: { fold: TreeFold; core: Core } | undefined;
  private begun = 0;
  private stale = true;

  constructor(network: Network, equations: Equations) {
    this.network = network;
    this.equations = equations;
    this.level = new LevelStart(equations);
  }

  /** Says that a resistance, a fixed head or a draw is no longer what it was. */
  changed(): void {
    this.stale = true;
  }

  /** Fills flows and heads, and leaves the equations linearised at them. */
  begin(): void {
    this.begun++;
    if (this.begun === (this.equations.losses.count > FEW ? 1 : OFTEN)) this.makeCore();
    if (this.stale) this.prepare();
    const { folded } = this;
    if (folded?.core.solve()) {
      folded.fold.unfold();
      this.equations.lineariseOthers(folded.core.linearised);
    } else this.level.begin();
  }

  private makeCore(): void {
    const fold = new TreeFold(this.equations);
    if (!fold.worthwhile) return;
    this.folded = { fold, core: new Core(this.network, this.equations, fold) };
    this.stale = true;
  }

  /** Takes over what each chain resists a middling flow with. */
  private prepare(): void {
    const { level, folded, equations } = this;
    const usual = level.usualFlow;
    level.prepare(usual);
    if (folded) {
      const resistance = new Float64Array(equations.losses.count);
      for (let i = 0; i < resistance.length; i++) resistance[i] = level.resistanceAt(i, usual);
      folded.fold.fold(resistance);
      folded.core.open(usual);
    }
    this.stale = false;
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
  /** By chain there: 1 where it stands linearised, once this is solved. */
  readonly linearised: Uint8Array;
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
    this.linearised = new Uint8Array(losses.count);
    for (const chain of fold.core) this.linearised[chain] = 1;
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

  /** Takes over resistances, heads and draws, and what the trees fold into; `usual` is a middling flow, m3/s. */
  open(usual: number): void {
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
    this.level.prepare(usual);
  }

  /** Solves it and hands heads and flows over to the whole; gives whether it could. */
  solve(): boolean {
    const { whole, equations, pumpHere, pumpThere, nodeHere, nodeThere, chainHere, chainThere } = this;
    for (let p = 0; p < pumpHere.length; p++) {
      equations.losses.laws.speed[pumpHere[p]] = whole.losses.laws.speed[pumpThere[p]];
    }
    this.level.begin();
    if (this.newton.iterate(CORE_LIMITS) !== 'solved') return false;
    for (let n = 0; n < nodeHere.length; n++) whole.head[nodeThere[n]] = equations.head[nodeHere[n]];
    for (let c = 0; c < chainHere.length; c++) {
      const there = chainThere[c];
      const own = chainHere[c];
      whole.flow[there] = this.sign[c] * equations.flow[own];
      whole.losses.loss[there] = this.sign[c] * equations.losses.loss[own];
      whole.losses.conductance[there] = equations.losses.conductance[own];
    }
    return true;
  }
}
