import type { UnitSystem } from '../../quantity/format.js';
import type { BandPoint, CurveAnswer } from '../../study/bench/curve-answer.js';
import { orNull, statementTree } from '../json-tree.js';
import { of } from '../required.js';

const bandTree = ({ flow, pressure, low, high }: BandPoint) => ({
  flow: of('flow', flow),
  pressure: of('pressure', pressure),
  low: of('pressure', low),
  high: of('pressure', high),
});

/** `row` is the pump as a layout takes it. */
export const curveTree = (answer: CurveAnswer, row: Record<string, unknown>, units: UnitSystem) => ({
  question: answer.question,
  title: answer.title,
  rated_speed: of('speed', answer.ratedSpeed),
  water_temperature: of('temperature', answer.waterTemperature),
  shape: answer.shape,
  shape_chosen: answer.shapeChosen,
  confidence: of('ratio', answer.confidence),
  scatter: of('pressure', answer.scatter),
  freedom: answer.freedom,
  gauge_error: orNull('pressure', answer.gaugeError),
  shutoff: { ...bandTree(answer.shutoff), basis: answer.shutoff.basis },
  repeatability: answer.repeatability
    ? { limit: of('pressure', answer.repeatability.limit), flows: answer.repeatability.flows }
    : null,
  bad_reading: answer.odd
    ? { line: answer.odd.line, over: of('pressure', answer.odd.over), chance: of('ratio', answer.odd.chance) }
    : null,
  copies: answer.copies,
  wear: answer.wear
    ? {
        against: answer.wear.name,
        wear: of('ratio', answer.wear.wear),
        low: of('ratio', answer.wear.low),
        high: of('ratio', answer.wear.high),
        proven: answer.wear.proven,
        lies: answer.wear.lies,
        readings: answer.wear.readings,
      }
    : null,
  readings: answer.readings.map((one) => ({
    line: one.line,
    read: {
      flow: of('flow', one.readFlow),
      discharge: of('pressure', one.readDischarge),
      inlet: of('pressure', one.readInlet),
      speed: of('speed', one.readSpeed),
    },
    flow: of('flow', one.flow),
    pressure: of('pressure', one.pressure),
    over: of('pressure', one.over),
    left_out: one.odd,
  })),
  curve: answer.curve.map(bandTree),
  row,
  notes: answer.notes.map((note) => statementTree(note, units)),
  assumptions: answer.assumptions.map((one) => statementTree(one, units)),
});
