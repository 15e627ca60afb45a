import type { UnitSystem } from '../quantity/format.js';
import type {
  AdvanceAnswer,
  AdvanceOption,
  AdvanceStep,
  HighestHose,
  LimitMet,
  StoreUse,
} from '../study/answer.js';
import { figuresIn } from './figures.js';
import { impossibleText, impossibleTree } from './impossible.js';
import { cautionTree, counted, headTree, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';
import { statementText } from './sentence.js';

const limitTree = (limit: LimitMet, units: UnitSystem) => ({
  code: limit.code,
  at: limit.at,
  state: limit.state,
  value: limit.why ? null : counted(limit.value),
  limit: limit.why ? null : counted(limit.limit),
  reason: limit.why ? impossibleText(limit.why, figuresIn(units)) : null,
  source: limit.source,
});

const storeTree = ({ item, used, carried }: StoreUse) => ({
  item,
  used: counted(used),
  carried: carried ? counted(carried) : null,
});

const hoseTree = ({ at, pressure }: HighestHose) => ({ at, pressure: of('pressure', pressure) });

const nozzleTree = (nozzle: AdvanceOption['farNozzle']) =>
  nozzle
    ? { name: nozzle.name, flow: of('flow', nozzle.flow), pressure: of('pressure', nozzle.pressure) }
    : null;

const stepTree = (step: AdvanceStep, units: UnitSystem) => ({
  section: step.section,
  distance: of('length', step.distance),
  height: of('length', step.height),
  laterals: step.laterals,
  laterals_open: step.lateralsOpen,
  impossible: impossibleTree(step.impossible, units),
  total_flow: step.impossible ? null : of('flow', step.totalFlow),
  pump_pressure: step.impossible ? null : of('pressure', step.pumpPressure),
  head_pressure: step.impossible ? null : of('pressure', step.headPressure),
  far_wye_pressure: step.impossible ? null : of('pressure', step.headPressure),
  far_nozzle: step.impossible ? null : nozzleTree(step.farNozzle),
  highest_hose_flowing: step.impossible ? null : hoseTree(step.hoseFlowing),
  highest_hose_shut: hoseTree(step.hoseShut),
  hose: step.hose.map(storeTree),
  fittings: step.fittings.map(storeTree),
  water: step.water
    ? {
        fill: of('volume', step.water.fill),
        used: of('volume', step.water.used),
        brought: of('volume', step.water.brought),
        left: of('volume', step.water.left),
        lasts: step.water.lasts === null ? null : of('time', step.water.lasts),
      }
    : null,
  limits: step.limits.map((limit) => limitTree(limit, units)),
});

const optionTree = (option: AdvanceOption, units: UnitSystem) => ({
  code: option.code,
  title: statementText(option.title, figuresIn(units)),
  reached: option.reached,
  gained: option.gained,
  distance: of('length', option.distance),
  height: of('length', option.height),
  far_nozzle: nozzleTree(option.farNozzle),
  placement: option.placement
    ? {
        section: option.placement.section,
        distance: of('length', option.placement.distance),
        height: of('length', option.placement.height),
        pump: option.placement.pump,
        throttle: of('ratio', option.placement.throttle),
        intake: of('pressure', option.placement.intake),
        discharge: of('pressure', option.placement.discharge),
        flow: of('flow', option.placement.flow),
        floor: of('pressure', option.placement.floor),
        source: option.placement.source,
      }
    : null,
  stop: option.stop ? limitTree(option.stop, units) : null,
  needs: option.needs.map(storeTree),
  dry_at: option.dryAt ?? null,
});

export const advanceTree = (answer: AdvanceAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  staging: answer.staging,
  plan: {
    outlet: answer.plan.outlet,
    trunk: answer.plan.trunk,
    sections: answer.plan.sections,
    section_length: of('length', answer.plan.sectionLength),
    every: answer.plan.every ?? null,
    flowing: statementText(answer.plan.flowing, figuresIn(units)),
    pace: orNull('time', answer.plan.pace),
  },
  reached: answer.reached,
  stop: answer.stop ? limitTree(answer.stop, units) : null,
  steps: answer.steps.map((step) => stepTree(step, units)),
  options: answer.options.map((option) => optionTree(option, units)),
  hose_without_limit: answer.hoseWithoutLimit,
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
