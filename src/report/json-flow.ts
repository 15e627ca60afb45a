import type { UnitSystem } from '../quantity/format.js';
import type { FlowAnswer, LineAnswer, NozzleAnswer } from '../study/answer.js';
import { heatTree } from './json-engine.js';
import { caseTree, habitTree, portableTankTree, profileTree, supplyTree } from './json-field.js';
import { pumpTree } from './json-pump.js';
import { lineControlTree } from './json-running.js';
import { cautionTree, orNull, pointTree, siteTree, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

const lineTree = (line: LineAnswer) => ({
  name: line.name,
  kind: line.kind,
  flow: of('flow', line.flow),
  velocity: orNull('velocity', line.velocity),
  loss: of('pressure', line.loss),
  inlet_pressure: of('pressure', line.inletPressure),
  outlet_pressure: of('pressure', line.outletPressure),
});

const nozzleTree = (nozzle: NozzleAnswer) => ({
  name: nozzle.name,
  kind: nozzle.kind,
  state: nozzle.state,
  flow: of('flow', nozzle.flow),
  pressure: of('pressure', nozzle.pressure),
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
});

const tankTree = (tank: NonNullable<FlowAnswer['tank']>) => ({
  capacity: of('volume', tank.capacity),
  usable: of('volume', tank.usable),
  endurance: tank.endurance === null ? null : of('time', tank.endurance),
  source: tank.source,
});

export const flowTree = (answer: FlowAnswer, units: UnitSystem) => ({
  question: answer.question,
  title: answer.title,
  engine: answer.engine,
  site: siteTree(answer.site),
  staging: answer.staging,
  total_flow: of('flow', answer.totalFlow),
  points: answer.points.map(pointTree),
  lines: answer.lines.map(lineTree),
  nozzles: answer.nozzles.map(nozzleTree),
  pumps: answer.pumps.map(pumpTree),
  tank: answer.tank ? tankTree(answer.tank) : null,
  heat: answer.heat.map(heatTree),
  supply: supplyTree(answer.supply),
  portable_tanks: answer.portableTanks.map(portableTankTree),
  profiles: answer.profiles.map(profileTree),
  line_control: lineControlTree(answer.lineControl),
  habits: answer.habits.map(habitTree),
  cases: answer.cases.map(caseTree),
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
