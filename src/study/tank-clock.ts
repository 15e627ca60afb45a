import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import type { Layout } from '../layout/layout.js';
import { type Impossibility, whyImpossible } from '../limits/impossible.js';
import { TANK_RESERVE, TANK_RESERVE_SOURCE } from '../limits/tank-reserve.js';
import type { TankClock } from './clock-answer.js';
import { DrawDown } from './drawdown.js';
import { ifSteady } from './if-steady.js';
import { hoseFill } from './lay-stores.js';
import { SolvedAssembly } from './rig.js';

/** The volume at which a state ceases to be is found to this part of the tank. */
const LEVEL_FOUND = 1e-3;

/** An assembly at the speeds that a state was found at. */
export function resolved(point: OperatingPoint): SolvedAssembly {
  const solved = new SolvedAssembly(point.assembly);
  for (const { link, speed } of point.assembly.pumps) solved.setSpeed(link, speed);
  return solved;
}

/**
 * How long the engine's tank lasts, for every question that tells it: what fills the hose on the ground and the reserve taken
 * off, the flow followed as the level falls. Undefined where the engine does not live on its tank.
 */
export function tankClock(layout: Layout, point: OperatingPoint): TankClock | undefined {
  const { tank } = layout.engine;
  if (layout.supply.kind !== 'tank' || tank === undefined) return undefined;
  const drawDown = new DrawDown(tank, resolved(point));
  const { capacity } = tank;
  const fill = hoseFill(layout);
  const { usable, reserve, level } = tankLeft(capacity, fill);
  const flowFull = drawDown.flowAt(capacity);
  const { lasts, ends } = lastsFrom(drawDown, level, reserve);
  const flowing = flowFull > STANDSTILL;
  return {
    capacity,
    reserve,
    hoseFill: fill,
    usable,
    flowFull,
    flowLow: drawDown.flowAt(reserve),
    surfaceFull: drawDown.surface(capacity),
    surfaceLow: drawDown.surface(reserve),
    endurance: flowing ? lasts : null,
    ends: flowing ? ends : undefined,
    flowTimesMinutes: flowing ? usable / flowFull : null,
    source: TANK_RESERVE_SOURCE,
  };
}

/** The same where the tank cannot be followed down in a steady state: then nothing is told of it. */
export function tankClockIfSteady(layout: Layout, point: OperatingPoint): TankClock | undefined {
  return ifSteady(() => tankClock(layout, point));
}

/** What a tank has left to flow once the hose is full and so much has been poured, m3. */
export function tankLeft(
  capacity: number,
  fill: number,
  used = 0,
): { usable: number; reserve: number; level: number } {
  const reserve = TANK_RESERVE * capacity;
  const level = Math.max(reserve, capacity - used - fill);
  return { usable: level - reserve, reserve, level };
}

/**
 * Time until a tank is drawn from a level to its reserve, s, or to where its state ceases to be, with why; null where nothing
 * is drawn or what comes in keeps up.
 */
export function lastsFrom(
  drawDown: DrawDown,
  level: number,
  reserve: number,
  inflow = 0,
  pieces = 4,
): { lasts: number | null; ends?: TankClock['ends'] } {
  if (level <= reserve) return { lasts: 0 };
  const { to, why } = lowestLevel(drawDown, level, reserve);
  if (why === undefined) return { lasts: drawDown.time(level, reserve, inflow, pieces) };
  const lasts = level > to ? drawDown.time(level, to, inflow, pieces) : 0;
  return { lasts, ends: { left: to, why } };
}

/** How far a tank can be drawn down: a pump may want for suction head before the reserve. */
function lowestLevel(
  drawDown: DrawDown,
  level: number,
  reserve: number,
): { to: number; why?: Impossibility } {
  const whyAt = (volume: number) => whyImpossible(drawDown.at(volume));
  const why = whyAt(reserve);
  if (why === undefined) return { to: reserve };
  if (whyAt(level) !== undefined) return { to: level, why };
  let low = reserve;
  let high = level;
  while (high - low > LEVEL_FOUND * level) {
    const middle = (low + high) / 2;
    if (whyAt(middle) === undefined) high = middle;
    else low = middle;
  }
  return { to: high, why: whyAt(low) ?? why };
}
