import type { Chain } from './chains.js';
import { LinkLaws } from './link-laws.js';
import type { LinkLaw, NetworkLink } from './network.js';
import { PowerSeries } from './power-series.js';
import type { Workspace } from './workspace.js';

/**
 * Slope of a shut one-way link, m per m3/s: 1,000 m of head press 1e-9 m3/s (a drop every few seconds) past it. So a shut
 * check valve is a law like any other, rising without a break, and needs no state of its own.
 */
export const SHUT_SLOPE = 1e12;

/**
 * How much tighter a valve shuts that a spring holds shut than one that swings. What stands between the two hangs on what they
 * let by, and by this it takes the head before the swing valve, through which its water came.
 */
const SPRING_TIGHTER = 1e4;

/** A one-way link counts as shut from this far backwards, m3/s, so that rounding about nothing does not shut and open it. */
export const DEAD = 3e-10;

/** Least slope used in the linearisation, m per m3/s; below it a step is shortened, never the answer changed. */
export const LEAST_SLOPE = 1e-3;

/**
 * The same for a pump, whose curve may lie level at no flow and falls steeply behind it: with a slope much nearer nothing the
 * rounding of a head throws the flow of a dead-headed pump to and fro across that kink without end.
 */
const LEAST_PUMP_SLOPE = 1;

/**
 * What every chain loses and how steeply, in arrays grouped by kind of law, so that the common quadratic law runs in a
 * loop of its own. Losses in a row add, so the quadratic parts of a chain are one resistance, and its power laws, which share
 * an exponent, another.
 */
export class ChainLosses {
  readonly laws: LinkLaws;
  readonly chains: readonly Chain[];
  readonly count: number;
  /** m3/s */
  readonly flow: Float64Array;
  /** m */
  readonly loss: Float64Array;
  /** One over d(loss)/d(flow), m3/s per m. */
  readonly conductance: Float64Array;
  /** How many one-way links a chain has. */
  readonly oneWay: Uint8Array;
  /** Numbers of the chains that have any. */
  readonly oneWays: readonly number[];
  /** The quadratic parts together, m per (m3/s)^2. */
  readonly resistance: Float64Array;
  /** The largest flow below which a part is linear, m3/s. */
  readonly linearBelow: Float64Array;
  /** Conductances up to this are those of shut links. */
  readonly shutFrom = 1 / SHUT_SLOPE;
  /** Numbers below this are quadratic alone, linear below one flow, and let water pass both ways. */
  readonly plainEnd: number;
  /** Those among them that end at a fixed head are numbered below this. */
  readonly outletEnd: number;
  /** Links with a speed, and the numbers of their chains. */
  readonly pumps: readonly number[];
  /** By link: the number of its chain, and 1 where it is drawn the chain's way, -1 where against it. */
  readonly chainOf: Int32Array;
  readonly signOf: Int8Array;
  private readonly major: Float64Array;
  private readonly exponent: Float64Array;
  /** By chain that has power laws: for powers of its flow to their exponent less one. */
  private readonly series: readonly (PowerSeries | undefined)[];
  private readonly hasPump: Uint8Array;
  /** Links whose law is none of the two, chain by chain; by chain, where its own begin, with an end behind the last. */
  private readonly curveLink: readonly number[];
  private readonly curveStart: Int32Array;

  /**
   * `rank` orders chains of one kind, so that those near each other in the elimination lie near in memory; `opens` tells
   * whether the head is fixed where a chain ends.
   */
  constructor(
    links: readonly NetworkLink[],
    joined: readonly Chain[],
    workspace: Workspace,
    rank: (chain: Chain) => number,
    opens: (chain: Chain) => boolean,
  ) {
    this.laws = new LinkLaws(links);
    const kinds = joined.map((chain) => {
      const kind = kindOf(chain, links);
      return kind === PLAIN && opens(chain) ? OUTLET : kind;
    });
    const ranks = joined.map(rank);
    const order = joined
      .map((_, index) => index)
      .sort((a, b) => kinds[a] - kinds[b] || ranks[a] - ranks[b] || a - b);
    const chains = order.map((index) => joined[index]);
    const count = chains.length;
    this.chains = chains;
    this.count = count;
    this.flow = workspace.flow;
    this.loss = workspace.loss;
    this.conductance = workspace.conductance;
    this.oneWay = new Uint8Array(count);
    this.resistance = workspace.resistance;
    this.linearBelow = workspace.linearBelow;
    this.major = new Float64Array(count);
    this.exponent = new Float64Array(count);
    this.hasPump = new Uint8Array(count);
    this.chainOf = new Int32Array(links.length);
    this.signOf = new Int8Array(links.length);
    const pumps: number[] = [];
    const oneWays: number[] = [];
    const curveLink: number[] = [];
    this.curveStart = new Int32Array(count + 1);
    this.outletEnd = kinds.filter((kind) => kind === OUTLET).length;
    this.plainEnd = kinds.filter((kind) => kind === PLAIN || kind === OUTLET).length;
    workspace.setEnds(this.outletEnd, this.plainEnd);
    chains.forEach(({ members, signs }, i) => {
      members.forEach((link, place) => {
        const { law, oneWay } = links[link];
        this.chainOf[link] = i;
        this.signOf[link] = signs[place];
        if (oneWay) this.oneWay[i]++;
        if (!isSummed(law)) curveLink.push(link);
        else this.linearBelow[i] = Math.max(this.linearBelow[i], law.linearBelow);
        if (law.kind === 'curve' && law.speed !== undefined) {
          pumps.push(link);
          this.hasPump[i] = 1;
        }
        if (law.kind === 'power') this.exponent[i] = law.exponent;
      });
      if (this.oneWay[i] > 0) oneWays.push(i);
      this.curveStart[i + 1] = curveLink.length;
      this.addUp(i);
    });
    this.series = Array.from(this.exponent, (n) => (n > 0 ? new PowerSeries(n - 1) : undefined));
    this.pumps = pumps;
    this.oneWays = oneWays;
    this.curveLink = curveLink;
  }

  /**
   * Whether a stretch of falling loss is taken as if it rose as steeply: every step then goes downhill on the content, and ends
   * where the pumps run stably, more slowly than by the slope that it has.
   */
  upright = false;

  isPump(number: number): boolean {
    return this.hasPump[number] === 1;
  }

  setResistance(link: number, resistance: number): void {
    if (this.laws.links[link].law.kind !== 'resistance')
      throw new TypeError('only a quadratic link has one resistance to set');
    this.laws.resistance[link] = resistance;
    this.addUp(this.chainOf[link]);
  }

  /** What one link loses at a flow the way that it is drawn, m. */
  lossOf(link: number, flow: number): number {
    const { laws } = this;
    const { law, oneWay } = laws.links[link];
    const shut = oneWay && flow < -DEAD;
    if (law.kind === 'resistance' && !shut)
      return laws.resistance[link] * Math.max(Math.abs(flow), law.linearBelow) * flow;
    laws.evaluate(link, shut ? 0 : flow);
    return shut ? laws.loss + shutSlope(laws.loss) * (flow + DEAD) : laws.loss;
  }

  /** Fills `loss` and `conductance` at the flows. */
  evaluate(): void {
    for (let i = 0; i < this.count; i++) this.evaluateChain(i);
  }

  /** Fills the loss and the conductance of one chain at its flow. */
  evaluateChain(i: number): void {
    // The flow is looked up here: V8 packs a number that it hands on into an object.
    const flow = this.flow[i];
    const size = Math.abs(flow);
    if (flow < -DEAD && this.oneWay[i] > 0) {
      this.evaluateShut(i);
      return;
    }
    if (size < this.linearBelow[i]) {
      this.evaluateMembers(i, flow);
      return;
    }
    const r = this.resistance[i] * size;
    let loss = r * flow;
    let slope = r + r;
    const series = this.series[i];
    if (series !== undefined) {
      const major = this.major[i] * series.raise(size);
      loss += major * flow;
      slope += this.exponent[i] * major;
    }
    const end = this.curveStart[i + 1];
    if (this.curveStart[i] < end) {
      const { laws, curveLink, signOf } = this;
      for (let k = this.curveStart[i]; k < end; k++) {
        const link = curveLink[k];
        const sign = signOf[link];
        laws.evaluate(link, sign * flow);
        loss += sign * laws.loss;
        slope += laws.slope;
      }
    }
    this.keep(i, loss, slope);
  }

  /** What the law loses at no flow holds it shut: a pump's head, or the spring of a relief valve. */
  private evaluateShut(i: number): void {
    const flow = this.flow[i];
    this.flow[i] = 0;
    this.evaluateChain(i);
    this.flow[i] = flow;
    const slope = this.oneWay[i] * shutSlope(this.loss[i]);
    this.loss[i] += slope * (flow + DEAD);
    this.conductance[i] = 1 / slope;
  }

  /** Where some part is linear, each counts by itself. */
  private evaluateMembers(i: number, flow: number): void {
    const { laws } = this;
    const { members, signs } = this.chains[i];
    let loss = 0;
    let slope = 0;
    for (let m = 0; m < members.length; m++) {
      laws.evaluate(members[m], signs[m] * flow);
      loss += signs[m] * laws.loss;
      slope += laws.slope;
    }
    this.keep(i, loss, slope);
  }

  private keep(i: number, loss: number, slope: number): void {
    this.loss[i] = loss;
    // A drooping pump curve has a stretch of falling loss: the slope keeps its sign there and stays off zero.
    const least = this.hasPump[i] === 1 ? LEAST_PUMP_SLOPE : LEAST_SLOPE;
    const size = Math.max(Math.abs(slope), least);
    this.conductance[i] = 1 / (slope < 0 && !this.upright ? -size : size);
  }

  /** Adds up the parts of a chain that go by resistances. */
  private addUp(i: number): void {
    const { links, resistance } = this.laws;
    let quadratic = 0;
    let major = 0;
    for (const link of this.chains[i].members) {
      const { law } = links[link];
      if (!isSummed(law)) continue;
      if (law.kind === 'resistance') quadratic += resistance[link];
      else if (law.kind === 'power') {
        major += resistance[link];
        quadratic += law.minor;
      }
    }
    this.resistance[i] = quadratic;
    this.major[i] = major;
  }
}

/** Slope of one shut link by what its law loses at no flow, m: more than nothing where a spring holds it. */
function shutSlope(heldBy: number): number {
  return heldBy > 0 ? SPRING_TIGHTER * SHUT_SLOPE : SHUT_SLOPE;
}

/** A passage that is linear up to flows as large as this, m3/s (16 gpm), is evaluated by itself, as a curve is. */
const LINEAR_FAR = 1e-3;

/** Whether a law adds to others by its coefficients. */
function isSummed(law: LinkLaw): law is Exclude<LinkLaw, { kind: 'curve' }> {
  return law.kind !== 'curve' && law.linearBelow <= LINEAR_FAR;
}

const OUTLET = 0;
const PLAIN = 1;
const OTHER = 2;
const CURVE = 3;

/** A chain is plain if all its parts are quadratic, linear below the same flow, and let water pass both ways. */
function kindOf(chain: Chain, links: readonly NetworkLink[]): number {
  let kind: number = PLAIN;
  let linear: number | undefined;
  for (const link of chain.members) {
    const { law, oneWay } = links[link];
    if (!isSummed(law)) return CURVE;
    linear ??= law.linearBelow;
    if (oneWay || law.kind === 'power' || law.linearBelow !== linear) kind = OTHER;
  }
  return kind;
}
