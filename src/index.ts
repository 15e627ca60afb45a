/** The library: what other programs may import. Everything else may move. */

export { type Catalogue, loadCatalogue } from './catalogue/load.js';
export { engineJsonSchema, layoutJsonSchema } from './layout/json-schema.js';
export type { Layout } from './layout/layout.js';
export { LayoutProblems, type Problem } from './layout/problem.js';
export { type ReadOptions, readLayout, readLayoutText } from './layout/read-layout.js';
export type {
  LossAtFlow,
  LossCurve,
  Network,
  NetworkFailure,
  NetworkLink,
  NetworkNode,
  Solution,
  SolveOptions,
} from './network/network.js';
export { NetworkSolver } from './network/solver.js';
export type { Dimension, Measure } from './quantity/dimension.js';
export type { UnitSystem } from './quantity/format.js';
export { type BenchReadings, readBench, readBenchText } from './readings/read-bench.js';
export { readTrial, readTrialText, type TrialReadings } from './readings/read-trial.js';
export { answerDocument } from './report/answer-document.js';
export { curveDocument } from './report/bench/curve-document.js';
export { curveTree } from './report/bench/json-curve.js';
export { type CurveJson, curveJson } from './report/bench/json-schema-curve.js';
export { type TrialJson, trialJson } from './report/bench/json-schema-trial.js';
export { trialTree } from './report/bench/json-trial.js';
export { trialDocument } from './report/bench/trial-document.js';
export { curveRow } from './report/bench/write-row.js';
export { cardText } from './report/card.js';
export type { Document } from './report/document.js';
export {
  type DrillJson,
  type DrillMarkJson,
  drillJson,
  drillMarkJson,
  drillQuestionsJson,
} from './report/drill/json-schema.js';
export { htmlOf } from './report/html.js';
export { JSON_FORMAT, toJson, treeInUnits } from './report/json.js';
export {
  type AdvanceJson,
  advanceJson,
  answerJson,
  type CheckJson,
  type ClockJson,
  checkJson,
  clockJson,
  type FlowJson,
  flowJson,
  type ReachJson,
  type RequireJson,
  reachJson,
  requireJson,
} from './report/json-schema.js';
export { type CatalogueJson, catalogueJson } from './report/json-schema-catalogue.js';
export { markdownOf } from './report/markdown.js';
export { type TextOptions, textOf } from './report/text.js';
export type * from './study/answer.js';
export { type CurveAnswer, type CurveOptions, curveOf, NoCurve } from './study/bench/curve.js';
export { type CardAnswer, type CardOptions, cardOf } from './study/card.js';
export { type ClockOptions, clockOf } from './study/clock.js';
export { NoSteadyAnswer } from './study/no-steady-answer.js';
export { type OperateOptions, operateLayout } from './study/operation.js';
export { advanceLayout, NoProgressiveLay } from './study/progression.js';
export { checkLayout, NoTyping } from './study/rating.js';
export { NothingToReach, type ReachOptions, reachOf } from './study/reach.js';
export { NothingRequired, type RequireOptions, requireOf } from './study/require.js';
export { type TrialAnswer, trialOf } from './study/trial/trial.js';
export { nozzleStates, UnknownNozzle } from './study/valves.js';
