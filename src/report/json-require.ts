import type { UnitSystem } from '../quantity/format.js';
import type { HandRule, RequireAnswer, StagingDemand } from '../study/answer.js';
import { impossibleTree } from './impossible.js';
import { habitTree } from './json-field.js';
import { cautionTree, headTree, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

const demandTree = (demand: StagingDemand, units: UnitSystem) => {
  const told = demand.impossible === undefined;
  return {
    staging: demand.staging,
    verdict: demand.verdict,
    impossible: impossibleTree(demand.impossible, units),
    throttle: told ? of('ratio', demand.throttle) : null,
    total_flow: told ? of('flow', demand.totalFlow) : null,
    pumps: told ? demand.pumps.map(pumpTree) : [],
    worst: told
      ? {
          nozzle: demand.worst.name,
          pressure: of('pressure', demand.worst.pressure),
          required: of('pressure', demand.worst.required),
          margin: of('pressure', demand.worst.margin),
        }
      : null,
    losing_tank:
      told && demand.losing ? { name: demand.losing.name, by: of('flow', demand.losing.by) } : null,
    highest_hose:
      told && demand.highestHose
        ? { at: demand.highestHose.at, pressure: of('pressure', demand.highestHose.pressure) }
        : null,
    stops: demand.stops,
  };
};

const pumpTree = (pump: StagingDemand['pumps'][number]) => ({
  name: pump.name,
  flow: of('flow', pump.flow),
  discharge_pressure: of('pressure', pump.dischargePressure),
  inlet_pressure: of('pressure', pump.inletPressure),
  share: of('ratio', pump.share),
  off_curve: pump.offCurve,
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
  outlets_impossible: impossibleTree(answer.outletsImpossible, units),
  stagings: answer.stagings.map((demand) => demandTree(demand, units)),
  servable: answer.servable
    ? {
        staging: answer.servable.staging,
        served: answer.servable.served,
        left_out: answer.servable.leftOut,
        exact: answer.servable.exact,
        throttle: of('ratio', answer.servable.throttle),
      }
    : null,
  rules: answer.rules.map((rule) => ruleTree(rule, units)),
  rules_omitted: answer.rulesOmitted ? statementTree(answer.rulesOmitted, units) : null,
  habits: answer.habits.map(habitTree),
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
