import { requireNotNegative, requirePositive } from './range.js';

/** Power of the flow to which a main's pressure falls. Source: NFPA 291 (its 0.54 is 1/1.85), from memory. */
export const HYDRANT_EXPONENT = 1.85;

export interface HydrantTest {
  /** Gauge pressure with nothing flowing, Pa. */
  staticPressure: number;
  /** Gauge pressure while the test flow runs, Pa. */
  residualPressure: number;
  /** m3/s */
  flow: number;
}

/**
 * Fall of a hydrant's pressure by flow: p = static - r q^1.85.
 *
 * Formula: r = (static - residual) / q^1.85
 * Range: residual below static, flow above 0. Steady main; best where the test draws it down by a tenth or more.
 * Errors: RangeError outside the range.
 * Source: NFPA 291, from memory.
 * @param test static and residual pressure and flow [Pa, Pa, m3/s]
 * @returns pressure fall over flow to the power 1.85 [Pa/(m3/s)^1.85]
 * @example hydrantResistance({ staticPressure: 80, residualPressure: 60, flow: 1 }) // => 20
 */
export function hydrantResistance(test: HydrantTest): number {
  requireNotNegative('residual pressure', test.residualPressure, 'Pa');
  requirePositive('test flow', test.flow, 'm3/s');
  if (!(test.staticPressure > test.residualPressure)) {
    throw new RangeError('static pressure must be above the residual pressure');
  }
  return (test.staticPressure - test.residualPressure) / test.flow ** HYDRANT_EXPONENT;
}

/**
 * Flow that a hydrant gives at another residual pressure.
 *
 * Formula: Q = Q_f ((static - wanted) / (static - residual))^(1/1.85)
 * Range: as `hydrantResistance`; wanted pressure up to the static one.
 * Errors: RangeError outside the range.
 * Source: NFPA 291 (exponent 0.54), from memory.
 * @param test static and residual pressure and flow [Pa, Pa, m3/s]
 * @param residualPressure residual pressure to be kept [Pa]
 * @returns flow [m3/s]
 * @example hydrantFlow({ staticPressure: 80, residualPressure: 60, flow: 1 }, 20) // => 1.811
 */
export function hydrantFlow(test: HydrantTest, residualPressure: number): number {
  const resistance = hydrantResistance(test);
  if (!(residualPressure <= test.staticPressure)) {
    throw new RangeError('the pressure to be kept must not be above the static pressure');
  }
  return ((test.staticPressure - residualPressure) / resistance) ** (1 / HYDRANT_EXPONENT);
}
