import type { Layout } from '../layout/layout.js';
import { TANK_RESERVE_SOURCE } from '../limits/tank-reserve.js';
import type { AdvanceStep, LimitMet } from './advance-answer.js';
import { DrawDown } from './drawdown.js';
import type { LaidOut } from './growing-lay.js';
import { fillOf } from './lay-stores.js';
import { sustainedFlow } from './shuttle.js';
import { drawnFrom } from './supply.js';
import { lastsFrom, tankLeft } from './tank-clock.js';

/** Steps of the draw-down at a section: a plan asks of sixty, and the flow falls evenly. */
const PIECES = 2;

/**
 * The tank as the lay grows: filled into hose, poured while sections are laid where the plan has a pace, refilled by tenders
 * from when the first is in. Sections may be asked for again, as a search does that moves a pump.
 */
export class WaterOnTheWay {
  private readonly layout: Layout;
  private readonly inflow: number;
  /** What is drawn at each section, m3/s. */
  private readonly draws: number[];

  constructor(layout: Layout, before?: WaterOnTheWay) {
    this.layout = layout;
    this.inflow = layout.shuttle ? sustainedFlow(layout.shuttle) : 0;
    this.draws = before ? [...before.draws] : [];
  }

  /** What the tank holds at a step; undefined where the engine does not live on it. */
  left(laid: LaidOut): (NonNullable<AdvanceStep['water']> & { level: number; reserve: number }) | undefined {
    const { tank } = this.layout.engine;
    if (this.layout.supply.kind !== 'tank' || tank === undefined) return undefined;
    const { sections, point, hose } = laid;
    this.draws[sections] = drawnFrom(point, point.assembly.source.node);
    const fill = fillOf(hose.flatMap(({ step }) => (step?.kind === 'hose' ? [step] : [])));
    const { poured, brought } = this.before(sections, fill);
    const { usable, reserve, level } = tankLeft(tank.capacity, fill, poured - brought);
    return { fill, used: poured, brought, left: usable, lasts: null, level, reserve };
  }

  at(laid: LaidOut): AdvanceStep['water'] {
    const { tank } = this.layout.engine;
    const found = this.left(laid);
    if (found === undefined || tank === undefined) return undefined;
    const { level, reserve, ...water } = found;
    const drawDown = new DrawDown(tank, laid.solved);
    const lasts = this.lasts(drawDown, level, reserve, this.waitAt(laid.sections));
    drawDown.refill();
    return { ...water, lasts };
  }

  /** The most that is drawn from one section to another, m3/s. */
  most(from: number, to: number): number {
    return Math.max(0, ...this.draws.slice(from, to + 1).filter((drawn) => drawn !== undefined));
  }

  /** Time until the first tender is in, from when a section is laid, s. */
  private waitAt(section: number): number {
    const { shuttle, progressive } = this.layout;
    return Math.max(0, (shuttle?.first_in ?? 0) - (section - 1) * (progressive?.pace ?? 0));
  }

  /** What was poured and what tenders put into the tank while the sections before one were laid; a full tank takes no more. */
  private before(sections: number, fill: number): { poured: number; brought: number } {
    const { pace } = this.layout.progressive ?? {};
    let poured = 0;
    let brought = 0;
    let drawn = 0;
    for (let section = 1; pace !== undefined && section < sections; section++) {
      drawn = this.draws[section] ?? drawn;
      poured += drawn * pace;
      const comes = this.inflow * Math.max(0, pace - this.waitAt(section));
      brought = Math.min(poured + fill, brought + comes);
    }
    return { poured, brought };
  }

  /** Time to the reserve, s, where tenders bring water after a wait; null where they then keep up. */
  private lasts(drawDown: DrawDown, level: number, reserve: number, wait: number): number | null {
    const { lasts: alone } = lastsFrom(drawDown, level, reserve, 0, PIECES);
    if (alone === null || this.inflow === 0 || alone <= wait) return alone;
    const then = level - (level - reserve) * (wait / alone);
    const { lasts: fed } = lastsFrom(drawDown, then, reserve, this.inflow, PIECES);
    return fed === null ? null : wait + fed;
  }
}

/** What stops a lay of whose water nothing is left above the reserve. */
export function waterLimits(water: Pick<NonNullable<AdvanceStep['water']>, 'left'> | undefined): LimitMet[] {
  if (water === undefined || water.left > 0) return [];
  return [
    {
      code: 'water_run_out',
      at: 'tank',
      state: 'flowing',
      value: { value: water.left, dimension: 'volume' },
      limit: { value: 0, dimension: 'volume' },
      source: TANK_RESERVE_SOURCE,
    },
  ];
}
