import type { UnitSystem } from '../quantity/format.js';
import type { ReachAnswer, ReachStaging } from '../study/answer.js';
import { cautionTree, headTree, orNull, solverTree, statementTree } from './json-tree.js';
import { of } from './required.js';

const stagingTree = ({ staging, shutPressure, overHose, stops, rows }: ReachStaging, units: UnitSystem) => ({
  staging,
  shut_pressure: of('pressure', shutPressure),
  over_hose: overHose ? { limit: of('pressure', overHose.limit), source: overHose.source } : null,
  stops: stops.map((caution) => cautionTree(caution, units)),
  rows: rows.map(({ grade, cells }) => ({
    grade: of('ratio', grade),
    cells: cells.map(({ laterals, length, from, height, limit }) => ({
      laterals,
      length: of('length', length),
      from: orNull('length', from),
      height: of('length', height),
      limit,
    })),
  })),
});

export const reachTree = (answer: ReachAnswer, units: UnitSystem) => ({
  ...headTree(answer),
  throttle: of('ratio', answer.throttle),
  hose: answer.hose,
  hose_source: answer.hoseSource,
  nozzle: {
    name: answer.nozzle.name,
    pressure: of('pressure', answer.nozzle.pressure),
    source: answer.nozzle.source,
  },
  lateral: answer.lateral
    ? {
        hose: answer.lateral.hose,
        length: of('length', answer.lateral.length),
        nozzle: answer.lateral.nozzle,
        pressure: of('pressure', answer.lateral.pressure),
      }
    : null,
  carried: orNull('length', answer.carried),
  longest: of('length', answer.longest),
  downhill: answer.downhill
    ? { height: of('length', answer.downhill.height), pressure: of('pressure', answer.downhill.pressure) }
    : null,
  as_laid: answer.asLaid,
  stagings: answer.stagings.map((staging) => stagingTree(staging, units)),
  hose_without_limit: answer.hoseWithoutLimit,
  cautions: answer.cautions.map((caution) => cautionTree(caution, units)),
  assumptions: answer.assumptions.map((statement) => statementTree(statement, units)),
  solver: solverTree(answer.solver),
});
