import { GAUGE_ERROR, USUAL_DIAL } from '../limits/gauge-limit.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/**
 * How far a predicted pressure may lie from the one read, from the gauge, the bore and the coefficient of the orifice
 * together: 1.7 % of the flow, so 3.4 % of the pressure. Computed from those three.
 */
const PREDICTION_ERROR = 0.034;

/** A verdict that turns on less than the gauge can show, or than a prediction can promise; and readings past the gauge. */
export const thinMargin: Hazard = ({ verdict }) => {
  if (verdict === undefined) return [];
  const { required, margin, reading } = verdict;
  const gauge = GAUGE_ERROR * USUAL_DIAL;
  const prediction = Math.max(gauge, PREDICTION_ERROR * required);
  const cautions: Caution[] = [];
  if (Math.abs(margin) < prediction) {
    const seen = Math.abs(margin) < gauge;
    cautions.push({
      code: 'margin_within_error',
      level: seen ? 'warn' : 'note',
      at: 'the verdict',
      value: { value: margin, dimension: 'pressure' },
      limit: { value: seen ? gauge : prediction, dimension: 'pressure' },
      message: seen
        ? 'The verdict turns on {value}, less than the {limit} that a test gauge may be out by'
        : 'The verdict turns on {value}, less than the {limit} that a prediction may be out by',
      action: 'Count on neither a pass nor a failure: find more margin, or test the finished truck.',
      source: seen
        ? 'NWCG PMS 447-1 (2003), Appendix C: 1 % of full scale, on a 400 psi gauge (common practice, no source)'
        : 'computed: gauge 4 psi, bore 0.001 in and coefficient 1.5 % together',
    });
  }
  if (reading !== undefined && reading > USUAL_DIAL) {
    cautions.push({
      code: 'past_the_gauge',
      level: 'note',
      at: 'the test gauge',
      value: { value: reading, dimension: 'pressure' },
      limit: { value: USUAL_DIAL, dimension: 'pressure' },
      message: 'The reading of {value} lies past the end of a common test gauge, {limit}',
      action: 'Bring a gauge of a larger range, in its yearly calibration.',
      source: 'common practice, no source',
    });
  }
  return cautions;
};
