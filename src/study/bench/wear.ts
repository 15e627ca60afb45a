import { dot, linearFit } from '../../statistics/linear-fit.js';
import { studentTails, studentWithin } from '../../statistics/student.js';
import type { WearAnswer } from './curve-answer.js';

/** A trend that even wear would show once in twenty times is told as one. */
const TREND_CHANCE = 0.05;
const FEWEST_FOR_TREND = 5;

/** A reading beside what the curve that it is compared with has there. */
export interface Compared {
  flow: number;
  pressure: number;
  expected: number;
}

/**
 * The part of its head that a pump has lost, with an interval.
 *
 * Formula: 1 - w = sum(h H) / sum(H^2); its standard error from the scatter about (1 - w) H, an error of the gauge that is common to all
 * readings added by squares; loss that grows along the curve by the slope of h/H against flow
 * Range: two readings or more.
 * Source: least squares through the origin (Draper and Smith, ch. 1; from memory); wear of one part at every flow as in `WornCurve`.
 */
export function wearOf(
  readings: readonly Compared[],
  confidence: number,
  gaugeError: number,
): Pick<WearAnswer, 'wear' | 'low' | 'high' | 'proven' | 'lies' | 'readings'> {
  const expected = readings.map((one) => one.expected);
  const squares = dot(expected, expected);
  const left =
    dot(
      expected,
      readings.map((one) => one.pressure),
    ) / squares;
  const off = readings.map((one) => one.pressure - left * one.expected);
  const freedom = readings.length - 1;
  const scatter = Math.sqrt(dot(off, off) / freedom / squares);
  const common = (gaugeError * expected.reduce((sum, one) => sum + one, 0)) / squares;
  const half = Math.hypot(scatter * studentWithin(confidence, freedom), common);
  const wear = 1 - left;
  return {
    wear,
    low: wear - half,
    high: wear + half,
    proven: Math.abs(wear) > half,
    lies: whereLost(readings),
    readings: readings.length,
  };
}

function whereLost(readings: readonly Compared[]): WearAnswer['lies'] {
  if (readings.length < FEWEST_FOR_TREND) return 'evenly';
  const last = Math.max(...readings.map(({ flow }) => flow));
  const { unknowns, squares, freedom, varianceAt } = linearFit(
    readings.map(({ flow }) => [1, flow / last]),
    readings.map(({ pressure, expected }) => pressure / expected),
  );
  const error = Math.sqrt((squares / freedom) * varianceAt([0, 1]));
  if (error === 0 || studentTails(unknowns[1] / error, freedom) > TREND_CHANCE) return 'evenly';
  return unknowns[1] < 0 ? 'at_large_flows' : 'at_small_flows';
}
