import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { npshAvailable } from '../assembly/suction-head.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';

/**
 * `file`: between the rows of the pump's own file, or past them by what the last one is sure to leave. `file_extended`: the
 * rows carried on to a flow that they do not reach. `lift_practice`: no file says, and the trade's rule of lift is held to.
 */
export type SuctionBasis = 'file' | 'file_extended' | 'lift_practice';

export interface SuctionNeed {
  head: number;
  basis: SuctionBasis;
}

/**
 * Net positive suction head that a pump needs at its flow and speed, m. By the rows of its file: level below the first row,
 * straight between rows and straight on beyond the last (common practice, no source); flow goes by the speed and head by
 * its square. Without rows, what is left of the air's push at the lift that the trade counts on.
 */
export function suctionNeed(point: OperatingPoint, pump: AssembledPump): SuctionNeed {
  const rows = pump.model.npsh_required;
  if (rows === undefined) return { head: practiceHead(point), basis: 'lift_practice' };
  const speed = point.speedOf(pump);
  const flow = Math.max(0, point.flow(pump.link)) / speed;
  const told = flow >= rows[0][0] && flow <= rows[rows.length - 1][0];
  return { head: speed * speed * readOn(rows, flow), basis: told ? 'file' : 'file_extended' };
}

function readOn(rows: readonly (readonly [number, number])[], flow: number): number {
  if (flow <= rows[0][0] || rows.length === 1) return rows[0][1];
  let above = rows.findIndex(([q]) => q >= flow);
  if (above < 0) above = rows.length - 1;
  const [q0, h0] = rows[above - 1];
  const [q1, h1] = rows[above];
  // Beyond the last row a need that falls there is no promise that it falls on.
  const slope = flow > q1 ? Math.max(0, (h1 - h0) / (q1 - q0)) : (h1 - h0) / (q1 - q0);
  return flow > q1 ? h1 + slope * (flow - q1) : h0 + slope * (flow - q0);
}

/**
 * Net positive suction head that a pump is sure to need at its flow and speed by the rows of its own file, m: straight
 * between rows, and past the last row what that row asks for, as the need does not fall with flow. Undefined below the first
 * row, where the file says nothing, without rows, and where the pump moves nothing, which needs no head for it: what is
 * carried on from there may warn and decides nothing.
 */
export function certainSuctionNeed(point: OperatingPoint, pump: AssembledPump): number | undefined {
  const rows = pump.model.npsh_required;
  const moved = point.flow(pump.link);
  if (rows === undefined || moved <= STANDSTILL) return undefined;
  const speed = point.speedOf(pump);
  const flow = moved / speed;
  const [last] = rows[rows.length - 1];
  return flow < rows[0][0] ? undefined : speed * speed * readOn(rows, Math.min(flow, last));
}

/**
 * What is left of the air's push when a pump works at the lift that the trade counts on: a third of the theoretical lift,
 * m. Held against where a file does not say what its pump needs. NWCG Firefighter Math 3.5.
 */
export function practiceHead({ assembly }: OperatingPoint): number {
  const { atmosphericPressure, waterDensity } = assembly.site;
  const theoretical = theoreticalLift(atmosphericPressure, waterDensity);
  return theoretical - attainableLift(theoretical);
}

/** Suction head over what a pump needs, m; below 0 it cavitates, or may. */
export function suctionMargin(point: OperatingPoint, pump: AssembledPump): number {
  return npshAvailable(point, pump) - suctionNeed(point, pump).head;
}

/**
 * Suction head over what a pump is sure to need, m, and by practice where no file says; without end where nothing is sure.
 * Below 0 it cavitates as far as can be known.
 */
export function sureSuctionMargin(point: OperatingPoint, pump: AssembledPump): number {
  const available = npshAvailable(point, pump);
  if (point.flow(pump.link) <= STANDSTILL) return Number.POSITIVE_INFINITY;
  const need = pump.model.npsh_required ? certainSuctionNeed(point, pump) : practiceHead(point);
  return need === undefined ? available : available - need;
}

/**
 * The least suction head over what a pump is sure to need by its own file, as a part of that, or where no file says, the head
 * that there is as a part of what practice leaves; 1 at most.
 */
export function suctionSlack(point: OperatingPoint): number {
  const slacks = point.assembly.pumps.map((pump) => {
    if (pump.booster || point.flow(pump.link) <= STANDSTILL) return 1;
    const available = npshAvailable(point, pump);
    const own = certainSuctionNeed(point, pump);
    if (own !== undefined) return own > 0 ? (available - own) / own : 1;
    const practice = practiceHead(point);
    return practice > 0 ? available / practice : 1;
  });
  return Math.min(1, ...slacks);
}
