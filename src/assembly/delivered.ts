import type { AssembledPump } from './assembly.js';
import type { OperatingPoint } from './operating-point.js';
import { STANDSTILL } from './standstill.js';

/** A check valve that stands with less than this across it is at rest, not held shut, Pa (0.015 psi). */
const AT_REST = 100;

/** What runs back to the tank by a pump's own cooling line, m3/s; undefined where it has none of its own. */
export function coolingFlow(point: OperatingPoint, { cooling }: AssembledPump): number | undefined {
  return cooling === undefined ? undefined : point.flow(cooling);
}

/** What runs back to the tank by relief valves, and by cooling lines that are no pump's own, m3/s; nothing where none does. */
export function returns(point: OperatingPoint): { name: string; flow: number }[] {
  const { reliefs, coolers } = point.assembly;
  return [...reliefs, ...coolers]
    .map(({ name, link }) => ({ name, flow: point.flow(link) }))
    .filter(({ flow }) => flow > STANDSTILL);
}

/** What a pump gives to its discharge, its own cooling line and relief valve left out, m3/s; below 0 where water runs back through it. */
export function delivered(point: OperatingPoint, pump: AssembledPump): number {
  if (pump.checkValve) return point.flow(pump.checkValve.link);
  const relieved = pump.relief === undefined ? 0 : point.flow(pump.relief);
  return point.flow(pump.link) - (coolingFlow(point, pump) ?? 0) - relieved;
}

/**
 * Whether a pump in parallel gives nothing because the header stands above what it can reach, and holds its check valve shut
 * or drives water back through it.
 */
export function isShutOut(point: OperatingPoint, pump: AssembledPump): boolean {
  const { pumps, staging } = point.assembly;
  if (staging !== 'parallel' || pump.booster) return false;
  const carried = pumps.some(
    (other) => other !== pump && !other.booster && delivered(point, other) > STANDSTILL,
  );
  const own = delivered(point, pump);
  if (!carried || own > STANDSTILL) return false;
  // Behind a valve that is shut as well, a pump may stand above the header and still give nothing.
  return pump.checkValve ? point.lossOf(pump.checkValve) < -AT_REST : own < -STANDSTILL;
}
