import { fitCurves, pumpCurveOf } from '../../assembly/pump.js';
import { REFERENCE_TEMPERATURE, REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { pressureOfHeight } from '../../physics/elevation.js';
import { benchHead } from '../../physics/pump-curve/bench-head.js';
import { headAt, type PumpCurve } from '../../physics/pump-curve/curve.js';
import { waterDensity } from '../../physics/water.js';
import type { BenchReadings } from '../../readings/read-bench.js';
import { bestShape, type FitShape, fitShape, type HeadCurveFit } from '../../statistics/head-curve-fit.js';
import type { BandPoint, CorrectedReading, CurveAnswer, CurveRow, WearAnswer } from './curve-answer.js';
import { curveNotes } from './curve-notes.js';
import { repeatabilityOf } from './repeatability.js';
import { wearOf } from './wear.js';

export type { CurveAnswer } from './curve-answer.js';

export interface CurveOptions {
  /** The shape of the fitted curve; chosen by the readings unless given. */
  shape?: FitShape;
}

/** Raised where readings make no falling curve of the shape that is asked for. */
export class NoCurve extends Error {
  override name = 'NoCurve';
}

const CONFIDENCE = 0.9;
const SHAPES: readonly FitShape[] = ['power', 'quadratic', 'monotone'];
/** A flow below this part of the largest is the outlet shut, a gauge line or a cooler open at most. */
const SHUT = 0.02;
const DRAWN = 40;
/** Points that a row needs to run as the fitted curve does. */
const ROW_POINTS: Record<FitShape, number> = { power: 3, quadratic: 5, monotone: 7 };

/** What bench readings come to: the curve of the pump at rated speed with its band, and how worn that leaves it. */
export async function curveOf(bench: BenchReadings, options: CurveOptions = {}): Promise<CurveAnswer> {
  const density =
    bench.waterTemperature === undefined ? REFERENCE_WATER_DENSITY : waterDensity(bench.waterTemperature);
  const corrected = bench.readings.map((one) => correct(one, bench, density));
  const last = Math.max(...corrected.map(({ flow }) => flow));
  const fit = fitted(corrected, last, options.shape);
  const gauge = bench.discharge.error ?? 0;
  const at = (flow: number): BandPoint => {
    const pressure = fit.at(flow / last);
    const half = Math.hypot(fit.halfBand(flow / last, CONFIDENCE), gauge);
    return { flow, pressure, low: pressure - half, high: pressure + half };
  };
  const readings = corrected.map(
    (one, i): CorrectedReading => ({
      ...one,
      over: fit.residuals[i],
      odd: fit.odd?.index === i,
    }),
  );
  const sound = readings.filter(({ odd }) => !odd);
  const first = Math.min(...sound.map(({ flow }) => flow));
  const measured = first <= SHUT * last;
  const end = Math.max(...sound.map(({ flow }) => flow));
  const answer: Omit<CurveAnswer, 'notes' | 'assumptions'> = {
    question: 'curve',
    title: bench.title ?? (bench.compared ? `Bench readings of ${bench.compared.name}` : 'Bench readings'),
    file: bench.file,
    ratedSpeed: bench.ratedSpeed,
    waterTemperature: bench.waterTemperature ?? REFERENCE_TEMPERATURE,
    readings,
    copies: bench.copies,
    shape: fit.shape,
    shapeChosen: options.shape ? 'as_asked' : 'by_the_readings',
    scatter: fit.scatter,
    freedom: fit.freedom,
    gaugeError: bench.discharge.error,
    confidence: CONFIDENCE,
    curve: Array.from({ length: DRAWN + 1 }, (_, i) => at((i * end) / DRAWN)),
    shutoff: { ...at(0), basis: measured ? 'measured' : 'extrapolated' },
    repeatability: repeatabilityOf(sound),
    odd: fit.odd && {
      line: readings[fit.odd.index].line,
      over: readings[fit.odd.index].over,
      chance: fit.odd.chance,
    },
    wear: await wearAgainst(bench, sound, gauge, density),
    row: rowOf(fit.shape, measured ? 0 : first, end, at),
  };
  return { ...answer, ...curveNotes(answer, bench) };
}

type Uncompared = Omit<CorrectedReading, 'over' | 'odd'>;

/** To total head, and to rated speed by the affinity laws. */
function correct(
  { line, flow, discharge, inlet, speed }: BenchReadings['readings'][number],
  bench: BenchReadings,
  density: number,
): Uncompared {
  const ratio = bench.ratedSpeed / speed;
  const head = benchHead(
    { reading: discharge, height: bench.discharge.height, bore: bench.discharge.bore },
    { reading: inlet, height: bench.inlet.height, bore: bench.inlet.bore },
    flow,
    density,
  );
  return {
    line,
    readFlow: flow,
    readDischarge: discharge,
    readInlet: inlet,
    readSpeed: speed,
    flow: flow * ratio,
    pressure: pressureOfHeight(head, density) * ratio ** 2,
  };
}

function fitted(readings: readonly Uncompared[], last: number, shape: FitShape | undefined): HeadCurveFit {
  const x = readings.map(({ flow }) => flow / last);
  const y = readings.map(({ pressure }) => pressure);
  const fit = shape ? fitShape(shape, x, y) : bestShape(SHAPES, x, y);
  if (fit === undefined)
    throw new NoCurve(
      `the readings make no ${shape ?? ''} curve whose pressure falls as flow grows`.replace('  ', ' '),
    );
  return fit;
}

function rowOf(shape: FitShape, first: number, last: number, at: (flow: number) => BandPoint): CurveRow {
  const count = ROW_POINTS[shape];
  const points = Array.from({ length: count }, (_, i) => at(first + ((last - first) * i) / (count - 1)));
  return {
    shape,
    points: points.map(({ flow, pressure }) => ({ flow, pressure })),
    uncertainty: Math.max(...points.map(({ pressure, high }) => (high - pressure) / pressure)),
  };
}

async function wearAgainst(
  bench: BenchReadings,
  readings: readonly CorrectedReading[],
  gaugeError: number,
  density: number,
): Promise<WearAnswer | undefined> {
  const { compared } = bench;
  if (compared === undefined) return undefined;
  const { pump, name } = compared;
  const curve = pumpCurveOf(pump, 0, await fitCurves([pump]));
  const pressureAt = pressureOn(curve, bench.ratedSpeed / (pump.rated_speed ?? bench.ratedSpeed), density);
  const within = readings
    .map(({ flow, pressure }) => ({ flow, pressure, expected: pressureAt(flow) }))
    .filter((one): one is typeof one & { expected: number } => one.expected !== undefined);
  if (within.length < 2) return undefined;
  const ends = within.map(({ flow }) => flow);
  const [first, last] = [Math.min(...ends), Math.max(...ends)];
  return {
    name,
    ...wearOf(within, CONFIDENCE, gaugeError),
    curve: Array.from({ length: DRAWN + 1 }, (_, i) => {
      const flow = first + ((last - first) * i) / DRAWN;
      return { flow, pressure: pressureAt(flow) ?? 0 };
    }),
  };
}

/** What a curve gives at the speed of the bench, as pressure of its water; undefined where it was not measured. */
function pressureOn(curve: PumpCurve, speedRatio: number, density: number) {
  return (flow: number): number | undefined => {
    const rated = flow / speedRatio;
    if (curve.isOffCurve(rated) || rated < curve.firstFlow) return undefined;
    return pressureOfHeight(headAt(curve, rated) * speedRatio ** 2, density);
  };
}
