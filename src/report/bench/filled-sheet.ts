import { formatFigure, type UnitSystem, unitFor } from '../../quantity/format.js';
import type { TrialAnswer } from '../../study/trial/trial-answer.js';
import { csvOf } from '../csv.js';
import { dimensionOf } from './trial-words.js';

/** The sheet with its predictions filled in, a reading a row, for a spreadsheet. */
export function filledSheet({ readings }: TrialAnswer, units: UnitSystem): string {
  const head = [
    'line',
    'staging',
    'orifice',
    'instrument',
    'unit',
    'read',
    'predicted',
    'tolerance',
    'result',
  ];
  const rows = readings.map((one) => {
    const unit = unitFor(dimensionOf(one.instrument), units);
    const say = (si: number | undefined) =>
      si === undefined ? '' : formatFigure(si, unit, { decimals: 1 }).replaceAll(',', '');
    const boreUnit = unitFor('length', units, 'bore');
    return [
      String(one.line),
      one.staging,
      one.orifice === undefined
        ? 'shut'
        : `${formatFigure(one.orifice, boreUnit, { decimals: 3 })} ${boreUnit}`,
      one.instrument,
      unit,
      say(one.read),
      say(one.predicted),
      say(one.tolerance),
      one.reason ? 'not told' : one.agrees ? 'agrees' : 'off',
    ];
  });
  return csvOf([head, ...rows]);
}
