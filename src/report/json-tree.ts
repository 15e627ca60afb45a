import type { Dimension, Measure } from '../quantity/dimension.js';
import type { Role, UnitSystem } from '../quantity/format.js';
import type { Caution, GaugePoint, SiteConditions, SolverReport, Statement } from '../study/answer.js';
import { figuresIn } from './figures.js';
import { of } from './required.js';
import { cautionText, statementText } from './sentence.js';
import { noState, reasonTree, standingTree } from './standing.js';

/** A length across: inches or millimetres, where other lengths are feet or metres. */
export class Bore {
  readonly length: number;
  constructor(length: number) {
    this.length = length;
  }
}

/** A vacuum as its gauge reads it: inches of mercury, where other pressures are psi. */
export class Vacuum {
  readonly vacuum: number;
  constructor(vacuum: number) {
    this.vacuum = vacuum;
  }
}

/** A quantity in the unit that the trade has for what it is of: fuel by the hour, running in hours. */
export class InRole {
  readonly role: Role;
  readonly measure: Measure;
  constructor(role: Role, measure: Measure) {
    this.role = role;
    this.measure = measure;
  }
}

/** A key that has no value says so with null, and is never left out. */
export const orNull = (dimension: Dimension, value: number | undefined): Measure | null =>
  value === undefined ? null : of(dimension, value);

/** People and pieces are counted, and where they stand nothing is a percentage. */
export const counted = (measure: Measure) =>
  measure.dimension === 'ratio' ? { value: measure.value, unit: 'each' } : measure;

const siteTree = (site: SiteConditions) => ({
  elevation: of('length', site.elevation),
  air_temperature: of('temperature', site.airTemperature),
  water_temperature: of('temperature', site.waterTemperature),
  water_density: of('density', site.waterDensity),
  vapour_pressure: of('pressure', site.vapourPressure),
  atmospheric_pressure: of('pressure', site.atmosphericPressure),
});

/** What every answer to a question of a layout begins with. */
export const headTree = <Q extends string>(answer: {
  question: Q;
  title: string;
  engine: string;
  site: SiteConditions;
}) => ({
  question: answer.question,
  title: answer.title,
  engine: answer.engine,
  site: siteTree(answer.site),
});

export function pointTree({ name, pressure, reads, elevation, flow }: GaugePoint, site: SiteConditions) {
  const none = noState(pressure, site, flow);
  return {
    name,
    pressure: standingTree(none, pressure),
    reads,
    elevation: of('length', elevation),
    reason: reasonTree(none),
  };
}

export const cautionTree = (caution: Caution, units: UnitSystem) => ({
  code: caution.code,
  level: caution.level,
  at: caution.at,
  value: caution.value ?? null,
  limit: caution.limit ?? null,
  message: cautionText(caution, 'message', figuresIn(units)),
  action: cautionText(caution, 'action', figuresIn(units)),
  source: caution.source,
});

export const statementTree = (statement: Statement, units: UnitSystem) => ({
  text: statementText(statement, figuresIn(units)),
  source: statement.source ?? null,
});

export const solverTree = ({ iterations, flowResidual, energyResidual }: SolverReport) => ({
  iterations,
  flow_residual: of('flow', flowResidual),
  energy_residual: of('pressure', energyResidual),
});
