import { citation } from '../../catalogue/citation.js';
import type { TypingTestOrifice } from '../../catalogue/schema/typing.js';
import type { Layout } from '../../layout/layout.js';
import type { TrialReadings, TrialRow } from '../../readings/read-trial.js';
import { makesIt } from '../judge.js';
import { ratingPoints, typingSource } from '../requirement.js';
import { gradeOf } from '../test-orifice.js';
import { gaugeErrorOf } from './doubt.js';
import type { JudgedReading } from './trial-answer.js';

/** A bore is the agency's where it is within this part of it. */
const SAME_BORE = 0.005;
/** A flow is a rating point's where it is at least this part of it. */
const OF_POINT = 0.999;

/** What the scheme of the typing makes of the readings: those at its test orifice, else those at the flows of its points. */
export function judgeReadings(layout: Layout, { rows, ...asked }: TrialReadings): JudgedReading[] {
  const { typing, staging } = layout;
  if (typing === undefined) return [];
  const own = rows.filter((row) => row.staging === staging);
  const gaugeError = gaugeErrorOf(asked);
  const { test_orifice: orifice } = typing.requirement;
  if (orifice) return own.flatMap((row) => atTestOrifice(row, orifice, gaugeError));
  return ratingPoints(typing).flatMap(({ name, flow, pressure, net }) => {
    const reached = own.flatMap((row) => {
      const gauge = row.read.panel ?? row.read.tee;
      const intake = net ? row.read['inlet a'] : 0;
      const enough = row.read.flow !== undefined && row.read.flow >= OF_POINT * flow;
      return enough && gauge !== undefined && intake !== undefined ? [{ row, read: gauge - intake }] : [];
    });
    const best = reached.sort((one, other) => other.read - one.read)[0];
    if (best === undefined) return [];
    const margin = best.read - pressure;
    const verdict = makesIt(margin) ? ('meets' as const) : ('falls_short' as const);
    return {
      line: best.row.line,
      at: name === '' ? 'the rating point' : name,
      read: best.read,
      passes: pressure,
      margin,
      grade: verdict === 'meets' ? 'pass' : 'below',
      verdict,
      withinGaugeError: Math.abs(margin) < gaugeError,
      gaugeError,
      source: typingSource(typing, 'flow'),
    };
  });
}

function atTestOrifice(row: TrialRow, orifice: TypingTestOrifice, gaugeError: number): JudgedReading[] {
  const read = row.read.tee;
  if (read === undefined || row.orifice === undefined) return [];
  if (Math.abs(row.orifice / orifice.bore - 1) > SAME_BORE) return [];
  const margin = read - orifice.passes;
  return [
    {
      line: row.line,
      at: 'the test orifice',
      read,
      passes: orifice.passes,
      margin,
      grade: gradeOf(orifice, read),
      verdict: makesIt(margin) ? 'meets' : 'falls_short',
      withinGaugeError: Math.abs(margin) < gaugeError,
      gaugeError,
      source: citation(orifice),
    },
  ];
}
