import type { UnitSystem } from '../quantity/format.js';
import type { FlowAnswer, LineAnswer, NozzleAnswer, SiteConditions } from '../study/answer.js';
import { heatTree } from './json-engine.js';
import { caseTree, habitTree, portableTankTree, profileTree, supplyTree } from './json-field.js';
import { pumpTree } from './json-pump.js';
import { lineControlTree } from './json-running.js';
import { cautionTree, headTree, orNull, pointTree, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';
import { noState, noStateAtNozzle, partsAt, reasonTree, standingTree } from './standing.js';

function lineTree(line: LineAnswer, site: SiteConditions) {
  const into = noState(line.inletPressure, site, line.flow);
  const out = noState(line.outletPressure, site, line.flow);
  return {
    name: line.name,
    kind: line.kind,
    flow: of('flow', line.flow),
    velocity: orNull('velocity', line.velocity),
    loss: of('pressure', line.loss),
    inlet_pressure: standingTree(into, line.inletPressure),
    outlet_pressure: standingTree(out, line.outletPressure),
    reason: reasonTree(into, out),
  };
}

function nozzleTree(nozzle: NozzleAnswer, site: SiteConditions) {
  const none = noStateAtNozzle(nozzle, site);
  return {
    name: nozzle.name,
    kind: nozzle.kind,
    state: nozzle.state,
    flow: of('flow', nozzle.flow),
    pressure: standingTree(none, nozzle.pressure),
    reads: nozzle.reads,
    reason: reasonTree(none),
    reaction: orNull('force', nozzle.reaction),
    reach: orNull('length', nozzle.reach),
    in_range: nozzle.inRange ?? null,
    range: nozzle.range
      ? {
          from: orNull('pressure', nozzle.range.from),
          to: orNull('pressure', nozzle.range.to),
          source: nozzle.range.source,
        }
      : null,
  };
}

const tankTree = (tank: NonNullable<FlowAnswer['tank']>) => ({
  capacity: of('volume', tank.capacity),
  usable: of('volume', tank.usable),
  endurance: tank.endurance === null ? null : of('time', tank.endurance),
  source: tank.source,
});

export const flowTree = (answer: FlowAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  staging: answer.staging,
  total_flow: of('flow', answer.totalFlow),
  impossible_at: partsAt(answer) ?? null,
  points: answer.points.map((point) => pointTree(point, answer.site)),
  lines: answer.lines.map((line) => lineTree(line, answer.site)),
  nozzles: answer.nozzles.map((nozzle) => nozzleTree(nozzle, answer.site)),
  pumps: answer.pumps.map((pump) => pumpTree(pump, answer.site)),
  returns: answer.returns.map(({ name, flow }) => ({ name, flow: of('flow', flow) })),
  tank: answer.tank ? tankTree(answer.tank) : null,
  heat: answer.heat.map(heatTree),
  supply: supplyTree(answer.supply, answer.site),
  portable_tanks: answer.portableTanks.map(portableTankTree),
  profiles: answer.profiles.map((profile) => profileTree(profile, answer.site)),
  line_control: lineControlTree(answer.lineControl),
  habits: answer.habits.map(habitTree),
  cases: answer.cases.map(caseTree),
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
