import { REFERENCE_WATER_DENSITY, STANDARD_GRAVITY } from '../constants.js';
import { requirePositive, requireWithin } from '../range.js';

/**
 * How much an automatic nozzle's pressure rises over its whole range, as a part of its set pressure: half of it below, half above.
 * Real springs let it rise by more; a little is needed for a pressure to have one flow. Common practice, no source.
 */
export const REGULATION_RISE = 0.02;

/**
 * Pressure at the low end of the range over which an automatic nozzle regulates.
 *
 * Formula: NP(q1) = set (1 - e/2), e = 0.02
 * Range: set pressure above 0.
 * Errors: RangeError outside the range.
 * Source: as `AutomaticNozzle`.
 * @param setPressure nozzle pressure that it holds [Pa]
 * @returns nozzle pressure at its least regulated flow [Pa]
 * @example leastRegulated(700000) // => 693000
 */
export function leastRegulated(setPressure: number): number {
  requirePositive('set pressure', setPressure, 'Pa');
  return setPressure * (1 - REGULATION_RISE / 2);
}

export type AutomaticState = 'below' | 'regulating' | 'above';

/**
 * An automatic nozzle: its baffle opens as flow grows and holds the nozzle pressure near the set one. Below its range the
 * baffle rests on its least opening, above on its greatest, and it is a fixed orifice.
 *
 * Formula: between q1 and q2, NP = set (1 - e/2 + e (q - q1)/(q2 - q1)), e = 0.02; below, NP = NP(q1) (q/q1)^2; above,
 * NP = NP(q2) (q/q2)^2. Head by density of water at 60 degF.
 * Range: any flow; 0 < q1 < q2, set pressure above 0. Head grows strictly with flow; its slope steps at q1 and q2.
 * Errors: RangeError outside the range, when it is made.
 * Source: common practice, no source.
 */
export class AutomaticNozzle {
  readonly setPressure: number;
  readonly flowFrom: number;
  readonly flowTo: number;
  readonly #headFrom: number;
  readonly #headTo: number;
  readonly #slope: number;

  /**
   * @param setPressure nozzle pressure that it holds [Pa]
   * @param flowFrom flow at which it begins to regulate [m3/s]
   * @param flowTo flow at which it is full open [m3/s]
   * @param regulationRise rise of pressure over the range, as a part of the set pressure [1]
   */
  constructor(setPressure: number, flowFrom: number, flowTo: number, regulationRise = REGULATION_RISE) {
    requirePositive('set pressure', setPressure, 'Pa');
    requirePositive('least regulated flow', flowFrom, 'm3/s');
    requirePositive('greatest regulated flow', flowTo, 'm3/s');
    if (flowTo <= flowFrom) {
      throw new RangeError(
        `greatest regulated flow must be above the least, ${flowFrom} m3/s, not ${flowTo}`,
      );
    }
    requireWithin('regulation rise', regulationRise, 1e-6, 1, '');
    this.setPressure = setPressure;
    this.flowFrom = flowFrom;
    this.flowTo = flowTo;
    const setHead = setPressure / (REFERENCE_WATER_DENSITY * STANDARD_GRAVITY);
    this.#headFrom = setHead * (1 - regulationRise / 2);
    this.#headTo = setHead * (1 + regulationRise / 2);
    this.#slope = (this.#headTo - this.#headFrom) / (flowTo - flowFrom);
  }

  /** Writes the total head behind the nozzle (m) at a flow (m3/s), of the flow's sign, and its slope into `out`. */
  evaluate(flow: number, out: { loss: number; slope: number }): void {
    const size = flow < 0 ? -flow : flow;
    let loss: number;
    if (size < this.flowFrom || size > this.flowTo) {
      const ratio = size < this.flowFrom ? size / this.flowFrom : size / this.flowTo;
      const head = size < this.flowFrom ? this.#headFrom : this.#headTo;
      loss = head * ratio * ratio;
      out.slope =
        size < this.flowFrom ? (2 * head * ratio) / this.flowFrom : (2 * head * ratio) / this.flowTo;
    } else {
      loss = this.#headFrom + this.#slope * (size - this.flowFrom);
      out.slope = this.#slope;
    }
    out.loss = flow < 0 ? -loss : loss;
  }

  /** Whether a flow (m3/s) is below, in or above the range in which it holds its pressure. */
  state(flow: number): AutomaticState {
    if (flow < this.flowFrom) return 'below';
    return flow > this.flowTo ? 'above' : 'regulating';
  }
}

/**
 * Flow of an automatic nozzle at a nozzle pressure.
 *
 * Formula: the inverse of `AutomaticNozzle`
 * Range: pressure 0 or above.
 * Errors: RangeError where the pressure is below 0.
 * Source: as `AutomaticNozzle`.
 * @param nozzle the nozzle [AutomaticNozzle]
 * @param pressure nozzle pressure at water of 60 degF [Pa]
 * @returns flow [m3/s]
 * @example automaticFlow(new AutomaticNozzle(700000, 0.001, 0.004), 700000) // => 0.0025
 */
export function automaticFlow(nozzle: AutomaticNozzle, pressure: number): number {
  requireWithin('pressure', pressure, 0, Number.MAX_VALUE, 'Pa');
  const head = pressure / (REFERENCE_WATER_DENSITY * STANDARD_GRAVITY);
  const out = { loss: 0, slope: 0 };
  nozzle.evaluate(nozzle.flowFrom, out);
  const { loss: headFrom, slope } = out;
  if (head < headFrom) return nozzle.flowFrom * Math.sqrt(head / headFrom);
  nozzle.evaluate(nozzle.flowTo, out);
  if (head > out.loss) return nozzle.flowTo * Math.sqrt(head / out.loss);
  return nozzle.flowFrom + (head - headFrom) / slope;
}
