import type { Dimension } from '../quantity/dimension.js';
import type { UnitSystem } from '../quantity/format.js';
import type {
  AcrossAnswer,
  HighestPlace,
  PowerBracket,
  SweptQuantity,
  VerdictUnder,
} from '../study/answer.js';
import { figuresIn } from './figures.js';
import { orNull } from './json-tree.js';
import { of } from './required.js';
import { statementText } from './sentence.js';

const SWEPT: Record<SweptQuantity, Dimension> = {
  elevation: 'length',
  air_temperature: 'temperature',
  water_temperature: 'temperature',
  wear: 'ratio',
  tank_level: 'ratio',
};

const verdictTree = (here: VerdictUnder, units: UnitSystem) => ({
  verdict: here.verdict,
  pressure: orNull('pressure', here.pressure),
  margin: orNull('pressure', here.margin),
  reading: orNull('pressure', here.reading),
  reading_margin: orNull('pressure', here.readingMargin),
  pumps: here.pumps.map(({ name, limitedBy }) => ({ name, limited_by: limitedBy })),
  cavitating: here.refusal?.code === 'suction_short' && here.refusal.pump ? [here.refusal.pump] : [],
  reason: here.refusal ? statementText(here.refusal, figuresIn(units)) : null,
});

export const acrossTree = (across: AcrossAnswer, units: UnitSystem) => ({
  of: across.of,
  given: across.given.map((held) => ({ of: held.of, value: of(SWEPT[held.of], held.value) })),
  rows: across.rows.map((row) => ({ value: of(SWEPT[across.of], row.value), ...verdictTree(row, units) })),
});

export const bracketTree = (bracket: PowerBracket, units: UnitSystem) => ({
  pumps: bracket.pumps.map(({ name, ratio, aspiration }) => ({
    name,
    ratio: of('ratio', ratio),
    aspiration,
  })),
  cases: bracket.cases.map((one) => ({ lugging: one.lugging, ...verdictTree(one, units) })),
});

export const highestPlaceTree = ({ stands, upTo, cases }: HighestPlace) => ({
  stands,
  up_to: orNull('length', upTo),
  cases:
    cases?.map((one) => ({
      engine: one.engine,
      stands: one.stands,
      up_to: orNull('length', one.upTo),
    })) ?? null,
});
