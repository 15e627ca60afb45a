import type { Statement } from '../caution/caution.js';
import { cautionsOf } from '../caution/cautions.js';
import type { Layout } from '../layout/layout.js';
import type { Flowing } from '../layout/progressive.js';
import { TANK_RESERVE, TANK_RESERVE_SOURCE } from '../limits/tank-reserve.js';
import type { AdvanceAnswer, AdvanceStep, LimitMet, StoreUse } from './advance-answer.js';
import { assumptions } from './assumptions.js';
import { DrawDown } from './drawdown.js';
import { furtherOptions } from './further.js';
import { GrowingLay, type LaidOut } from './growing-lay.js';
import { laidCases } from './laid-cases.js';
import { stepAt } from './lay-step.js';
import { hoseFill, lacking } from './lay-stores.js';
import { Rig } from './rig.js';
import { sustainedFlow } from './shuttle.js';
import { solverReport } from './solver-report.js';
import { drawnFrom } from './supply.js';

/** Raised where a layout that does not grow is asked how it grows. */
export class NoProgressiveLay extends Error {
  override name = 'NoProgressiveLay';
}

/**
 * A progressive lay section by section until a limit stops it, and what would take it further.
 *
 * Throws NoProgressiveLay where the layout has no `progressive`, NoSteadyAnswer where a length of it has no steady state.
 */
export async function advanceLayout(layout: Layout): Promise<AdvanceAnswer> {
  const plan = layout.progressive;
  if (plan === undefined)
    throw new NoProgressiveLay(
      'the layout does not say how its lay grows: add progressive: { trunk: { hose: forestry-1.5, length: 100 ft }, sections: 20 }',
    );
  const rig = await Rig.of(layout);
  const lay = new GrowingLay(rig, plan);
  const steps: AdvanceStep[] = [];
  const water = new WaterOnTheWay(layout);
  let kept: LaidOut | undefined;
  let stop: LimitMet | undefined;
  for (let section = 1; section <= plan.trunk.length && stop === undefined; section++) {
    const laid = lay.at(section);
    const step = stepAt(lay, laid);
    step.water = water.at(laid, lay.layoutAt(section));
    step.limits.push(...storeLimits(step));
    steps.push(step);
    [stop] = step.limits;
    if (stop === undefined || kept === undefined) kept = laid;
  }
  if (kept === undefined) throw new TypeError('a plan without sections passed its schema');
  const reached = stop === undefined ? steps.length : steps.length - 1;
  const asLaid = lay.layoutAt(kept.sections);
  const cases = laidCases(rig.with(asLaid), layout.staging);
  const [{ point }] = cases;
  return {
    question: 'advance',
    title: layout.title,
    engine: layout.engine.name,
    site: point.assembly.site,
    staging: layout.staging,
    plan: {
      outlet: plan.outlet,
      trunk: plan.trunk[0].modelName,
      sections: plan.trunk.length,
      sectionLength: plan.trunk[0].length,
      every: plan.lateral?.every,
      flowing: flowingWords(plan.lateral?.flowing),
      pace: plan.pace,
    },
    steps,
    reached,
    stop,
    options: stop === undefined ? [] : furtherOptions(rig, plan, steps),
    cautions: cautionsOf({ layout: asLaid, cases }),
    assumptions: [...planAssumptions(layout), ...assumptions(asLaid, point.assembly.site)],
    solver: solverReport(point),
  };
}

/** The tank as the lay grows: filled into hose, poured while sections are laid, and what is left of it. */
class WaterOnTheWay {
  private readonly layout: Layout;
  private readonly inflow: number;
  private poured = 0;

  constructor(layout: Layout) {
    this.layout = layout;
    this.inflow = layout.shuttle ? sustainedFlow(layout.shuttle) : 0;
  }

  at({ sections, solved, point }: LaidOut, layout: Layout): AdvanceStep['water'] {
    const { tank } = this.layout.engine;
    if (this.layout.supply.kind !== 'tank' || tank === undefined) return undefined;
    const { pace } = this.layout.progressive ?? {};
    const fill = hoseFill(layout);
    const used = this.poured;
    const reserve = TANK_RESERVE * tank.capacity;
    const level = tank.capacity - used - fill;
    const left = Math.max(0, level - reserve);
    const wait = Math.max(0, (this.layout.shuttle?.first_in ?? 0) - (sections - 1) * (pace ?? 0));
    const drawDown = new DrawDown(tank, solved);
    const lasts = left > 0 ? this.lasts(drawDown, level, reserve, wait) : 0;
    drawDown.refill();
    if (pace !== undefined) {
      const drawn = drawnFrom(point, point.assembly.source.node);
      const brought = this.inflow * Math.max(0, pace - wait);
      this.poured += Math.max(0, drawn * pace - brought);
    }
    return { fill, used, left, lasts };
  }

  /** Time to the reserve, s, where tenders bring water after a wait; null where they then keep up. */
  private lasts(drawDown: DrawDown, level: number, reserve: number, wait: number): number | null {
    const alone = drawDown.time(level, reserve, 0, 2);
    if (alone === null || this.inflow === 0 || alone <= wait) return alone;
    const then = level - (level - reserve) * (wait / alone);
    const fed = drawDown.time(then, reserve, this.inflow, 2);
    return fed === null ? null : wait + fed;
  }
}

/** Hose, fittings and water that a step has not got. */
function storeLimits({ hose, fittings, water }: AdvanceStep): LimitMet[] {
  const short = (code: LimitMet['code'], uses: readonly StoreUse[]): LimitMet[] =>
    lacking(uses).map(({ item, used, carried = used }) => ({
      code,
      at: item,
      state: 'flowing',
      value: used,
      limit: carried,
      source: 'what the layout says is carried',
    }));
  const dry: LimitMet[] =
    water && water.left <= 0
      ? [
          {
            code: 'water_run_out',
            at: 'tank',
            state: 'flowing',
            value: { value: water.left, dimension: 'volume' },
            limit: { value: 0, dimension: 'volume' },
            source: TANK_RESERVE_SOURCE,
          },
        ]
      : [];
  return [...short('hose_run_out', hose), ...short('fittings_run_out', fittings), ...dry];
}

export function flowingWords(flowing: Flowing | undefined): Statement {
  if (flowing === undefined) return { template: 'there are no laterals' };
  if (flowing === 'all') return { template: 'every lateral flows' };
  if (flowing === 'none') return { template: 'no lateral flows, only the head' };
  if ('last' in flowing) {
    const which = flowing.last === 1 ? 'the last lateral flows' : `the last ${flowing.last} laterals flow`;
    return { template: which };
  }
  return { template: `of the laterals these flow: ${flowing.numbers.join(', ')}` };
}

function planAssumptions(layout: Layout): Statement[] {
  const { progressive: plan, engine, supply, shuttle } = layout;
  if (plan === undefined) return [];
  const statements: Statement[] = [
    {
      template:
        'A step is sound while every open nozzle has at least the foot of its working range, or its rating where it has none; hose stands below its working pressure and its service test pressure, flowing and all shut; and hose, fittings and water last',
      source: 'the limits of each part; choice of this program which of them stop a lay',
    },
    {
      template:
        'All shut is taken at the throttle that the step flows at: a governor that holds a pressure would keep it lower',
      source: 'common practice, no source',
    },
  ];
  if (engine.hose_carried === undefined)
    statements.push({ template: 'Hose carried is not stated, so that it never runs out here' });
  if (supply.kind === 'tank' && engine.tank) {
    statements.push({
      template:
        plan.pace === undefined
          ? 'Minutes of water are those of a full tank, less its reserve and what fills the hose; water poured on the way is not taken off, as the plan gives no pace'
          : 'Water poured on the way is taken off at a section each {pace}',
      values: { pace: { value: plan.pace ?? 0, dimension: 'time' } },
      source: TANK_RESERVE_SOURCE,
    });
  }
  if (shuttle)
    statements.push({
      template: 'Tenders bring {inflow} from when the first of them is in',
      values: { inflow: { value: sustainedFlow(shuttle), dimension: 'flow' } },
      source: 'tender-shuttle formula of fire services (from memory)',
    });
  return statements;
}
