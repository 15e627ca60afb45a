import type { UnitSystem } from '../quantity/format.js';
import type { CheckAnswer } from '../study/answer.js';
import type {
  AxlesAnswer,
  HeatAnswer,
  LedgerLine,
  LifeAnswer,
  PumpOutAnswer,
} from '../study/engine-answer.js';
import { figuresIn } from './figures.js';
import { InRole, orNull, statementTree } from './json-tree.js';
import { of } from './required.js';
import { statementText } from './sentence.js';

const hours = (value: number | undefined) =>
  value === undefined ? null : new InRole('running', of('time', value));

export const heatTree = (heat: HeatAnswer) => ({
  name: heat.name,
  flow: of('flow', heat.flow),
  leaving: orNull('temperature', heat.leaving),
  basis: heat.basis,
  power_at_shutoff: orNull('power', heat.powerAtShutoff),
  least_flow: orNull('flow', heat.leastFlow),
  rough_least_flow: orNull('flow', heat.roughLeastFlow),
  shut_flow: of('flow', heat.shutFlow),
  shut_leaving: orNull('temperature', heat.shutLeaving),
  cooling: heat.cooling,
  cools_shut_out: heat.coolsShutOut,
  trapped: orNull('volume', heat.trapped),
  until_scald: orNull('time', heat.untilScald),
  until_boiling: orNull('time', heat.untilBoiling),
});

const pumpOutTree = ({ out, staging, verdict, types, standing }: PumpOutAnswer, units: UnitSystem) => ({
  out,
  staging,
  verdict,
  types: types.map((type) => ({
    class: type.class,
    title: type.title,
    flow: of('flow', type.flow),
    pressure: of('pressure', type.pressure),
    margin: of('pressure', type.margin),
    inventory: type.inventory,
    missing: type.missing,
  })),
  standing: standing.map((one) => ({
    staging: one.staging,
    check: one.check,
    reaches: one.reaches,
    flow: orNull('flow', one.flow),
    shutoff: orNull('pressure', one.shutoff),
    backflow_shut: orNull('flow', one.backflowShut),
    backflow: orNull('flow', one.backflow),
    reason: one.refusal ? statementText(one.refusal, figuresIn(units)) : null,
  })),
});

const lifeTree = (life: LifeAnswer | undefined) =>
  life === undefined
    ? null
    : {
        pumps: life.pumps.map(({ name, hours: run, wear, services, bears }) => ({
          name,
          hours: hours(run),
          wear: of('ratio', wear),
          bears: orNull('ratio', bears),
          services: services.map(({ service, at, left, on }) => ({
            service,
            at: hours(at),
            left: hours(left),
            on: on ?? null,
          })),
        })),
        lead: life.lead ? { name: life.lead.name, behind: hours(life.lead.behind) } : null,
        unworn: life.unworn
          ? { margin: of('pressure', life.unworn.margin), cost: orNull('pressure', life.unworn.cost) }
          : null,
        both_bear: orNull('ratio', life.bothBear),
        short: life.short,
        same_model: life.sameModel,
        parts_in_common: life.partsInCommon ?? null,
      };

const axlesTree = (axles: AxlesAnswer, units: UnitSystem) => ({
  cases: axles.cases.map(({ tank, crew, gross, front, rear, frontAtLeast, rearAtLeast, leftOfMiddle }) => ({
    tank: of('ratio', tank),
    crew,
    gross: of('mass', gross),
    front: orNull('mass', front),
    rear: orNull('mass', rear),
    front_at_least: orNull('mass', frontAtLeast),
    rear_at_least: orNull('mass', rearAtLeast),
    left_of_middle: orNull('length', leftOfMiddle),
  })),
  ratings: {
    gross: orNull('mass', axles.ratings.gross),
    front: orNull('mass', axles.ratings.front),
    rear: orNull('mass', axles.ratings.rear),
  },
  unplaced: axles.unplaced,
  left_out: axles.leftOut,
  wheelbase_stated: axles.wheelbaseStated,
  rules: axles.rules.map((rule) => statementTree(rule, units)),
});

const ledgerTree = (line: LedgerLine) => ({
  code: line.code,
  limit: line.limit,
  at: line.at,
  allowed: line.allowed,
  at_least: line.atLeast,
  operating: orNull(line.allowed.dimension, line.operating),
  worst: of(line.allowed.dimension, line.worst),
  worst_when: line.worstWhen,
  margin: of('ratio', line.margin),
  left_out: line.leftOut ?? [],
  unplaced: line.unplaced ?? [],
  source: line.source,
});

/** Fuel by the hour and weight in their units; money as the file has it. */
const cost = (row: 'weight' | 'fuel' | 'price', value: number) => {
  if (row === 'price') return value;
  return row === 'weight' ? of('mass', value) : new InRole('burn', of('flow', value));
};

/** What a check says of the engine besides its rating. */
export const engineTree = (answer: CheckAnswer, units: UnitSystem) => ({
  hot_day: answer.hotDay
    ? {
        air_temperature: of('temperature', answer.hotDay.airTemperature),
        verdict: answer.hotDay.verdict,
        cases: answer.hotDay.cases ?? null,
      }
    : null,
  heat: answer.heat.map(heatTree),
  pumps_out: answer.pumpsOut.map((one) => pumpOutTree(one, units)),
  life: lifeTree(answer.life),
  axles: answer.axles ? axlesTree(answer.axles, units) : null,
  pair_cost: answer.pairCost
    ? {
        against: answer.pairCost.against,
        rows: answer.pairCost.rows.map(({ of: what, pair, single }) => ({
          of: what,
          pair: cost(what, pair),
          single: cost(what, single),
        })),
      }
    : null,
  ledger: {
    lines: answer.ledger.lines.map(ledgerTree),
    of: answer.ledger.of,
    not_known: answer.ledger.notKnown,
  },
});
