import type { Layout } from '../../layout/layout.js';
import type { TrialReadings } from '../../readings/read-trial.js';
import { INSTRUMENTS, type Instrument } from '../../readings/trial-columns.js';
import { type Cause, causesOf } from './causes.js';

/** What each instrument may be off by at every reading alike, and what a single reading may be: standard deviations, SI. */
export interface InstrumentDoubt {
  common: number;
  single: number;
}

/** An error that stands at two deviations, by the use of the word in instrument classes (common practice, no source). */
const DEVIATIONS_IN_ERROR = 2;
/** 1 % of the range of a gauge of 400 psi: NWCG PMS 447-1 (2003), Appendix C, grade 1A, yearly calibrated. */
const GAUGE_ERROR = 27_579;
/** Common practice, no source. */
const INLET_ERROR = 3_400;
const METER_ERROR = 0.03;
const SPEED_ERROR = 0.005;
/** A gauge is read to about a psi, and stands no stiller: judgement, no source. */
const READ_TO = 6_900;
const INLET_READ_TO = 1_700;

/** What a discharge gauge may be off by, Pa. */
export const gaugeErrorOf = ({ gaugeError }: Pick<TrialReadings, 'gaugeError'>): number =>
  gaugeError ?? GAUGE_ERROR;

export function instrumentDoubt(
  instrument: Instrument,
  { gaugeError, inletError, meterError, speedError }: Partial<TrialReadings>,
  value: number,
): InstrumentDoubt {
  if (instrument === 'flow')
    return { common: ((meterError ?? METER_ERROR) / DEVIATIONS_IN_ERROR) * value, single: 0.005 * value };
  if (INSTRUMENTS[instrument].dimension === 'speed')
    return { common: ((speedError ?? SPEED_ERROR) / DEVIATIONS_IN_ERROR) * value, single: 0.001 * value };
  if (instrument.startsWith('inlet'))
    return { common: (inletError ?? INLET_ERROR) / DEVIATIONS_IN_ERROR, single: INLET_READ_TO };
  return { common: gaugeErrorOf({ gaugeError }) / DEVIATIONS_IN_ERROR, single: READ_TO };
}

/** Part of its pressures that a pump's file may be off by, as a deviation, where it does not say: judgement, no source. */
const CURVE_DEVIATION = 0.015;
/** Deviations in the 90 % that a file's own uncertainty holds. */
const IN_NINETY = 1.645;

/**
 * What a prediction may be off by though nothing is wrong, each a cause of a small size: the curve of each pump, where its governor
 * stands (1 % either way; judgement), the orifice and its coefficient (1.5 % either way: judgement), the losses before the pumps.
 */
export function usualDoubt(layout: Layout): { cause: Cause; deviation: number }[] {
  const causes = causesOf(layout, [], true);
  const usual = (cause: Cause): number | undefined => {
    const pump = cause.at.endsWith(' b') ? layout.engine.pumps.b : layout.engine.pumps.a;
    switch (cause.kind) {
      case 'pump_worn':
        return pump?.model.uncertainty === undefined ? CURVE_DEVIATION : pump.model.uncertainty / IN_NINETY;
      case 'governor_low':
        return 0.005;
      case 'orifice_worn':
        // The flow goes with the square of the bore.
        return 0.0075 / 2;
      case 'check_valve':
        return 0.5;
      case 'suction_blocked':
        return 0.5;
      case 'instrument_off':
        return undefined;
    }
  };
  return causes.flatMap((cause) => {
    const deviation = usual(cause);
    return deviation === undefined ? [] : [{ cause, deviation }];
  });
}
