import { Equations } from './equations.js';
import { findUnsupported } from './failure.js';
import { OVERSHOOT, shortenStep } from './line-search.js';
import { LEAST_SLOPE } from './losses.js';
import type { Network, NetworkFailure, Solution, SolveOptions } from './network.js';
import { TreeFold } from './start.js';

/** Iterations after which a drooping curve, or an engine that gains speed with flow, is taken to have led the steps astray. */
const PATIENCE = 30;
/** Head that may be out of balance from then on, m (1 Pa), where a step has no more than this to gain, m4/s. */
const NEAR_ENOUGH = 1e-4;
const LEAST_DESCENT = 1e-14;
/** Part of the overshoot that a step may leave from then on. */
const CAREFUL = 0.1;
/** Out of balance by this part of the greatest head is the rounding of heads, which no further step lessens. */
const ROUNDING = 1e-12;
const DEFAULTS = { flowTolerance: 1e-8, headTolerance: 1e-6, maximumIterations: 100, warm: false };

/**
 * A flow against a shut one-way link above this (m3/s, 0.02 gpm) was forced through it by a draw. Its law lets by as much at
 * a million metres only, while a draw far past what the pumps can give does stand at many thousand.
 */
const FORCED = 1e-6;

/** The part of a pump's runout that a start takes it to move. */
const MIDDLING = 0.6;

/** Where no pump tells how much flows, a start is made from this, m3/s (80 gpm). */
const USUAL_FLOW = 5e-3;

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
 * The order of elimination is found once, in the constructor; speeds, heads, draws and resistances may change between
 * solves. With `warm` a solve starts from the last solution.
 */
export class NetworkSolver {
  readonly network: Network;
  private readonly equations: Equations;
  private readonly unsupported: NetworkFailure | undefined;
  /** By node: its fixed head, or where the start has put it. */
  private readonly unfoldedHead: Float64Array;
  /** By link: what the start takes it for, m per (m3/s)^2. */
  private readonly startResistance: Float64Array;
  /** By grouped link number: a middling flow of a pump at full speed. */
  private readonly nominal: Float64Array;
  private folded: { fold: TreeFold; core: NetworkSolver } | null | undefined;
  private solvedBefore = false;
  private speedAtLast = 0;

  constructor(network: Network) {
    this.network = network;
    this.equations = new Equations(network);
    this.unsupported = findUnsupported(network);
    const { losses } = this.equations;
    this.unfoldedHead = Float64Array.from(network.nodes, (node) => node.head ?? 0);
    this.nominal = new Float64Array(losses.count);
    for (let i = 0; i < losses.count; i++) if (losses.isPump(i)) this.nominal[i] = MIDDLING * this.runout(i);
    const usual = this.nominal.reduce((most, q) => Math.max(most, q), 0) || USUAL_FLOW;
    this.startResistance = new Float64Array(losses.count);
    for (let i = 0; i < losses.count; i++) {
      losses.evaluateAt(i, usual);
      this.startResistance[losses.linkOf[i]] = Math.max(losses.loss[i] / (usual * usual), 1e-9);
    }
  }

  /** Sets the speed of a pump, as a fraction of the speed of its curve. */
  setSpeed(link: number, speed: number): void {
    if (!(speed > 0))
      throw new RangeError(`speed of ${this.network.links[link].name} is not above 0: ${speed}`);
    const law = this.network.links[link].law;
    if (law.kind !== 'curve' || law.speed === undefined) {
      throw new TypeError(`${this.network.links[link].name} has no speed to set`);
    }
    this.equations.losses.speed[this.equations.losses.numberOf[link]] = speed;
  }

  /** Sets the water drawn at a node, m3/s. */
  setDemand(node: number, demand: number): void {
    if (this.equations.isFixed(node))
      throw new TypeError(`${this.network.nodes[node].name} has a fixed head`);
    this.equations.demand[this.equations.position[node]] = demand;
  }

  /** Sets a fixed head, m. */
  setHead(node: number, head: number): void {
    if (!this.equations.isFixed(node))
      throw new TypeError(`the head of ${this.network.nodes[node].name} is not fixed`);
    this.equations.head[this.equations.position[node]] = head;
    this.unfoldedHead[node] = head;
  }

  /** Sets the resistance of a quadratic link, m per (m3/s)^2. */
  setResistance(link: number, resistance: number): void {
    this.equations.losses.setResistance(this.equations.losses.numberOf[link], resistance);
    this.startResistance[link] = resistance;
  }

  solve(options: SolveOptions = {}): Solution {
    const { flowTolerance, headTolerance, maximumIterations, warm } = { ...DEFAULTS, ...options };
    if (this.unsupported) return this.answer(0, this.unsupported);
    if (warm && this.solvedBefore) this.startWarm();
    else this.start();
    this.solvedBefore = false;
    const { equations } = this;
    equations.losses.upright = false;
    equations.linearise();
    const { losses } = equations;
    let iterations = 0;
    for (;;) {
      losses.upright = iterations >= PATIENCE;
      // Where a draw is forced through a shut link its head runs so high that no other can be told to the tolerance.
      if (iterations === maximumIterations)
        return this.answer(iterations, this.forcedThroughShut() ?? this.notConverged());
      iterations++;
      const zeroPivot = equations.solveHeads();
      if (zeroPivot >= 0) return this.answer(iterations, this.badNumber(zeroPivot));
      equations.sweep();
      const { descent, along } = equations;
      if (!Number.isFinite(descent)) return this.answer(iterations, this.badNumber(-1));
      if (equations.worstHead <= headTolerance && equations.worstCorrection <= flowTolerance) break;
      // Steps to and fro across a kink at no flow: what they would still gain is nothing.
      if (losses.upright && equations.worstHead <= NEAR_ENOUGH && descent <= LEAST_DESCENT) break;
      // A draw far past what the pumps can give stands at heads of a million metres.
      if (losses.upright && equations.worstHead <= ROUNDING * equations.greatestHead()) break;
      // The first step need not balance the nodes before it, so only later ones can be judged along their line.
      const overshoot = losses.upright ? CAREFUL : OVERSHOOT;
      if (iterations > 1 && along > overshoot * descent && descent > LEAST_DESCENT) {
        shortenStep(equations, descent, along, overshoot);
        equations.assemble();
      }
    }
    const forced = this.forcedThroughShut();
    if (forced) return this.answer(iterations, forced);
    this.solvedBefore = true;
    this.speedAtLast = this.pumpSpeed();
    return this.answer(iterations);
  }

  /** Starts from the answer of the folded network, unfolded down its trees. */
  private start(): void {
    if (this.folded === undefined) {
      const fold = new TreeFold(this.network);
      this.folded = fold.worthwhile ? { fold, core: new NetworkSolver(fold.core) } : null;
    }
    if (this.folded === null) {
      this.startLevel();
      return;
    }
    const { fold, core } = this.folded;
    const { losses, position, demand, flow } = this.equations;
    const { unfoldedHead } = this;
    fold.fold(this.startResistance, unfoldedHead);
    for (let i = 0; i < fold.coreLinks.length; i++) {
      const number = losses.numberOf[fold.coreLinks[i]];
      if (losses.isPump(number)) core.setSpeed(i, losses.speed[number]);
    }
    for (let i = 0; i < fold.coreNodes.length; i++) {
      const node = fold.coreNodes[i];
      if (this.equations.isFixed(node)) core.setHead(i, unfoldedHead[node]);
      else core.setDemand(i, demand[position[node]]);
    }
    for (let i = 0; i < fold.openingLink.length; i++) {
      core.setResistance(fold.openingLink[i], fold.openingResistance(i));
      core.setHead(fold.openingNode[i], fold.openingHeight(i));
    }
    const answer = core.solve({ flowTolerance: 1e-5, headTolerance: 0.1, maximumIterations: 60 });
    if (answer.status === 'failed') {
      this.startLevel();
      return;
    }
    fold.unfold(this.startResistance, answer, unfoldedHead, flow, losses.numberOf);
  }

  /**
   * Starts with every passive link taken as a straight line through the origin and every pump as its tangent at a
   * middling flow: a linear network, whose solution gives each flow its direction.
   */
  private startLevel(): void {
    const { equations, nominal } = this;
    const { losses, flow } = equations;
    const most = nominal.reduce((largest, q, i) => Math.max(largest, q * losses.speed[i]), 0) || USUAL_FLOW;
    for (let i = 0; i < losses.count; i++) flow[i] = losses.isPump(i) ? nominal[i] * losses.speed[i] : most;
    losses.evaluate(flow);
    for (let i = 0; i < losses.count; i++) {
      if (losses.isPump(i)) continue;
      losses.loss[i] = Math.max(losses.loss[i], LEAST_SLOPE * flow[i]);
      losses.conductance[i] = flow[i] / losses.loss[i];
    }
    equations.assemble();
    if (equations.solveHeads() < 0) equations.sweep();
  }

  /** A change of throttle moves all flows nearly alike: by the affinity laws exactly so where no height is against them. */
  private startWarm(): void {
    const speed = this.pumpSpeed();
    if (speed === this.speedAtLast || !(this.speedAtLast > 0)) return;
    const ratio = speed / this.speedAtLast;
    for (let i = 0; i < this.equations.flow.length; i++) this.equations.flow[i] *= ratio;
  }

  private pumpSpeed(): number {
    const { losses } = this.equations;
    let sum = 0;
    for (let i = losses.curveFrom; i < losses.count; i++) sum += losses.speed[i];
    return sum;
  }

  /** The flow at which a pump at full speed has no head left, to a factor of two. */
  private runout(number: number): number {
    const { losses } = this.equations;
    let flow = 1e-4;
    for (; flow < 10; flow *= 2) {
      losses.evaluateAt(number, flow * losses.speed[number]);
      if (losses.loss[number] >= 0) break;
    }
    return flow;
  }

  /** The link through which a flow is forced against its one way, if there is one. */
  private forcedThroughShut(): NetworkFailure | undefined {
    const { losses, flow } = this.equations;
    for (const i of losses.oneWays) {
      if (flow[i] < -FORCED) {
        const link = this.network.links[losses.linkOf[i]];
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

  private answer(iterations: number, failure?: NetworkFailure): Solution {
    const { equations } = this;
    const worstLink = equations.worstLink < 0 ? -1 : equations.losses.linkOf[equations.worstLink];
    const headResidual = equations.worstHead;
    if (failure) {
      // No number of a failed solve may be taken for an answer.
      const flows = new Array<number>(this.network.links.length).fill(Number.NaN);
      const heads = new Array<number>(this.network.nodes.length).fill(Number.NaN);
      const flowResidual = Number.NaN;
      return {
        status: 'failed',
        flows,
        heads,
        iterations,
        flowResidual,
        headResidual,
        worstLink,
        worstNode: -1,
        failure,
      };
    }
    const { flowResidual, worstNode } = equations.imbalance();
    const flows = equations.flowsByLink();
    const heads = equations.headsByNode();
    return { status: 'solved', flows, heads, iterations, flowResidual, headResidual, worstLink, worstNode };
  }

  private notConverged(): NetworkFailure {
    const { worstLink, worstHead, losses } = this.equations;
    const worst = worstLink < 0 ? undefined : this.network.links[losses.linkOf[worstLink]];
    const where = worst ? [worst.name] : [];
    return {
      code: 'not_converged',
      where,
      message: `no steady flow was found: ${worst?.name ?? 'a link'} is still ${worstHead.toPrecision(3)} m of head out of balance`,
      action:
        'Look for a pump curve that rises with flow, or a figure far out of the ordinary, at that place.',
    };
  }

  private badNumber(zeroPivot: number): NetworkFailure {
    const { position, losses } = this.equations;
    const node = zeroPivot < 0 ? undefined : this.network.nodes[position.indexOf(zeroPivot)];
    const link = this.network.links.find((_, l) => !Number.isFinite(losses.loss[losses.numberOf[l]]));
    const name = node?.name ?? link?.name ?? 'a link';
    return {
      code: 'bad_number',
      where: [name],
      message: `the loss at ${name} is not a number that can be solved with`,
      action: 'Look there for a bore or a length of nothing, or a figure far out of the ordinary.',
    };
  }
}
