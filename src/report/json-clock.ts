import type { UnitSystem } from '../quantity/format.js';
import type { ClockAnswer, FuelClock, ShuttleClock, TankClock } from '../study/answer.js';
import { impossibleTree } from './impossible.js';
import { cautionTree, headTree, InRole, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

export const tankClockTree = (tank: TankClock, units: UnitSystem) => ({
  capacity: of('volume', tank.capacity),
  reserve: of('volume', tank.reserve),
  hose_fill: of('volume', tank.hoseFill),
  usable: of('volume', tank.usable),
  flow_full: of('flow', tank.flowFull),
  flow_low: of('flow', tank.flowLow),
  surface_full: of('length', tank.surfaceFull),
  surface_low: of('length', tank.surfaceLow),
  endurance: tank.endurance === null ? null : of('time', tank.endurance),
  ends: tank.ends ? { left: of('volume', tank.ends.left), why: impossibleTree(tank.ends.why, units) } : null,
  flow_times_minutes: tank.flowTimesMinutes === null ? null : of('time', tank.flowTimesMinutes),
  source: tank.source,
});

const shuttleTree = (shuttle: ShuttleClock) => ({
  tenders: shuttle.tenders,
  load: of('volume', shuttle.load),
  fill: of('time', shuttle.fill),
  there: of('time', shuttle.there),
  dump: of('time', shuttle.dump),
  back: of('time', shuttle.back),
  cycle: of('time', shuttle.cycle),
  by_formula: shuttle.byFormula,
  sustained: of('flow', shuttle.sustained),
  drawn: of('flow', shuttle.drawn),
  needed: shuttle.needed ?? null,
  first_gap: orNull('time', shuttle.gap?.from),
  next_tender: orNull('time', shuttle.gap?.until),
  gap_lasts: orNull('time', gapLasts(shuttle)),
  horizon: of('time', shuttle.horizon),
  source: shuttle.source,
});

const gapLasts = ({ gap }: ShuttleClock): number | undefined =>
  gap?.until === undefined ? undefined : gap.until - gap.from;

const fuelTree = (fuel: FuelClock) => ({
  pump: fuel.pump,
  burn: fuel.burn === undefined ? null : new InRole('burn', of('flow', fuel.burn)),
  basis: fuel.basis,
  on_board: orNull('volume', fuel.onBoard),
  lasts: orNull('time', fuel.lasts),
  source: fuel.source,
});

export const clockTree = (answer: ClockAnswer, units: UnitSystem) => {
  const told = answer.impossible.length === 0;
  const { tank, shuttle, firstRefuelling } = answer;
  return {
    ...headTree(answer),
    staging: answer.staging,
    impossible: answer.impossible.map((one) => impossibleTree(one, units)),
    total_flow: told ? of('flow', answer.totalFlow) : null,
    tank: told && tank ? tankClockTree(tank, units) : null,
    shuttle: told && shuttle ? shuttleTree(shuttle) : null,
    fuel: told ? answer.fuel.map(fuelTree) : [],
    first_refuelling:
      told && firstRefuelling ? { pump: firstRefuelling.pump, at: of('time', firstRefuelling.at) } : null,
    cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
    assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
    solver: solverTree(answer.solver),
  };
};
