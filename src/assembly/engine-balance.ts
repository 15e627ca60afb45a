import type { NetworkFailure, Solution } from '../network/network.js';
import type { HeldSpeed } from '../physics/pump-curve/held-speed.js';
import type { UnsteadyStretch } from '../physics/pump-curve/unsteady-stretch.js';
import type { AssembledPump } from './assembly.js';
import { type Imbalance, runDown } from './run-down.js';

/** A speed this little below what its governor asks for is held by it: rounding, not want of power. */
const HELD = 1e-9;

export interface BalanceFailure extends Omit<NetworkFailure, 'code'> {
  code: NetworkFailure['code'] | 'engine_hunts';
}

/** What an engine balance came to: a state and, by link, the speeds that it rests on; or why there is none. */
export interface Balance {
  solution: Solution;
  speeds?: ReadonlyMap<number, number>;
  failure?: BalanceFailure;
}

interface Engine {
  pump: AssembledPump;
  held: HeldSpeed;
  governed: number;
  stretches: readonly UnsteadyStretch[];
}

/**
 * The speeds of engines at the end of their power where the rows of a pump's efficiency fall or climb so steeply that head against flow
 * does not tell them: see `unsteadyStretches`. There the pump has several heads at one flow or several flows at one head, and the
 * network's own iteration, which goes by head against flow, finds no way through.
 *
 * At a given speed of every such engine the network has one state, which tells the power that each pump takes. So the engines are set to
 * their governed speed, as when pumps are run up against shut valves and the lines are then opened, and are pulled down by what they
 * lack of power until each has what its pump takes. What is come to so is steady, and the same wherever the solver has been before.
 */
export class EngineBalance {
  private readonly pumps: readonly AssembledPump[];
  private readonly solve: (fresh: boolean) => Solution;
  private readonly governed: (pump: AssembledPump) => number;

  /** @param solve solves the network as it stands, `fresh` or from the last state; `governed` is the speed that is set */
  constructor(
    pumps: readonly AssembledPump[],
    solve: (fresh: boolean) => Solution,
    governed: (pump: AssembledPump) => number,
  ) {
    this.pumps = pumps;
    this.solve = solve;
    this.governed = governed;
  }

  run(): Balance {
    const solution = this.solve(false);
    const { failure } = solution;
    if (failure && failure.code !== 'not_converged') return { solution, failure };
    const engines = this.engines();
    if (!engines.some((engine) => failure !== undefined || isPulledDown(engine, solution)))
      return { solution, failure };
    try {
      return this.balance(engines, solution);
    } finally {
      for (const { pump } of engines) pump.law.pin(undefined);
    }
  }

  /** The engines that have an unsteady stretch at the end of their power. */
  private engines(): Engine[] {
    return this.pumps.flatMap((pump) => {
      const { held } = pump;
      if (held === undefined) return [];
      const governed = this.governed(pump);
      const stretches = held.unsteadyAt(governed);
      return stretches.length === 0 ? [] : [{ pump, held, governed, stretches }];
    });
  }

  private balance(engines: readonly Engine[], unbalanced: Solution): Balance {
    // On a curve that droops a state would else hang on the one before.
    const fresh = this.pumps.some(({ curve }) => curve.droops());
    let solution = unbalanced;
    const lacks = (speeds: readonly number[]): Imbalance => {
      engines.forEach(({ pump }, i) => {
        pump.law.pin(speeds[i]);
      });
      solution = this.solve(fresh);
      const { failure, flows } = solution;
      if (failure) return undefined;
      return engines.map(({ held, pump }, i) => held.speedAsked(flows[pump.link], speeds[i]) / speeds[i]);
    };
    const governed = engines.map((engine) => engine.governed);
    const speeds = runDown(governed, lacks);
    if (speeds === undefined) return { solution, failure: solution.failure ?? hunts(engines) };
    return { solution, speeds: new Map(engines.map(({ pump }, i) => [pump.link, speeds[i]])) };
  }
}

/** Whether an engine is short of power in a state, so that it may be another than the one that it is pulled down to. */
function isPulledDown({ pump, held, governed }: Engine, { flows }: Solution): boolean {
  const out = { speed: governed, slope: 0 };
  held.evaluate(flows[pump.link], governed, out);
  return out.speed < governed * (1 - HELD);
}

/** Names the engines that are not at their governed speed when the search is given up. */
function hunts(engines: readonly Engine[]): BalanceFailure {
  const pulled = engines.filter(({ pump, governed }) => (pump.law.pinned ?? 0) < governed * (1 - HELD));
  const guilty = pulled.length > 0 ? pulled : engines;
  const names = guilty.map(({ pump }) => pump.name);
  const rows = guilty.map(({ pump, stretches }) => `${rowsOf(pump, stretches)} of ${pump.name}`);
  return {
    code: 'engine_hunts',
    where: names,
    message: `no speed was found that ${names.join(' and ')} would settle at: short of power, with efficiencies that change too steeply at ${rows.join(' and ')}`,
    action:
      'Check those rows of efficiency against a measurement: a real pump changes more gently. If they are right, run one pump, run slower, or give the engine more power.',
  };
}

/** The rows of efficiency, as the file counts them, that unsteady stretches lie between. */
function rowsOf({ model }: AssembledPump, stretches: readonly UnsteadyStretch[]): string {
  const flows = model.efficiency?.map(([flow]) => flow) ?? [];
  const first = Math.max(1, flows.filter((flow) => flow <= stretches[0].from).length);
  const last = Math.max(
    first,
    flows.findIndex((flow) => flow >= (stretches.at(-1) as UnsteadyStretch).to) + 1,
  );
  return first === last ? `row ${first}` : `rows ${first} to ${last}`;
}
