import { flowOf, flowsByLink, headOf, headsByNode, imbalance } from './answer.js';
import { joinChains } from './chains.js';
import { ColdStart } from './cold-start.js';
import { Equations } from './equations.js';
import { findUnsupported } from './failure.js';
import type { Network, NetworkFailure, Solution, SolveOptions } from './network.js';
import { type Ending, type Limits, Newton } from './newton.js';
import { WarmStart } from './warm-start.js';

const DEFAULTS: Limits = { flowTolerance: 1e-8, headTolerance: 1e-6, maximumIterations: 200 };

/** Nodes kept for a draw one by one, before all of them are. */
const MOST_KEPT = 2;

/**
 * A flow against a shut one-way link above this (m3/s, 0.02 gpm) was forced through it by a draw. Its law lets by as much at
 * a million metres only, while a draw far past what the pumps can give does stand at many thousand.
 */
const FORCED = 1e-6;

/**
 * What an answer may be out of balance: by itself, m (1 kPa) and m3/s (0.02 gpm), and as a part of the greatest head and the
 * greatest flow, which tells what rounding leaves. A choice of this program.
 */
const HEAD_OUT = 0.1;
const HEAD_PART_OUT = 1e-6;
const FLOW_OUT = 1e-6;
const FLOW_PART_OUT = 1e-6;

/**
 * Steady flow by the global gradient method (E. Todini and S. Pilati, "A gradient algorithm for the analysis of pipe
 * networks", 1988; the form of the equations from memory): Newton's method on mass and energy together, for heads at
 * the nodes and flows in the links at once.
 *
 * Every law that rises with its flow makes the solution the one minimum of a convex function (the content of the
 * network), and each Newton step goes down it. Where a step overshoots, it is cut back along its own line to where the
 * slope of the content changes sign. A shut check valve or an automatic nozzle is a law with a kink, not a state that is
 * switched, so no sequence of states can repeat: the content falls at every step.
 *
 * Links in a row share one flow, so that they are solved as one (see joinChains). How the links join and the order of
 * elimination are found once, in the constructor; speeds, heads, draws and resistances may change between solves. With
 * `warm` a solve starts from the last solutions.
 */
export class NetworkSolver {
  readonly network: Network;
  private readonly unsupported: NetworkFailure | undefined;
  /** Nodes that may not vanish within a chain, because water is drawn there. */
  private readonly kept = new Set<number>();
  private equations: Equations;
  private newton: Newton;
  private coldStart: ColdStart | undefined;
  private warmStart: WarmStart;
  private readonly limits: Limits = { ...DEFAULTS };
  private solvedBefore = false;

  constructor(network: Network) {
    this.network = network;
    this.unsupported = findUnsupported(network);
    this.equations = new Equations(network, joinChains(network, this.kept));
    this.newton = new Newton(this.equations);
    this.warmStart = new WarmStart(this.equations);
  }

  /** Sets the speed of a pump, as a fraction of the speed of its curve. */
  setSpeed(link: number, speed: number): void {
    if (!(speed > 0))
      throw new RangeError(`speed of ${this.network.links[link].name} is not above 0: ${speed}`);
    const { laws } = this.equations.losses;
    if (!laws.isPump(link)) throw new TypeError(`${this.network.links[link].name} has no speed to set`);
    laws.speed[link] = speed;
  }

  /** The speed that is set of a pump, as a fraction of the speed of its curve. */
  speedSet(link: number): number {
    return this.equations.losses.laws.speed[link];
  }

  /** Sets the water drawn at a node, m3/s. */
  setDemand(node: number, demand: number): void {
    if (this.network.nodes[node].head !== undefined)
      throw new TypeError(`${this.network.nodes[node].name} has a fixed head`);
    if (this.equations.position[node] < 0) {
      if (demand === 0) return;
      this.keep(node);
    }
    this.equations.demand[this.equations.position[node]] = demand;
    this.changed();
  }

  /** Sets a fixed head, m. */
  setHead(node: number, head: number): void {
    if (this.network.nodes[node].head === undefined)
      throw new TypeError(`the head of ${this.network.nodes[node].name} is not fixed`);
    this.equations.head[this.equations.position[node]] = head;
    this.changed();
  }

  /** Sets the resistance of a quadratic link, m per (m3/s)^2. */
  setResistance(link: number, resistance: number): void {
    this.equations.losses.setResistance(link, resistance);
    this.changed();
  }

  /** The steady state: solves for it and reads every flow and head. */
  solve(options: SolveOptions = {}): Solution {
    const failure = this.run(options);
    if (failure) return this.failed(failure);
    const solution = this.solved();
    const unbalanced = this.unbalanced(solution);
    return unbalanced ? this.failed(unbalanced) : solution;
  }

  /**
   * Solves and reads nothing but the failure, where there is one: `flowOf` and `headOf` tell of the state then, until
   * something is set or solved again.
   */
  run(options: SolveOptions = {}): NetworkFailure | undefined {
    if (this.unsupported) return this.unsupported;
    this.equations.losses.upright = false;
    if (options.warm && this.solvedBefore) this.warmStart.begin();
    else {
      this.coldStart ??= new ColdStart(this.network, this.equations);
      this.coldStart.begin();
    }
    this.solvedBefore = false;
    const { limits } = this;
    limits.flowTolerance = options.flowTolerance ?? DEFAULTS.flowTolerance;
    limits.headTolerance = options.headTolerance ?? DEFAULTS.headTolerance;
    limits.maximumIterations = options.maximumIterations ?? DEFAULTS.maximumIterations;
    const failure = this.failureOf(this.newton.iterate(limits));
    if (failure) return failure;
    this.solvedBefore = true;
    this.warmStart.solved();
    return undefined;
  }

  /** Iterations of the last solve. */
  get iterations(): number {
    return this.newton.iterations;
  }

  /** The flow of a link in the last solution, m3/s. */
  flowOf(link: number): number {
    return flowOf(this.equations, link);
  }

  /** The head at a node in the last solution, m. */
  headOf(node: number): number {
    return headOf(this.network, this.equations, node);
  }

  /** Takes note that something but a speed was set. */
  private changed(): void {
    this.coldStart?.changed();
    this.warmStart.forget();
  }

  /** Joins the links anew so that a node has a head of its own, with everything else as it was set. */
  private keep(node: number): void {
    this.kept.add(node);
    // A draw that wanders down a lay would have it joined anew at every place: then every node stays.
    if (this.kept.size > MOST_KEPT) for (let v = 0; v < this.network.nodes.length; v++) this.kept.add(v);
    const before = this.equations;
    const equations = new Equations(this.network, joinChains(this.network, this.kept));
    before.position.forEach((at, v) => {
      if (at < 0) return;
      equations.head[equations.position[v]] = before.head[at];
      equations.demand[equations.position[v]] = before.demand[at];
    });
    equations.losses.laws.speed.set(before.losses.laws.speed);
    before.losses.laws.resistance.forEach((resistance, link) => {
      if (this.network.links[link].law.kind === 'resistance')
        equations.losses.setResistance(link, resistance);
    });
    this.equations = equations;
    this.newton = new Newton(equations);
    this.warmStart = new WarmStart(equations);
    this.coldStart = undefined;
    this.solvedBefore = false;
  }

  private solved(): Solution {
    const { network, equations, newton } = this;
    const flows = flowsByLink(equations);
    const heads = headsByNode(network, equations);
    const { iterations } = newton;
    const { flowResidual, worstNode } = imbalance(equations);
    const worst = equations.worst();
    const headResidual = worst.head;
    const worstLink = this.linkOf(worst.chain);
    return { status: 'solved', flows, heads, iterations, flowResidual, headResidual, worstLink, worstNode };
  }

  private failed(failure: NetworkFailure): Solution {
    const worst = this.equations.worst();
    // No number of a failed solve may be taken for an answer.
    return {
      status: 'failed',
      flows: new Array<number>(this.network.links.length).fill(Number.NaN),
      heads: new Array<number>(this.network.nodes.length).fill(Number.NaN),
      iterations: this.newton.iterations,
      flowResidual: Number.NaN,
      headResidual: worst.head,
      worstLink: this.linkOf(worst.chain),
      worstNode: -1,
      failure,
    };
  }

  /** The link that tells most about a chain: its pump, its valve, or the one that loses most; -1 for none. */
  private linkOf(chain: number): number {
    const { losses, flow } = this.equations;
    if (chain < 0) return -1;
    const { members, signs } = losses.chains[chain];
    const { links } = this.network;
    let worst = members[0];
    let most = 0;
    for (let m = 0; m < members.length; m++) {
      if (links[members[m]].law.kind === 'curve') return members[m];
      const lost = Math.abs(losses.lossOf(members[m], signs[m] * flow[chain]));
      if (lost > most) {
        most = lost;
        worst = members[m];
      }
    }
    return worst;
  }

  private failureOf(ending: Ending): NetworkFailure | undefined {
    if (ending === 'number') return this.badNumber();
    // Where a draw is forced through a shut link its head runs so high that no other can be told to the tolerance.
    const forced = this.forcedThroughShut();
    if (forced || ending === 'solved') return forced;
    return this.notConverged();
  }

  /** The link through which a flow is forced against its one way, if there is one. */
  private forcedThroughShut(): NetworkFailure | undefined {
    const { losses, flow } = this.equations;
    for (const i of losses.oneWays) {
      if (flow[i] < -FORCED) {
        const { links } = this.network;
        const link = links[losses.chains[i].members.find((l) => links[l].oneWay) as number];
        if (link.shut)
          return {
            code: 'cut_off_demand',
            where: [link.name],
            message: `water is drawn where only ${link.name} leads, and it is shut`,
            action: 'Open it, or give the draw another way to water.',
          };
        return {
          code: 'cut_off_demand',
          where: [link.name],
          message: `water is drawn where only ${link.name} leads, and it lets none through that way`,
          action: 'Turn the check valve round, or give the draw another way to water.',
        };
      }
    }
    return undefined;
  }

  /** What is out of balance in a solution by more than an answer may be, by size and as a part of what flows and stands. */
  private unbalanced(solution: Solution): NetworkFailure | undefined {
    const { flows, heads, flowResidual, headResidual, worstNode } = solution;
    const flow = greatest(flows);
    const head = greatest(heads);
    if (!(Number.isFinite(flow) && Number.isFinite(head))) return this.badNumber();
    if (!(headResidual <= HEAD_OUT + HEAD_PART_OUT * head)) return this.notConverged();
    if (flowResidual <= FLOW_OUT + FLOW_PART_OUT * flow) return undefined;
    const name = this.network.nodes[worstNode]?.name ?? 'a junction';
    return {
      code: 'not_converged',
      where: [name],
      message: `no steady flow was found: what flows to ${name} does not flow on from it`,
      action: 'Look there for a figure far out of the ordinary.',
    };
  }

  private notConverged(): NetworkFailure {
    const { chain, head } = this.equations.worst();
    const worst = this.network.links[this.linkOf(chain)];
    const out = head.toPrecision(3);
    return {
      code: 'not_converged',
      where: worst ? [worst.name] : [],
      message: `no steady flow was found: ${worst?.name ?? 'a link'} is still ${out} m of head out of balance`,
      action:
        'Look for a pump curve that rises with flow, or a figure far out of the ordinary, at that place.',
    };
  }

  private badNumber(): NetworkFailure {
    const { position, losses, flow } = this.equations;
    const { zeroPivot } = this.newton;
    const node = zeroPivot < 0 ? undefined : this.network.nodes[position.indexOf(zeroPivot)];
    const link = this.network.links.find(
      (_, l) => !Number.isFinite(losses.lossOf(l, usual(flow[losses.chainOf[l]]))),
    );
    const name = node?.name ?? link?.name ?? 'a link';
    return {
      code: 'bad_number',
      where: [name],
      message: `the loss at ${name} is not a number that can be solved with`,
      action: 'Look there for a bore or a length of nothing, or a figure far out of the ordinary.',
    };
  }
}

function greatest(values: readonly number[]): number {
  let most = 0;
  for (const value of values) if (!(Math.abs(value) <= most)) most = Math.abs(value);
  return most;
}

/** A flow at which a loss can be judged where the iteration left none that is a number. */
function usual(flow: number): number {
  return Number.isFinite(flow) ? flow : 1e-3;
}
