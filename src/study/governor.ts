import type { AssembleOptions } from '../assembly/assemble.js';
import type { AssembledPump, Assembly, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Slowest speed that a governor is taken to turn a pump at, of its rated speed. */
const IDLE = 0.05;
/** Speeds are found to this. */
const SPEED_FOUND = 1e-6;

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
 * full, at which the highest discharge of the engine's own pumps reads that pressure.
 */
export function governed(
  rig: Rig,
  staging: StagingName,
  nozzleState?: AssembleOptions['nozzleState'],
): OperatingPoint {
  const throttled = new Throttled(rig, staging, nozzleState);
  const { throttle } = rig.layout;
  if (throttle.by === 'speed') return throttled.asLaid();
  const held = throttled.lowest((point) => throttled.discharge(point) >= throttle.discharge_pressure, 1);
  return held ?? throttled.at(1);
}
