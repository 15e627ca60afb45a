import type { UnitSystem } from '../quantity/format.js';
import type {
  CheckAnswer,
  FlowMargin,
  InventoryItem,
  PressureMargin,
  Refusal,
  Requirement,
  StagingAnswer,
  TestOrifice,
} from '../study/answer.js';
import { figuresIn } from './figures.js';
import { acrossTree, bracketTree, highestPlaceTree } from './json-conditions.js';
import { engineTree } from './json-engine.js';
import { pumpTree } from './json-pump.js';
import { pressureControlTree, stagingAdviceTree, suctionTree } from './json-running.js';
import { Bore, cautionTree, headTree, orNull, pointTree, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';
import { statementText } from './sentence.js';

const pressureMargin = (at: PressureMargin | undefined) =>
  at ? { pressure: of('pressure', at.pressure), margin: of('pressure', at.margin) } : null;

const flowMargin = (at: FlowMargin | undefined) =>
  at ? { flow: of('flow', at.flow), margin: of('flow', at.margin) } : null;

const requirementTree = (requirement: Requirement) => ({
  scheme: requirement.scheme,
  class: requirement.class,
  title: requirement.title,
  flow: of('flow', requirement.flow),
  pressure: of('pressure', requirement.pressure),
  points: requirement.points.map(({ name, flow, pressure, net, lift }) => ({
    name,
    flow: of('flow', flow),
    pressure: of('pressure', pressure),
    net,
    lift: orNull('length', lift),
  })),
  source: requirement.source,
  edition: requirement.edition ?? null,
});

const orificeTree = (orifice: TestOrifice, units: UnitSystem) => ({
  bore: new Bore(orifice.bore),
  discharge_coefficient: orifice.dischargeCoefficient,
  reading: orNull('pressure', orifice.reading),
  flow: orNull('flow', orifice.flow),
  margin: orNull('pressure', orifice.margin),
  grade: orifice.grade ?? null,
  reason: refusalText(orifice.refusal, units),
  grades: orifice.grades.map(({ grade, from }) => ({ grade, from: of('pressure', from) })),
  source: orifice.source,
});

const refusalText = (refusal: Refusal | undefined, units: UnitSystem) =>
  refusal ? statementText(refusal, figuresIn(units)) : null;

const stagingTree = (line: StagingAnswer, units: UnitSystem) => ({
  staging: line.staging,
  verdict: line.verdict,
  at_required_flow: pressureMargin(line.atRequiredFlow),
  at_required_pressure: flowMargin(line.atRequiredPressure),
  shutoff: orNull('pressure', line.shutoff),
  reachable: line.reachable,
  reason: refusalText(line.refusal, units),
  limit: line.limit ? statementText(line.limit, figuresIn(units)) : null,
  shares: line.shares.map(({ pump, flow, share, cooling }) => ({
    pump,
    flow: of('flow', flow),
    cooling_flow: orNull('flow', cooling),
    share: of('ratio', share),
  })),
});

/** People and pieces are counted, and nothing in an inventory is a percentage. */
const amount = (measure: InventoryItem['carried']) =>
  measure?.dimension === 'ratio' ? { value: measure.value, unit: 'each' } : (measure ?? null);

const inventoryTree = (line: InventoryItem, units: UnitSystem) => ({
  item: line.item,
  required: amount(line.required),
  carried: amount(line.carried),
  at_most: line.atMost,
  over: line.over ?? false,
  verdict: line.verdict,
  left_out: line.leftOut ?? [],
  note: line.note ? statementText(line.note, figuresIn(units)) : null,
  source: line.source,
});

export const checkTree = (answer: CheckAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  left_out: answer.leftOut,
  verdict: answer.verdict,
  pump_verdict: answer.pumpVerdict,
  requirement: requirementTree(answer.requirement),
  staging: answer.staging,
  judged_at: answer.judgedAt,
  at_required_flow: pressureMargin(answer.atRequiredFlow),
  at_required_pressure: flowMargin(answer.atRequiredPressure),
  reason: refusalText(answer.refusal, units),
  told_at: orNull('flow', answer.toldAt),
  ...(answer.testOrifice ? { test_orifice: orificeTree(answer.testOrifice, units) } : {}),
  stagings: answer.stagings.map((line) => stagingTree(line, units)),
  inventory: answer.inventory.map((line) => inventoryTree(line, units)),
  losses: answer.losses.map(({ where, kind, flow, loss }) => ({
    where,
    kind,
    flow: of('flow', flow),
    loss: of('pressure', loss),
  })),
  points: answer.points.map((point) => pointTree(point, answer.site)),
  pumps: answer.pumps.map((pump) => pumpTree(pump, answer.site)),
  returns: answer.returns.map(({ name, flow }) => ({ name, flow: of('flow', flow) })),
  highest_place: answer.highestPlace ? highestPlaceTree(answer.highestPlace) : null,
  power_bracket: answer.powerBracket ? bracketTree(answer.powerBracket, units) : null,
  suction: answer.suction ? suctionTree(answer.suction, units) : null,
  pressure_control: answer.pressureControl ? pressureControlTree(answer.pressureControl) : null,
  staging_advice: answer.stagingAdvice ? stagingAdviceTree(answer.stagingAdvice, units) : null,
  across: answer.across.map((one) => acrossTree(one, units)),
  ...engineTree(answer, units),
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
