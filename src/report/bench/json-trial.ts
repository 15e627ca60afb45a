import type { UnitSystem } from '../../quantity/format.js';
import type { CauseAnswer, TrialAnswer } from '../../study/trial/trial-answer.js';
import { figuresIn } from '../figures.js';
import { Bore, orNull, statementTree } from '../json-tree.js';
import { of } from '../required.js';
import { causeWords, dimensionOf } from './trial-words.js';

const causeTree = (cause: CauseAnswer, units: UnitSystem) => ({
  kind: cause.kind,
  at: cause.at,
  size: of(cause.size.dimension, cause.size.value),
  deviation: of(cause.size.dimension, cause.size.deviation),
  at_flow: orNull('flow', cause.flow),
  text: causeWords(cause, figuresIn(units)),
});

const boreOrNull = (orifice: number | undefined) => (orifice === undefined ? null : new Bore(orifice));

export const trialTree = (answer: TrialAnswer, units: UnitSystem) => ({
  question: answer.question,
  title: answer.title,
  engine: answer.engine,
  date: answer.date ?? null,
  requirement: answer.requirement ?? null,
  verdict: answer.verdict,
  judged: answer.judged.map((one) => ({
    line: one.line,
    at: one.at,
    read: of('pressure', one.read),
    passes: of('pressure', one.passes),
    margin: of('pressure', one.margin),
    grade: one.grade,
    verdict: one.verdict,
    within_gauge_error: one.withinGaugeError,
    gauge_error: of('pressure', one.gaugeError),
    source: one.source,
  })),
  outcome: answer.outcome,
  alike: answer.alike,
  sound_fits: of('ratio', answer.soundFits),
  explanations: answer.ranked.map((one) => ({
    causes: one.causes.map((cause) => causeTree(cause, units)),
    chance: of('ratio', one.chance),
    fits: of('ratio', one.fits),
  })),
  telling_reading: answer.telling
    ? {
        staging: answer.telling.staging,
        orifice: boreOrNull(answer.telling.orifice),
        instrument: answer.telling.instrument,
        with_another_instrument: answer.telling.withAnother,
        under_the_first: of(dimensionOf(answer.telling.instrument), answer.telling.first),
        under_the_second: of(dimensionOf(answer.telling.instrument), answer.telling.second),
      }
    : null,
  readings: answer.readings.map((one) => ({
    line: one.line,
    staging: one.staging,
    orifice: boreOrNull(one.orifice),
    instrument: one.instrument,
    read: of(dimensionOf(one.instrument), one.read),
    predicted: orNull(dimensionOf(one.instrument), one.predicted),
    tolerance: orNull(dimensionOf(one.instrument), one.tolerance),
    agrees: one.agrees ?? null,
    flow_through_orifice: orNull('flow', one.through),
    reason: one.reason ? statementTree(one.reason, units) : null,
  })),
  predicted_band: answer.band.map((at) => ({
    flow: of('flow', at.flow),
    pressure: of('pressure', at.pressure),
    low: of('pressure', at.low),
    high: of('pressure', at.high),
  })),
  notes: answer.notes.map((note) => statementTree(note, units)),
  assumptions: answer.assumptions.map((one) => statementTree(one, units)),
});
