import type { AssembleOptions } from '../assembly/assemble.js';
import type { StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Slowest speed that a governor is taken to turn a pump at, of its rated speed. */
const IDLE = 0.05;
/** Speeds are found to this. */
const SPEED_FOUND = 1e-6;

/**
 * The layout as it stands, with its lay. Where the throttle is a pressure to hold, both pumps run at the one speed, up to
 * full, at which the highest discharge of the engine's own pumps reads that pressure.
 */
export function governed(
  rig: Rig,
  staging: StagingName,
  nozzleState?: AssembleOptions['nozzleState'],
): OperatingPoint {
  const assembly = rig.assemble({ staging, lay: 'whole', nozzleState });
  const solved = new SolvedAssembly(assembly);
  const { throttle } = rig.layout;
  if (throttle.by === 'speed') return solved.solve();
  const own = assembly.pumps.filter((pump) => !pump.booster);
  const run = (speed: number): OperatingPoint => {
    for (const pump of own) {
      solved.setSpeed(pump.link, speed);
      pump.speed = speed;
    }
    return solved.solve();
  };
  const over = (point: OperatingPoint) =>
    Math.max(...own.map((pump) => point.gaugePressure(pump.discharge))) - throttle.discharge_pressure;
  let point = run(1);
  let low = IDLE;
  let high = 1;
  while (over(point) > 0 && high - low > SPEED_FOUND) {
    const middle = (low + high) / 2;
    if (over(run(middle)) > 0) high = middle;
    else low = middle;
    if (high - low <= SPEED_FOUND) point = run(high);
  }
  return point;
}
