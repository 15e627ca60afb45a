import { type AssembleOptions, assemble } from '../assembly/assemble.js';
import type { Assembly, StagingName } from '../assembly/assembly.js';
import type { Throttle } from '../assembly/engine.js';
import { EngineBalance } from '../assembly/engine-balance.js';
import { OperatingPoint } from '../assembly/operating-point.js';
import { PartStore } from '../assembly/part-store.js';
import { fitCurves } from '../assembly/pump.js';
import { siteOf } from '../assembly/site.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import type { Solution } from '../network/network.js';
import { NetworkSolver } from '../network/solver.js';
import type { Delivery } from './delivery.js';
import { NoSteadyAnswer } from './no-steady-answer.js';

/** The ends of each staging, with the rig that they were laid for. */
export type Made = Map<StagingName, { rig: Rig; ends: readonly Delivery[] }>;

/** Governed speed of both pumps. */
export const FULL_THROTTLE: Throttle = { a: 1, b: 1 };

/** A layout with what every question of it needs: the curves that had to be fitted, and a way to assemble and solve. */
export class Rig {
  readonly layout: Layout;
  /** What was made of the plumbing by a rig that this one differs from in some other way; shared by all of them. */
  readonly made: Made;
  private readonly store: PartStore;
  private readonly ownThrottle?: Throttle;

  private constructor(layout: Layout, store: PartStore, throttle?: Throttle, made: Made = new Map()) {
    this.layout = layout;
    this.store = store;
    this.ownThrottle = throttle;
    this.made = made;
  }

  /** The rig as another layout of the same pumps has it, at another throttle if one is given. */
  with(layout: Layout, throttle?: Throttle): Rig {
    const store = layout.site === this.layout.site ? this.store : this.store.at(siteOf(layout.site));
    return new Rig(layout, store, throttle, this.made);
  }

  /** The rig as a layout of other plumbing but the same pumps has it; what was made of the old plumbing is left to the old rig. */
  relaid(layout: Layout): Rig {
    return new Rig(layout, this.store, this.ownThrottle);
  }

  static async of(layout: Layout): Promise<Rig> {
    return new Rig(layout, new PartStore(siteOf(layout.site), await fitCurves(pumpsOf(layout))));
  }

  /** Whether the engine has the pumps that a staging needs. */
  can(staging: StagingName): boolean {
    return staging === 'a' || this.layout.engine.pumps.b !== undefined;
  }

  /** The throttle that the layout states; full where it states a discharge pressure to hold instead. */
  get throttle(): Throttle {
    if (this.ownThrottle) return this.ownThrottle;
    const { throttle } = this.layout;
    return throttle.by === 'speed' ? { a: throttle.a, b: throttle.b } : FULL_THROTTLE;
  }

  /** An assembly of the same plumbing with its pumps as this rig has them: at its place, age and throttle. */
  turned(assembly: Assembly): Assembly {
    const { throttle, store } = this;
    const pumps = assembly.pumps.map((pump) => {
      const id = pump.booster ? undefined : pump.name === 'pump a' ? 'a' : 'b';
      const wear = (id && this.layout.engine.pumps[id]?.wear) ?? 0;
      return {
        ...pump,
        curve: store.curve(pump.model, wear),
        held: store.held(pump.model),
        speed: id ? throttle[id] : pump.speed,
      };
    });
    return { ...assembly, site: store.site, pumps };
  }

  assemble(
    options: Partial<AssembleOptions> & { staging: StagingName; lay: AssembleOptions['lay'] },
  ): Assembly {
    return assemble(this.layout, { throttle: this.throttle, store: this.store, ...options });
  }
}

/** A solver, and the assembly whose pumps its network has at present. */
interface Shared {
  solver: NetworkSolver;
  turnedTo: Assembly;
}

/** An assembly with its solver; solves start from the last one. */
export class SolvedAssembly {
  readonly assembly: Assembly;
  private readonly shared: Shared;
  private readonly balance: EngineBalance;

  constructor(assembly: Assembly, shared?: Shared) {
    this.assembly = assembly;
    this.shared = shared ?? { solver: new NetworkSolver(assembly.network), turnedTo: assembly };
    this.balance = new EngineBalance(
      assembly.pumps,
      (fresh) => this.solveAsSet(fresh),
      (pump) => this.solver.speedSet(pump.link),
    );
  }

  /** The same network, solved on from where it is, with the pumps as another assembly of it has them. */
  as(assembly: Assembly): SolvedAssembly {
    return new SolvedAssembly(assembly, this.shared);
  }

  private get solver(): NetworkSolver {
    const { shared, assembly } = this;
    if (shared.turnedTo !== assembly) {
      shared.turnedTo = assembly;
      for (const { law, link, curve, held, speed } of assembly.pumps) {
        law.become(curve, held);
        shared.solver.setSpeed(link, speed);
      }
    }
    return shared.solver;
  }

  setDemand(node: number, flow: number): void {
    this.solver.setDemand(node, flow);
  }

  /** Sets the head of a water surface, m over the pump inlets. */
  setHead(node: number, head: number): void {
    this.solver.setHead(node, head);
  }

  setSpeed(link: number, speed: number): void {
    this.solver.setSpeed(link, speed);
  }

  /** The steady state; throws NoSteadyAnswer where there is none. */
  solve(): OperatingPoint {
    const { solution, speeds, failure } = this.balance.run();
    if (failure) {
      const { iterations, headResidual } = solution;
      throw new NoSteadyAnswer({
        where: failure.where,
        message: failure.message,
        action: failure.action,
        detail: `${failure.code} after ${iterations} iterations, worst residual ${headResidual.toPrecision(3)} m`,
      });
    }
    return new OperatingPoint(this.assembly, solution, speeds);
  }

  private solveAsSet(fresh: boolean): Solution {
    const solution = this.solver.solve({ warm: !fresh });
    // On a curve that droops the way from the last state may lead nowhere where that from a fresh start does.
    return solution.failure?.code === 'not_converged' ? this.solver.solve() : solution;
  }
}

function pumpsOf(layout: Layout): Pump[] {
  const { a, b } = layout.engine.pumps;
  const boosters = allSteps(layout).flatMap((step) => (step.kind === 'pump' ? [step.pump] : []));
  return [a.model, ...(b ? [b.model] : []), ...boosters];
}

/** Every step of a layout, those within branches and siamese lines too. */
export function allSteps(layout: Layout): Step[] {
  const { plumbing, outlets } = layout.engine;
  const draft = layout.supply.kind === 'draft' ? layout.supply.suction : [];
  const lists = [
    draft,
    plumbing.intake,
    plumbing.suction.a,
    plumbing.suction.b,
    plumbing.discharge.a,
    plumbing.discharge.b,
    plumbing.transfer,
    plumbing.manifold,
    ...outlets.map((outlet) => outlet.steps),
    ...layout.lay.map((lay) => lay.steps),
  ];
  return lists.flatMap((list) => list.flatMap(within));
}

export function within(step: Step): Step[] {
  if (step.kind === 'branch') return [step, ...step.to.flatMap((line) => line.steps.flatMap(within))];
  if (step.kind === 'siamese') return [step, ...step.siamese.flatMap((line) => line.flatMap(within))];
  return [step];
}
