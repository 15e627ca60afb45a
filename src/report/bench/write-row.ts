import { Document, isScalar, visit } from 'yaml';
import { toUnit, type UnitSystem, unitFor } from '../../quantity/format.js';
import type { BenchReadings } from '../../readings/read-bench.js';
import type { CurveAnswer } from '../../study/bench/curve-answer.js';

/** What a new curve takes the place of in a row; all else of the pump that it is compared with is kept. */
const REPLACED = new Set([
  'name',
  'note',
  'points',
  'shape',
  'rated_speed',
  'tested_at',
  'source',
  'uncertainty',
  'hours',
  'edition',
  'url',
]);

/**
 * The row of a pump, as `model:` of a layout takes it: its measured points with their uncertainty, and what the pump that it was
 * compared with says of power, limits and weight.
 */
export function curveRow(
  answer: CurveAnswer,
  bench: BenchReadings,
  units: UnitSystem,
): Record<string, unknown> {
  const flowUnit = unitFor('flow', units);
  const pressureUnit = unitFor('pressure', units);
  const say = (si: number, unit: typeof flowUnit, digits: number) =>
    `${Number(toUnit(si, unit).toFixed(digits))} ${unit}`;
  const { row, ratedSpeed } = answer;
  const kept = Object.entries(bench.compared?.written ?? {}).filter(([key]) => !REPLACED.has(key));
  const temperature = (si: number) => say(si, unitFor('temperature', units), 1);
  const tested = {
    ...(bench.elevation !== undefined && { elevation: say(bench.elevation, unitFor('length', units), 0) }),
    ...(bench.airTemperature !== undefined && { air_temperature: temperature(bench.airTemperature) }),
    ...(bench.waterTemperature !== undefined && { water_temperature: temperature(bench.waterTemperature) }),
  };
  return {
    name: answer.title,
    rated_speed: `${Math.round(ratedSpeed)} rpm`,
    points: row.points.map(({ flow, pressure }) => [
      say(flow, flowUnit, units === 'us' ? 1 : 0),
      say(pressure, pressureUnit, units === 'us' ? 1 : 0),
    ]),
    shape: row.shape,
    uncertainty: `${(row.uncertainty * 100).toFixed(1)} %`,
    ...(Object.keys(tested).length > 0 && { tested_at: tested }),
    ...(bench.hours !== undefined && { hours: say(bench.hours, 'h', 0) }),
    ...Object.fromEntries(kept),
    source: `bench readings of ${answer.file.split(/[\\/]/).pop()}, fitted by pumpyoke`,
  };
}

/** The row as a file, with what it is and where it goes. */
export function curveRowYaml(answer: CurveAnswer, bench: BenchReadings, units: UnitSystem): string {
  const head = [
    '# A pump as its readings have it. Put it under the model: of a pump in an engine, set in by its depth, or give it to',
    '# pumpyoke curve as --against next year. Its wear is in the curve already: leave wear: out.',
    ...(answer.shutoff.basis === 'extrapolated' ? ['# Shutoff was not measured.'] : []),
  ];
  const document = new Document(curveRow(answer, bench, units));
  visit(document, {
    // Points and rows of figures stand on a line each, as in the catalogue.
    Seq: (_, list) => {
      if (list.items.every((item) => isScalar(item))) list.flow = true;
    },
  });
  return `${head.join('\n')}\n${document.toString({ lineWidth: 0 })}`;
}
