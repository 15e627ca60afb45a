import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';

/**
 * Net positive suction head that a pump is sure to need at its flow and speed by the rows of its own file, m: straight
 * between rows, and past the last row at least what that row asks for, as the need does not fall with flow. Undefined below
 * the first row, where the file says nothing, and without rows: what is carried on from there may warn and decides nothing.
 * Flow goes by the speed and head by its square.
 */
export function certainSuctionNeed(point: OperatingPoint, pump: AssembledPump): number | undefined {
  const rows = pump.model.npsh_required;
  if (rows === undefined) return undefined;
  const speed = point.speedOf(pump);
  const flow = point.flow(pump.link) / speed;
  const above = rows.findIndex(([q]) => q >= flow);
  const [last, lastHead] = rows[rows.length - 1];
  if (flow >= last) return speed * speed * lastHead;
  if (flow < rows[0][0]) return undefined;
  if (above === 0) return speed * speed * rows[0][1];
  const [q0, h0] = rows[above - 1];
  const [q1, h1] = rows[above];
  return speed * speed * (h0 + ((h1 - h0) * (flow - q0)) / (q1 - q0));
}
