import type { UnitSystem } from '../quantity/format.js';
import type { HandRule, RequireAnswer, StagingDemand } from '../study/answer.js';
import { habitTree } from './json-field.js';
import { cautionTree, headTree, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

const demandTree = (demand: StagingDemand) => ({
  staging: demand.staging,
  verdict: demand.verdict,
  throttle: of('ratio', demand.throttle),
  total_flow: of('flow', demand.totalFlow),
  pumps: demand.pumps.map((pump) => ({
    name: pump.name,
    flow: of('flow', pump.flow),
    discharge_pressure: of('pressure', pump.dischargePressure),
    inlet_pressure: of('pressure', pump.inletPressure),
    share: of('ratio', pump.share),
    off_curve: pump.offCurve,
  })),
  worst: {
    nozzle: demand.worst.name,
    pressure: of('pressure', demand.worst.pressure),
    required: of('pressure', demand.worst.required),
    margin: of('pressure', demand.worst.margin),
  },
  losing_tank: demand.losing ? { name: demand.losing.name, by: of('flow', demand.losing.by) } : null,
  highest_hose: demand.highestHose
    ? { at: demand.highestHose.at, pressure: of('pressure', demand.highestHose.pressure) }
    : null,
  stops: demand.stops,
});

const ruleTree = (rule: HandRule, units: UnitSystem) => ({
  rules: rule.rules,
  nozzle: rule.nozzle,
  outlet: rule.outlet,
  flow: of('flow', rule.flow),
  nozzle_pressure: of('pressure', rule.nozzlePressure),
  friction: of('pressure', rule.friction),
  appliances: of('pressure', rule.appliances),
  appliance_count: rule.applianceCount,
  height: of('pressure', rule.height),
  climb: of('length', rule.climb),
  pressure: of('pressure', rule.pressure),
  stamp: statementTree(rule.stamp, units),
});

export const requireTree = (answer: RequireAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  verdict: answer.verdict,
  staging: answer.staging,
  as_laid: answer.asLaid,
  needs: answer.needs.map((need) => ({
    name: need.name,
    kind: need.kind,
    pressure: of('pressure', need.pressure),
    flow: orNull('flow', need.flow),
    source: need.source,
  })),
  outlets:
    answer.outlets?.map(({ name, flow, pressure }) => ({
      name,
      flow: of('flow', flow),
      pressure: of('pressure', pressure),
    })) ?? null,
  stagings: answer.stagings.map(demandTree),
  servable: answer.servable
    ? {
        staging: answer.servable.staging,
        served: answer.servable.served,
        left_out: answer.servable.leftOut,
        exact: answer.servable.exact,
      }
    : null,
  rules: answer.rules.map((rule) => ruleTree(rule, units)),
  rules_omitted: answer.rulesOmitted ? statementTree(answer.rulesOmitted, units) : null,
  habits: answer.habits.map(habitTree),
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
