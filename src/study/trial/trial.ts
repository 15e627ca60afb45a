import type { TypingTestOrifice } from '../../catalogue/schema/typing.js';
import type { Statement } from '../../caution/caution.js';
import type { Layout } from '../../layout/layout.js';
import { boreArea } from '../../physics/velocity.js';
import type { TrialReadings } from '../../readings/read-trial.js';
import type { Instrument } from '../../readings/trial-columns.js';
import { Rig } from '../rig.js';
import { type Diagnosis, diagnose, type Ranked } from './diagnose.js';
import { judgeReadings } from './judge-readings.js';
import { type Read, TrialModel } from './model.js';
import type { SetUp } from './observe.js';
import { tellingReading } from './telling.js';
import type { CauseAnswer, ReadingAnswer, TrialAnswer } from './trial-answer.js';

export type { TrialAnswer } from './trial-answer.js';

/** Standard deviations that hold nine in ten. */
const NINE_IN_TEN = 1.645;
/** The flow at which an obstruction is told, m3/s: 100 gpm. */
export const TOLD_AT = 0.00630902;
const INCH = 0.0254;
/** What is taken of a plate where the typing names none: NWCG PMS 447-1 (2003), Appendix C; the tee by a 2010 inspection job aid. */
const USUAL_PLATE: TypingTestOrifice = {
  kind: 'sharp_orifice',
  bore: 0.716 * INCH,
  tee_bore: 1.5 * INCH,
  discharge_coefficient: 0.62,
  passes: 0,
};
const BAND_BORES = Array.from({ length: 13 }, (_, i) => (0.2 + 0.06 * i) * INCH);
/** An explanation so likely needs no reading more. */
const BEYOND_TELLING = 0.95;
/** Ranked explanations that are told. */
const TOLD = 5;

/** Everything that is found of a test day, and the explanation in the model's own terms. */
export interface Trial {
  answer: TrialAnswer;
  ranked: Ranked[];
}

/** A test day beside its prediction: does it pass, what agrees, and what is wrong where something does not. */
export async function trialOf(layout: Layout, readings: TrialReadings): Promise<Trial> {
  const rig = await Rig.of(layout);
  const plate = layout.typing?.requirement.test_orifice ?? USUAL_PLATE;
  const model = new TrialModel(rig, plate, readings);
  const { rows } = readings;
  const reasons = rows.map((row) => model.refusal(row));
  const possible = rows.filter((_, i) => reasons[i] === undefined);
  const predicted = model.observe(possible, [], []) ?? [];
  const reads: Read[] = possible.flatMap((row, index) =>
    (Object.keys(row.read) as Instrument[])
      .filter((instrument) => predicted[index][instrument] !== undefined)
      .map((instrument) => ({ row: index, instrument, value: row.read[instrument] as number })),
  );
  const doubt = model.covariance(possible, reads).map((line, i) => NINE_IN_TEN * Math.sqrt(line[i]));
  const answers = rows.flatMap((row, i): ReadingAnswer[] =>
    (Object.entries(row.read) as [Instrument, number][]).map(([instrument, read]) => {
      const common = { line: row.line, staging: row.staging, orifice: row.orifice, instrument, read };
      const index = reads.findIndex((one) => possible[one.row] === row && one.instrument === instrument);
      if (index < 0)
        return {
          ...common,
          reason: reasons[i] ?? { template: 'the layout has no such gauge or pump there' },
        };
      const expected = predicted[reads[index].row][instrument] as number;
      const tolerance = doubt[index];
      // What a plate passes goes with the square root of its reading.
      const passed = predicted[reads[index].row].flow;
      const through =
        instrument === 'tee' && passed !== undefined
          ? passed * Math.sqrt(Math.max(0, read / expected))
          : undefined;
      const agrees = Math.abs(read - expected) <= tolerance;
      return { ...common, predicted: expected, tolerance, agrees, ...(through !== undefined && { through }) };
    }),
  );
  const diagnosis: Diagnosis =
    reads.length > 0
      ? diagnose(model, possible, reads)
      : { soundFits: 1, ranked: [], outcome: 'cannot_tell', alike: 0 };
  const judged = judgeReadings(layout, readings);
  const taken = (setUp: SetUp, instrument: Instrument) =>
    rows.some(
      (row) =>
        row.staging === setUp.staging && row.orifice === setUp.orifice && row.read[instrument] !== undefined,
    );
  const { ranked } = diagnosis;
  const telling =
    ranked.length > 1 && diagnosis.outcome !== 'nothing_wrong' && ranked[0].chance < BEYOND_TELLING
      ? tellingReading(model, rows, ranked[0], ranked[1], taken)
      : undefined;
  const answer: TrialAnswer = {
    question: 'trial',
    title: readings.title ?? layout.title,
    engine: layout.engine.name,
    date: readings.date,
    requirement:
      layout.typing && (layout.typing.requirement.name ?? `${layout.typing.scheme} ${layout.typing.class}`),
    verdict:
      judged.length === 0
        ? 'not_judged'
        : judged.every(({ verdict }) => verdict === 'meets')
          ? 'passes'
          : 'fails',
    judged,
    readings: answers,
    agree: answers.filter(({ agrees }) => agrees).length,
    outcome: diagnosis.outcome,
    alike: diagnosis.alike,
    soundFits: diagnosis.soundFits,
    ranked: ranked.slice(0, TOLD).map((one) => ({
      causes: one.causes.map((_, i) => causeAnswer(one, i, rig)),
      chance: one.chance,
      fits: one.fits,
    })),
    telling: telling && { ...telling.setUp, ...telling },
    band: bandOf(model, layout),
    ...notesOf(layout, judged),
  };
  return { answer, ranked };
}

function causeAnswer({ causes, sizes, deviations }: Ranked, i: number, rig: Rig): CauseAnswer {
  const { kind, at, size, bore } = causes[i];
  if (size !== 'velocity_heads') {
    const dimension = size === 'ratio' ? 'ratio' : 'pressure';
    return { kind, at, size: { dimension, value: sizes[i], deviation: deviations[i] } };
  }
  const density = rig.assemble({ staging: rig.layout.staging, lay: 'none' }).site.waterDensity;
  const each = 0.5 * density * (TOLD_AT / boreArea(bore as number)) ** 2;
  return {
    kind,
    at,
    size: { dimension: 'pressure', value: sizes[i] * each, deviation: deviations[i] * each },
    flow: TOLD_AT,
  };
}

function bandOf(model: TrialModel, layout: Layout): TrialAnswer['band'] {
  const { staging } = layout;
  return BAND_BORES.flatMap((orifice) => {
    const setUp = { staging, orifice };
    if (model.refusal(setUp) !== undefined) return [];
    const observed = model.observe([setUp], [], [])?.[0];
    if (observed?.tee === undefined || observed.flow === undefined) return [];
    const read: Read = { row: 0, instrument: 'tee', value: observed.tee };
    const half = NINE_IN_TEN * Math.sqrt(model.covariance([setUp], [read])[0][0]);
    return [
      { flow: observed.flow, pressure: observed.tee, low: observed.tee - half, high: observed.tee + half },
    ];
  });
}

function notesOf(
  layout: Layout,
  judged: TrialAnswer['judged'],
): { notes: Statement[]; assumptions: Statement[] } {
  const notes: Statement[] = judged
    .filter(({ withinGaugeError }) => withinGaugeError)
    .map(({ line, gaugeError }) => ({
      template:
        'The reading of line {line} lies nearer its pass mark than its gauge is good for ({error}): have the gauge checked before it decides anything',
      values: { line: String(line), error: { value: gaugeError, dimension: 'pressure' as const } },
    }));
  if (judged.length === 0)
    notes.push({
      template: layout.typing
        ? 'No reading of this sheet is one that the typing is judged by: it wants its test orifice on the outlet in the staging of the layout, or a flow of its rating'
        : 'The layout names no typing, so nothing here passes or fails',
    });
  return {
    notes,
    assumptions: [
      {
        template:
          'Tolerances hold nine readings in ten with nothing wrong: gauges as the sheet states them, else 1 % of 400 psi; the curve of each pump as its file states it, else 3 % either way; governed speed 1 %, orifice 1.5 % of its flow (judgement, but for the gauge)',
        source: 'gauge: NWCG PMS 447-1 (2003), Appendix C',
      },
    ],
  };
}
