import type { Statement } from '../caution/caution.js';
import type { Layout } from '../layout/layout.js';
import type { Flowing } from '../layout/progressive.js';
import { TANK_RESERVE_SOURCE } from '../limits/tank-reserve.js';
import type { AdvanceAnswer, AdvanceStep, LimitMet, StoreUse } from './advance-answer.js';
import { assumptions } from './assumptions.js';
import { furtherOptions } from './further.js';
import { gatedCautions } from './gated.js';
import { GrowingLay, type LaidOut } from './growing-lay.js';
import { hoseWithoutLimit } from './hose-limits.js';
import { laidCases } from './laid-cases.js';
import { stepAt } from './lay-step.js';
import { lacking } from './lay-stores.js';
import { Rig } from './rig.js';
import { sustainedFlow } from './shuttle.js';
import { solverReport } from './solver-report.js';
import { tankClockIfSteady } from './tank-clock.js';
import { WaterOnTheWay, waterLimits } from './water-on-the-way.js';

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
    step.water = step.impossible ? undefined : water.at(laid);
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
    options: stop === undefined ? [] : furtherOptions(rig, plan, steps, water),
    cautions: gatedCautions({ layout: asLaid, cases, tank: tankClockIfSteady(asLaid, point) }),
    hoseWithoutLimit: hoseWithoutLimit(point.assembly),
    assumptions: [...planAssumptions(layout), ...assumptions(asLaid, point.assembly.site)],
    solver: solverReport(point),
  };
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
  return [...short('hose_run_out', hose), ...short('fittings_run_out', fittings), ...waterLimits(water)];
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
        'A step is sound while every open nozzle has at least the foot of its working range, or its rating where it has none; hose stands below the lower of its working and its service test pressure, flowing and all shut; the state can be; and hose, fittings and water last',
      source: 'the limits of each part; choice of this program which of them stop a lay',
    },
    {
      template:
        'All shut is taken at the throttle that the step flows at, or with the governor turning the pumps down where it holds a pressure',
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
