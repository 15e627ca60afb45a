import type { UnitSystem } from '../quantity/format.js';
import type { ClockAnswer, FuelClock, ShuttleClock, TankClock } from '../study/answer.js';
import { cautionTree, headTree, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

const tankTree = (tank: TankClock) => ({
  capacity: of('volume', tank.capacity),
  reserve: of('volume', tank.reserve),
  hose_fill: of('volume', tank.hoseFill),
  usable: of('volume', tank.usable),
  flow_full: of('flow', tank.flowFull),
  flow_low: of('flow', tank.flowLow),
  surface_full: of('length', tank.surfaceFull),
  surface_low: of('length', tank.surfaceLow),
  endurance: tank.endurance === null ? null : of('time', tank.endurance),
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
  first_gap: orNull('time', shuttle.firstGap),
  horizon: of('time', shuttle.horizon),
  source: shuttle.source,
});

const fuelTree = (fuel: FuelClock) => ({
  pump: fuel.pump,
  burn: orNull('flow', fuel.burn),
  basis: fuel.basis,
  on_board: orNull('volume', fuel.onBoard),
  lasts: orNull('time', fuel.lasts),
  source: fuel.source,
});

export const clockTree = (answer: ClockAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  staging: answer.staging,
  total_flow: of('flow', answer.totalFlow),
  tank: answer.tank ? tankTree(answer.tank) : null,
  shuttle: answer.shuttle ? shuttleTree(answer.shuttle) : null,
  fuel: answer.fuel.map(fuelTree),
  first_refuelling: answer.firstRefuelling
    ? { pump: answer.firstRefuelling.pump, at: of('time', answer.firstRefuelling.at) }
    : null,
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
