import type { UnitSystem } from '../quantity/format.js';
import type { FlowAnswer, LineAnswer, NozzleAnswer, SiteConditions } from '../study/answer.js';
import { impossibleTree } from './impossible.js';
import { tankClockTree } from './json-clock.js';
import { heatTree } from './json-engine.js';
import { caseTree, habitTree, portableTankTree, profileTree, supplyTree } from './json-field.js';
import { pumpTree } from './json-pump.js';
import { lineControlTree } from './json-running.js';
import { cautionTree, headTree, orNull, pointTree, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';
import { noState, noStateAtNozzle, reasonTree, standingTree } from './standing.js';

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

/** Of a state that cannot be no figure is given: every list of them is empty, and what is one is null. */
export const flowTree = (answer: FlowAnswer, units: UnitSystem) => {
  const told = answer.impossible.length === 0;
  const { site } = answer;
  const each = <T, R>(rows: readonly T[], tree: (row: T) => R): R[] => (told ? rows.map(tree) : []);
  return {
    ...headTree(answer),
    staging: answer.staging,
    impossible: answer.impossible.map((one) => impossibleTree(one, units)),
    impossible_at: answer.impossible[0]?.at ?? null,
    total_flow: told ? of('flow', answer.totalFlow) : null,
    points: each(answer.points, (point) => pointTree(point, site)),
    lines: each(answer.lines, (line) => lineTree(line, site)),
    nozzles: each(answer.nozzles, (nozzle) => nozzleTree(nozzle, site)),
    pumps: each(answer.pumps, (pump) => pumpTree(pump, site)),
    returns: each(answer.returns, ({ name, flow }) => ({ name, flow: of('flow', flow) })),
    tank: told && answer.tank ? tankClockTree(answer.tank, units) : null,
    heat: each(answer.heat, heatTree),
    supply: told ? supplyTree(answer.supply, site) : null,
    portable_tanks: each(answer.portableTanks, portableTankTree),
    profiles: each(answer.profiles, (profile) => profileTree(profile, site)),
    line_control: told ? lineControlTree(answer.lineControl) : null,
    habits: each(answer.habits, habitTree),
    hose_without_limit: answer.hoseWithoutLimit,
    cases: answer.cases.map((one) => caseTree(one, units)),
    cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
    assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
    solver: solverTree(answer.solver),
  };
};
