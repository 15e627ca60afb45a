import type { Statement } from '../../caution/caution.js';
import { REFERENCE_TEMPERATURE } from '../../physics/constants.js';
import type { Measure } from '../../quantity/dimension.js';
import type { BenchReadings } from '../../readings/read-bench.js';
import type { CurveAnswer } from './curve-answer.js';

type Noted = Omit<CurveAnswer, 'notes' | 'assumptions'>;

const pressure = (value: number): Measure => ({ value, dimension: 'pressure' });
const flow = (value: number): Measure => ({ value, dimension: 'flow' });
const speed = (value: number): Measure => ({ value, dimension: 'speed' });

/** Speeds this far from the rated one, as a part of it, make the correction lean on the affinity laws. */
const SPEED_APART = 0.1;
const AFFINITY_SOURCE = 'affinity laws, as in Crane TP-410 (2009) example 7.33';
const COMMON = 'common practice, no source';

/** What to mind before a curve is used, and what it rests on. */
export function curveNotes(answer: Noted, bench: BenchReadings): Pick<CurveAnswer, 'notes' | 'assumptions'> {
  return { notes: notesOf(answer), assumptions: assumptionsOf(answer, bench) };
}

function notesOf({
  odd,
  shutoff,
  readings,
  copies,
  repeatability,
  wear,
  ratedSpeed,
  curve,
}: Noted): Statement[] {
  const notes: Statement[] = [];
  if (odd)
    notes.push({
      template: `The reading of line {line} lies {over} ${odd.over > 0 ? 'over' : 'under'} the curve that the others make and was left out: read it again`,
      values: { line: String(odd.line), over: pressure(Math.abs(odd.over)) },
    });
  for (const { line, of } of copies)
    notes.push({
      template: 'Line {line} says in every figure what line {of} says and was counted once',
      values: { line: String(line), of: String(of) },
    });
  if (shutoff.basis === 'extrapolated')
    notes.push({
      template:
        'Shutoff was not measured: {at} is a guess from {first} down, and the row starts there. What a relief valve, hose or second pump must bear cannot be told from it; read the gauge with the outlet shut, for seconds only',
      values: { at: pressure(shutoff.pressure), first: flow(answerFirst(readings)) },
      source: COMMON,
    });
  const top = curve.reduce((most, one) => (one.pressure > most.pressure ? one : most));
  if (top.flow > 0 && top.pressure > curve[0].pressure * 1.002)
    notes.push({
      template:
        'Pressure rises from shutoff to {top} at {flow}: on such a curve a pump can hunt, and beside another one it may be shut out',
      values: { top: pressure(top.pressure), flow: flow(top.flow) },
      source: COMMON,
    });
  const farthest = readings.reduce((most, one) =>
    Math.abs(one.readSpeed - ratedSpeed) > Math.abs(most.readSpeed - ratedSpeed) ? one : most,
  );
  if (Math.abs(farthest.readSpeed / ratedSpeed - 1) > SPEED_APART)
    notes.push({
      template: 'Line {line} was read at {speed} and corrected to {rated}, which is far',
      values: { line: String(farthest.line), speed: speed(farthest.readSpeed), rated: speed(ratedSpeed) },
      source: AFFINITY_SOURCE,
    });
  if (!repeatability)
    notes.push({
      template:
        'No flow was read twice, so the scatter about the curve stands for how well a reading repeats',
    });
  if (wear?.proven && wear.wear < 0)
    notes.push({
      template:
        'No pump gains by wear: look at the gauges, the meter and the speed first, then at the impeller',
      source: COMMON,
    });
  if (wear?.proven && wear.wear > 0 && wear.lies !== 'evenly')
    notes.push({
      template:
        wear.lies === 'at_large_flows'
          ? 'The loss grows with flow: look at the suction (strainer, hose, air) before the pump itself'
          : 'The loss is largest near shutoff: look at wear rings and seals, which leak back most there',
      source: COMMON,
    });
  return notes;
}

const answerFirst = (readings: CurveAnswer['readings']): number =>
  Math.min(...readings.filter(({ odd }) => !odd).map((one) => one.flow));

function assumptionsOf(
  { gaugeError }: Noted,
  { discharge, inlet, waterTemperature }: BenchReadings,
): Statement[] {
  const bores = discharge.bore !== undefined && inlet.bore !== undefined;
  return [
    {
      template: 'Total head by the two gauges, at rated speed by the affinity laws',
      source: AFFINITY_SOURCE,
    },
    ...(bores
      ? []
      : [
          {
            template:
              'The velocity heads at the two gauges were taken as alike, as their bores are not both stated',
          },
        ]),
    ...(waterTemperature === undefined
      ? [
          {
            template: 'Water of {water}, as no temperature is stated',
            values: { water: { value: REFERENCE_TEMPERATURE, dimension: 'temperature' as const } },
          },
        ]
      : []),
    gaugeError === undefined
      ? {
          template:
            'A gauge or meter that is off at every reading alike shows in no scatter and is in no band here; say discharge gauge error',
        }
      : {
          template: 'The band holds the scatter of the readings and {error} of the gauge',
          values: { error: pressure(gaugeError) },
        },
  ];
}
