import type { Draw } from '../../../src/drill/random.js';
import { readLayout } from '../../../src/layout/read-layout.js';
import type { TrialReadings } from '../../../src/readings/read-trial.js';
import type { Instrument } from '../../../src/readings/trial-columns.js';
import { Rig } from '../../../src/study/rig.js';
import { type Cause, causesOf } from '../../../src/study/trial/causes.js';
import { usualDoubt } from '../../../src/study/trial/doubt.js';
import { TrialModel } from '../../../src/study/trial/model.js';
import type { SetUp } from '../../../src/study/trial/observe.js';

const INCH = 0.0254;
const PSI = 6894.757293168361;

export const LAYOUT = readLayout(`${import.meta.dirname}/../../../data/examples/demo.yaml`).layout;

/** Each pump alone and both together: shut, and at both plates of the agency. */
export const FULL_SHEET: SetUp[] = (['a', 'b', 'parallel'] as const)
  .flatMap((staging) => [{ staging }, { staging, orifice: 0.52 * INCH }, { staging, orifice: 0.716 * INCH }])
  .filter(({ staging, orifice }) => staging === 'parallel' || orifice !== 0.716 * INCH);

export const ALL: Instrument[] = [
  'tee',
  'panel',
  'discharge a',
  'discharge b',
  'inlet a',
  'speed a',
  'speed b',
];

export const normal = (draw: Draw): number =>
  Math.sqrt(-2 * Math.log(1 - draw.fraction())) * Math.cos(2 * Math.PI * draw.fraction());

/** A fault of a size that somebody would want found. */
function sizeOf({ kind, at }: Cause, draw: Draw): number {
  const between = (low: number, high: number) => low + (high - low) * draw.fraction();
  switch (kind) {
    case 'pump_worn':
      return between(0.08, 0.2);
    case 'governor_low':
      return between(0.04, 0.12);
    case 'check_valve':
      return between(12, 40);
    case 'suction_blocked':
      return between(25, 60);
    case 'orifice_worn':
      return between(0.03, 0.08);
    case 'instrument_off': {
      const side = draw.chance(0.5) ? 1 : -1;
      if (at.startsWith('speed')) return side * between(0.02, 0.08);
      if (at.startsWith('inlet')) return side * between(2, 5) * PSI;
      return side * between(10, 25) * PSI;
    }
  }
}

/** Readings of a truck with one fault, everything else off by as much as it usually is, and read as finely as gauges are. */
export async function simulate(
  draw: Draw,
  instruments: readonly Instrument[],
  setUps: readonly SetUp[],
  wanted: (cause: Cause) => boolean = () => true,
  sound = false,
): Promise<{ cause: Cause; size: number; readings: TrialReadings }> {
  const rig = await Rig.of(LAYOUT);
  const plate = LAYOUT.typing?.requirement.test_orifice;
  if (plate === undefined) throw new Error('the example has a test orifice');
  const model = new TrialModel(rig, plate, {});
  const causes = causesOf(LAYOUT, instruments, true).filter(wanted);
  for (;;) {
    const cause = draw.pick(causes);
    const size = sound ? 0 : sizeOf(cause, draw);
    const usual = usualDoubt(LAYOUT);
    const off = Object.fromEntries(instruments.map((one) => [one, normal(draw)]));
    const observed = model.observe(
      setUps,
      [...usual.map((one) => one.cause), cause],
      [
        ...usual.map(({ cause: { kind }, deviation }) => {
          const by = deviation * normal(draw);
          return kind === 'check_valve' || kind === 'suction_blocked' ? Math.abs(by) : by;
        }),
        size,
      ],
    );
    if (observed === undefined) continue;
    const rows = setUps.map((setUp, i) => {
      const read: Partial<Record<Instrument, number>> = {};
      for (const instrument of instruments) {
        const value = observed[i][instrument];
        if (value === undefined) continue;
        const { common, single } = model.doubtOf(instrument, value);
        read[instrument] = value + common * off[instrument] + single * normal(draw);
      }
      return { ...setUp, line: i + 2, read };
    });
    return { cause, size, readings: { file: 'simulated', rows } };
  }
}
