import type { AssembleOptions } from '../assembly/assemble.js';
import type { AssembledPump, Assembly, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { closeIn } from './falling-root.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Slowest speed that a governor is taken to turn a pump at, of its rated speed. */
const IDLE = 0.05;
/** Speeds are found to this, or once the pressure lies this near under its setting, Pa (0.0015 psi). */
const SPEED_FOUND = 1e-7;
const PRESSURE_FOUND = 10;

/** The lowest speed up to `most` from which a condition holds that more speed never undoes; undefined where none is. */
export function lowestSpeed(holds: (speed: number) => boolean, most: number): number | undefined {
  if (!holds(most)) return undefined;
  let low = IDLE;
  let high = most;
  while (high - low > SPEED_FOUND) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** A layout with its lay, whose engine is run at one throttle after another; boosters keep their own. */
export class Throttled {
  readonly assembly: Assembly;
  readonly own: readonly AssembledPump[];
  private readonly solved: SolvedAssembly;

  constructor(rig: Rig, staging: StagingName, nozzleState?: AssembleOptions['nozzleState']) {
    this.assembly = rig.assemble({ staging, lay: 'whole', nozzleState });
    this.own = this.assembly.pumps.filter((pump) => !pump.booster);
    this.solved = new SolvedAssembly(this.assembly);
  }

  /** As the layout's own throttle has it. */
  asLaid(): OperatingPoint {
    return this.solved.solve();
  }

  /** All the engine's pumps at one part of governed speed. */
  at(speed: number): OperatingPoint {
    for (const pump of this.own) {
      this.solved.setSpeed(pump.link, speed);
      pump.speed = speed;
    }
    return this.solved.solve();
  }

  /**
   * The state at the lowest speed up to `most` from which a condition holds that more speed never undoes; undefined
   * where not even `most` is enough.
   */
  lowest(holds: (point: OperatingPoint) => boolean, most: number): OperatingPoint | undefined {
    const speed = lowestSpeed((one) => holds(this.at(one)), most);
    return speed === undefined ? undefined : this.at(speed);
  }

  /** What the highest discharge of the engine's own pumps reads, Pa. */
  discharge(point: OperatingPoint): number {
    return Math.max(...this.own.map((pump) => point.gaugePressure(pump.discharge)));
  }
}

/**
 * The layout as it stands, with its lay. Where the throttle is a pressure to hold, both pumps run at the one speed, up to
 * full, at which the highest discharge of the engine's own pumps reads that pressure: pressure rises with speed throughout,
 * so that the search can only close in.
 */
export function governed(
  rig: Rig,
  staging: StagingName,
  nozzleState?: AssembleOptions['nozzleState'],
): OperatingPoint {
  const { throttle } = rig.layout;
  if (throttle.by === 'speed') return new Throttled(rig, staging, nozzleState).asLaid();
  const assembly = rig.assemble({ staging, lay: 'whole', nozzleState });
  return holdPressure(new SolvedAssembly(assembly), throttle.discharge_pressure);
}

/** Turns the engine's own pumps at the one speed, up to full, at which the highest of their discharges reads a pressure. */
export function holdPressure(solved: SolvedAssembly, pressure: number): OperatingPoint {
  const own = solved.assembly.pumps.filter((pump) => !pump.booster);
  const run = (speed: number) => {
    for (const pump of own) {
      solved.setSpeed(pump.link, speed);
      pump.speed = speed;
    }
    const point = solved.solve();
    const highest = Math.max(...own.map((pump) => point.gaugePressure(pump.discharge)));
    return { value: pressure - highest, point };
  };
  const atFull = run(1);
  if (atFull.value >= 0) return atFull.point;
  const atIdle = run(IDLE);
  // Water from a hydrant may stand higher than the setting by itself; then the pumps idle.
  if (atIdle.value < 0) return atIdle.point;
  const { low } = closeIn(
    run,
    { low: IDLE, atLow: atIdle, high: 1, atHigh: atFull },
    SPEED_FOUND,
    ({ value }) => value < PRESSURE_FOUND,
  );
  return run(low).point;
}
