import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import { heightOfPressure } from '../physics/elevation.js';
import { attainableLift, theoreticalLift } from '../physics/npsh.js';

/** Net positive suction head that there is at a pump's inlet, m. */
export function npshAvailable(state: OperatingPoint, pump: AssembledPump): number {
  const { site } = state.assembly;
  const absolute = state.totalPressure(pump.inlet) + site.atmosphericPressure - site.vapourPressure;
  return heightOfPressure(absolute, site.waterDensity);
}

/**
 * Net positive suction head that a pump needs at its flow and speed, m, from the rows of its file: level below the first
 * row, straight between rows and straight on beyond the last (common practice, no source). Flow goes by the speed and
 * head by its square. Undefined where the file has no rows. Outside the rows it is an assumption, which may warn and
 * decides nothing: see `certainSuctionNeed`.
 */
export function npshRequired(state: OperatingPoint, pump: AssembledPump): number | undefined {
  const rows = pump.model.npsh_required;
  if (rows === undefined) return undefined;
  const speed = state.speedOf(pump);
  return speed * speed * readOn(rows, Math.max(0, state.flow(pump.link)) / speed);
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

/**
 * What is left of the air's push when a pump works at the lift that the trade counts on: a third of the theoretical lift,
 * m. Held against where a file does not say what its pump needs. NWCG Firefighter Math 3.5.
 */
export function practiceHead(state: OperatingPoint): number {
  const { atmosphericPressure, waterDensity } = state.assembly.site;
  const theoretical = theoreticalLift(atmosphericPressure, waterDensity);
  return theoretical - attainableLift(theoretical);
}

export interface SuctionNeed {
  head: number;
  /** The pump's own file, or the lift that the trade counts on. */
  basis: 'file' | 'lift_practice';
}

export function suctionNeed(state: OperatingPoint, pump: AssembledPump): SuctionNeed {
  const own = npshRequired(state, pump);
  return own === undefined
    ? { head: practiceHead(state), basis: 'lift_practice' }
    : { head: own, basis: 'file' };
}

/** Suction head over what a pump needs, m; below 0 it cavitates. */
export function suctionMargin(state: OperatingPoint, pump: AssembledPump): number {
  return npshAvailable(state, pump) - suctionNeed(state, pump).head;
}

/**
 * The least suction head over what a pump of the engine is sure to need, as a part of that, or where its file does not say, the
 * head that there is as a part of what practice leaves; 1 at most. A pump that moves no water needs none.
 */
export function suctionSlack(state: OperatingPoint): number {
  const slacks = state.assembly.pumps.map((pump) => {
    if (pump.booster || state.flow(pump.link) <= STANDSTILL) return 1;
    const needed = certainSuctionNeed(state, pump);
    const available = npshAvailable(state, pump);
    if (needed === undefined) return available / practiceHead(state);
    return needed > 0 ? (available - needed) / needed : 1;
  });
  return Math.min(1, ...slacks);
}
