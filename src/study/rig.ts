import { type AssembleOptions, assemble } from '../assembly/assemble.js';
import type { Assembly, StagingName } from '../assembly/assembly.js';
import type { Throttle } from '../assembly/engine.js';
import { OperatingPoint } from '../assembly/operating-point.js';
import { PartStore } from '../assembly/part-store.js';
import { fitCurves } from '../assembly/pump.js';
import { siteOf } from '../assembly/site.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import { NetworkSolver } from '../network/solver.js';
import { NoSteadyAnswer } from './no-steady-answer.js';

/** Governed speed of both pumps. */
export const FULL_THROTTLE: Throttle = { a: 1, b: 1 };

/** A layout with what every question of it needs: the curves that had to be fitted, and a way to assemble and solve. */
export class Rig {
  readonly layout: Layout;
  private readonly store: PartStore;
  private readonly ownThrottle?: Throttle;

  private constructor(layout: Layout, store: PartStore, throttle?: Throttle) {
    this.layout = layout;
    this.store = store;
    this.ownThrottle = throttle;
  }

  /** The rig as another layout of the same pumps has it, at another throttle if one is given. */
  with(layout: Layout, throttle?: Throttle): Rig {
    const store = layout.site === this.layout.site ? this.store : this.store.at(siteOf(layout.site));
    return new Rig(layout, store, throttle);
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

  assemble(
    options: Partial<AssembleOptions> & { staging: StagingName; lay: AssembleOptions['lay'] },
  ): Assembly {
    return assemble(this.layout, { throttle: this.throttle, store: this.store, ...options });
  }
}

/** An assembly with its solver; solves start from the last one. */
export class SolvedAssembly {
  readonly assembly: Assembly;
  private readonly solver: NetworkSolver;

  constructor(assembly: Assembly) {
    this.assembly = assembly;
    this.solver = new NetworkSolver(assembly.network);
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
    let solution = this.solver.solve({ warm: true });
    // On a curve that droops the way from the last state may lead nowhere where that from a fresh start does.
    if (solution.failure?.code === 'not_converged') solution = this.solver.solve();
    const { failure } = solution;
    if (failure) {
      const { iterations, headResidual } = solution;
      throw new NoSteadyAnswer({
        where: failure.where,
        message: failure.message,
        action: failure.action,
        detail: `${failure.code} after ${iterations} iterations, worst residual ${headResidual.toPrecision(3)} m`,
      });
    }
    return new OperatingPoint(this.assembly, solution);
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
