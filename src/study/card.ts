import type { AssembleOptions } from '../assembly/assemble.js';
import type { AssembledNozzle } from '../assembly/assembly.js';
import { leastPressure, shortOfLeast } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout } from '../layout/layout.js';
import { alwaysRun } from './always-run.js';
import type { AdvanceAnswer, FlowAnswer, Statement } from './answer.js';
import { type CardPoint, pointsOf } from './card-points.js';
import { shuttleClock } from './clock.js';
import type { ShuttleGap, TankClock } from './clock-answer.js';
import { gated } from './gated.js';
import { governed } from './governor.js';
import { laidHose } from './ground-line.js';
import { GrowingLay } from './growing-lay.js';
import { lowestHoseLimit } from './hose-limits.js';
import { operateLayout } from './operation.js';
import { LayPaths } from './paths.js';
import { Rig } from './rig.js';
import { shuttleRound } from './shuttle.js';
import { drawnFrom } from './supply.js';

/** How many nozzles may be open at once with each having its least, in a state that can be. */
export interface OpenAtMost {
  /** So many of the farthest were tried together, each by its hose from the outlet. */
  atMost: number;
  /** Which. */
  which: string[];
  of: number;
  now: number;
}

export interface CardAnswer {
  flow: FlowAnswer;
  throttle: { a?: number; b?: number; held?: number };
  /** Discharge gauge of each of the engine's pumps, flowing and all shut. */
  gauges: { pump: string; flowing: number; shut?: number }[];
  lines: { outlet: string; points: CardPoint[] }[];
  open: OpenAtMost;
  nozzleLeast: { name: string; least: number }[];
  /** The lowest limit of the hose on the ground, and of which; undefined where none is known. */
  hoseLimit?: { hose: string; pressure: number };
  tank?: TankClock;
  call?: {
    /** s from when the water is turned on; 0 means at once. */
    after: number;
    /** What the tank then holds, m3. */
    left: number;
    /** From the call to water in the tank, s; undefined where no shuttle is stated. */
    lead?: number;
    /** When the first tender is in, where the layout says, s from when the water is turned on. */
    firstIn?: number;
  };
  tenders?: { have: number; needed?: number; sustained: number; gap?: ShuttleGap };
  /** Of a progressive lay: where it stops and why. */
  advance?: AdvanceAnswer;
  assumptions: Statement[];
}

export interface CardOptions {
  nozzleState?: AssembleOptions['nozzleState'];
  advance?: AdvanceAnswer;
}

/** Everything that a crew has to know of a lay as it stands, on one page. */
export async function cardOf(layout: Layout, options: CardOptions = {}): Promise<CardAnswer> {
  const { nozzleState, advance } = options;
  const flow = await operateLayout(layout, { nozzleState });
  const rig = await Rig.of(layout);
  const point = governed(rig, layout.staging, nozzleState);
  const shut = alwaysRun(rig, point, nozzleState).find(({ code }) => code === 'all_shut')?.point;
  const tank = flow.tank;
  const shuttle = shuttleClock(layout, drawnFrom(point, point.assembly.source.node), tank);
  const own = point.assembly.pumps.filter(({ booster }) => !booster);
  const held = layout.throttle.by === 'discharge_pressure' ? layout.throttle.discharge_pressure : undefined;
  const speed = (name: string) => own.find((pump) => pump.name === name)?.speed;
  return {
    flow,
    throttle: { a: speed('pump a'), b: speed('pump b'), held },
    gauges: own.map((pump) => {
      const still = shut?.assembly.pumps.find(({ name }) => name === pump.name);
      return {
        pump: pump.name,
        flowing: point.gaugePressure(pump.discharge),
        shut: shut && still && shut.gaugePressure(still.discharge),
      };
    }),
    lines: layout.lay.map(({ outlet, steps }) => ({
      outlet,
      points: pointsOf({ outlet, steps }, point, shut),
    })),
    open: openAtMost(rig, point),
    nozzleLeast: leastOf(point.assembly.nozzles),
    hoseLimit: lowestHoseLimit(laidHose(point.assembly)),
    tank,
    call: tank && callOf(layout, tank),
    tenders: shuttle && {
      have: shuttle.tenders,
      needed: shuttle.needed,
      sustained: shuttle.sustained,
      gap: shuttle.gap,
    },
    advance,
    assumptions: flow.assumptions,
  };
}

/**
 * The most nozzles that may be open at once with each having its least. The farthest are tried, as they commonly have it
 * hardest; that any others of as many do no worse is not said, since height or a thirsty nozzle may make it otherwise.
 */
function openAtMost(rig: Rig, point: OperatingPoint): OpenAtMost {
  const { assembly } = point;
  const paths = new LayPaths(assembly);
  const lengths = new Map(assembly.nozzles.map((one) => [one.name, paths.hoseTo(one.inlet)]));
  const far = [...assembly.nozzles].sort((a, b) => (lengths.get(b.name) ?? 0) - (lengths.get(a.name) ?? 0));
  const holds = (count: number) => {
    const open = new Set(far.slice(0, count).map(({ name }) => name));
    const found = gated(() => governed(rig, assembly.staging, (name) => (open.has(name) ? 'open' : 'shut')));
    if (found === undefined || found.why) return false;
    return found.point.assembly.nozzles.every((nozzle) => !shortOfLeast(found.point, nozzle));
  };
  let low = 0;
  let high = far.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return {
    atMost: low,
    which: far.slice(0, low).map(({ name }) => name),
    of: far.length,
    now: assembly.nozzles.filter(({ state }) => state === 'open').length,
  };
}

/** The least of each kind of nozzle, once. */
function leastOf(nozzles: readonly AssembledNozzle[]): CardAnswer['nozzleLeast'] {
  const found = new Map<string, number>();
  for (const nozzle of nozzles) {
    const least = leastPressure(nozzle);
    if (least !== undefined) found.set(nozzle.modelName, least);
  }
  return [...found].map(([name, least]) => ({ name, least }));
}

/** When to call, so that water comes before the tank is at its reserve. */
function callOf({ shuttle }: Layout, tank: TankClock): CardAnswer['call'] {
  if (tank.endurance === null) return undefined;
  if (shuttle === undefined) return { after: 0, left: tank.capacity - tank.hoseFill };
  const { there, dump } = shuttleRound(shuttle);
  const lead = there + dump;
  const after = Math.max(0, tank.endurance - lead);
  const left = Math.min(tank.capacity - tank.hoseFill, tank.reserve + tank.flowLow * lead);
  return { after, left, lead, firstIn: shuttle.first_in };
}

/** The card of a progressive lay at the last section that nothing stops; at the first where even that is stopped. */
export async function advanceCard(layout: Layout, advance: AdvanceAnswer): Promise<CardAnswer> {
  const plan = layout.progressive;
  if (plan === undefined) throw new TypeError('an advance without a plan');
  const lay = new GrowingLay(await Rig.of(layout), plan);
  return cardOf(lay.layoutAt(Math.max(1, advance.reached)), { advance });
}
