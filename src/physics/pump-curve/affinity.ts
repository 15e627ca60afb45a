import { requireNotNegative } from '../range.js';
import type { HeadAtFlow, PumpCurve } from './curve.js';

/**
 * Flow at another speed that corresponds to a flow at rated speed.
 *
 * Formula: Q = Q_r s, s = N / N_r
 * Range: speeds within some half to twice the rated one, by common practice; one impeller, same water.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33.
 * @param ratedFlow flow at rated speed [m3/s]
 * @param speedRatio speed over rated speed [1]
 * @returns flow [m3/s]
 * @example affinityFlow(400, 1700 / 3500) // => 194
 */
export function affinityFlow(ratedFlow: number, speedRatio: number): number {
  return ratedFlow * speedRatio;
}

/**
 * Head at another speed that corresponds to a head at rated speed.
 *
 * Formula: H = H_r s^2
 * Range: as `affinityFlow`.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33.
 * @param ratedHead head at rated speed [m]
 * @param speedRatio speed over rated speed [1]
 * @returns head [m]
 * @example affinityHead(126, 1700 / 3500) // => 29.7
 */
export function affinityHead(ratedHead: number, speedRatio: number): number {
  return ratedHead * speedRatio ** 2;
}

/**
 * Power at another speed that corresponds to a power at rated speed.
 *
 * Formula: P = P_r s^3
 * Range: as `affinityFlow`; efficiency taken as the same.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33.
 * @param ratedPower power at rated speed [W]
 * @param speedRatio speed over rated speed [1]
 * @returns power [W]
 * @example affinityPower(17.5, 1700 / 3500) // => 2.0
 */
export function affinityPower(ratedPower: number, speedRatio: number): number {
  return ratedPower * speedRatio ** 3;
}

/** A pump curve turned to another speed: head = s^2 curve(q / s). A pump that stands still makes no head. */
export class SpeedCurve implements PumpCurve {
  readonly #rated: PumpCurve;
  readonly speedRatio: number;

  /** @param speedRatio speed over rated speed, 0 or above [1] */
  constructor(rated: PumpCurve, speedRatio: number) {
    requireNotNegative('speed ratio', speedRatio, '');
    this.#rated = rated;
    this.speedRatio = speedRatio;
  }

  evaluate(flow: number, out: HeadAtFlow): void {
    const s = this.speedRatio;
    if (s === 0) {
      out.head = 0;
      out.slope = 0;
      return;
    }
    this.#rated.evaluate(flow / s, out);
    out.head *= s * s;
    out.slope *= s;
  }

  get firstFlow(): number {
    return this.#rated.firstFlow * this.speedRatio;
  }

  get lastFlow(): number {
    return this.#rated.lastFlow * this.speedRatio;
  }

  get shutoffHead(): number {
    return this.#rated.shutoffHead * this.speedRatio ** 2;
  }

  isOffCurve(flow: number): boolean {
    return this.speedRatio === 0 ? flow > 0 : this.#rated.isOffCurve(flow / this.speedRatio);
  }

  droops(): boolean {
    return this.speedRatio > 0 && this.#rated.droops();
  }
}
