import type { BrakePower } from './brake-power.js';
import { type UnsteadyStretch, type UnsteadyStretches, unsteadyStretches } from './unsteady-stretch.js';

/** How an engine's power falls with its speed below the rated one. */
export type Lugging = 'constant_power' | 'flat_torque';

/** Speeds are found to this part of the rated one. */
const SPEED_FOUND = 1e-13;

/**
 * Speed that an engine holds a pump at: what its governor asks for, or the one at which the power that the pump takes is all that is
 * left of the engine's.
 *
 * Formula: s = min(s_governed, root of s^3 P(Q/s) = P_left s^k), k 0 at constant power, 1 at flat torque; P at rated speed
 * Range: any flow; affinity laws hold. Where several speeds balance at a flow (see `unsteadyStretches`) it is the highest of them, the
 * one that an engine comes to that is opened up from no flow.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33; constant power and flat torque as the two bounds of a loaded engine
 * are common practice, no source.
 */
export class HeldSpeed {
  readonly power: BrakePower;
  /** Power that the engine has at rated speed, W. */
  readonly available: number;
  readonly lugging: Lugging;
  readonly #exponent: number;
  readonly #at = { power: 0, slope: 0 };
  #stretches: UnsteadyStretches | undefined;

  constructor(power: BrakePower, available: number, lugging: Lugging) {
    this.power = power;
    this.available = available;
    this.lugging = lugging;
    this.#exponent = lugging === 'constant_power' ? 3 : 2;
  }

  /** Writes the speed held at a flow (m3/s) and d(speed)/d(flow), where the governor asks for `governed` (part of rated). */
  evaluate(flow: number, governed: number, out: { speed: number; slope: number }): void {
    out.speed = governed;
    out.slope = 0;
    if (this.#excess(flow, governed) <= 0) return;
    const s = this.#balance(flow, governed);
    const n = this.#exponent;
    const { power, slope } = this.#at;
    // By s^n P(q/s) = P_left: n P ds + s P' (dq/s - q ds/s^2) = 0.
    const down = n * power - (slope * flow) / s;
    out.speed = s;
    out.slope = down > 0 ? -slope / down : 0;
  }

  /** The speed that the engine has the power for where the pump turns at a speed and moves a flow (m3/s), opened as far as it is. */
  speedAsked(flow: number, speed: number): number {
    this.power.evaluate(flow / speed, this.#at);
    return (this.available / this.#at.power) ** (1 / this.#exponent);
  }

  /** The unsteady stretches in which the engine is at the end of its power, where the governor asks for `governed`. */
  unsteadyAt(governed: number): readonly UnsteadyStretch[] {
    const least = this.available / governed ** this.#exponent;
    return this.#unsteady.all.filter(({ mostPower }) => mostPower > least);
  }

  /** Power that the engine has at a part of its rated speed, W. */
  availableAt(speed: number): number {
    return this.lugging === 'flat_torque' ? this.available * speed : this.available;
  }

  #excess(flow: number, speed: number): number {
    this.power.evaluate(flow / speed, this.#at);
    return speed ** this.#exponent * this.#at.power - this.available;
  }

  get #unsteady(): UnsteadyStretches {
    this.#stretches ??= unsteadyStretches(this.power, this.#exponent);
    return this.#stretches;
  }

  /** Between which speeds the highest lies that balances at a flow: the pump is followed as it slows, from fold to fold. */
  #highestBracket(flow: number, governed: number): { low: number; high: number } {
    let high = governed;
    if (flow <= 0) return { low: 0, high };
    for (const { from, to } of this.#unsteady.folds) {
      if (flow >= to * high) continue;
      if (flow < from * high && this.#excess(flow, flow / from) <= 0) return { low: flow / from, high };
      if (this.#excess(flow, flow / to) <= 0) return { low: flow / to, high };
      high = flow / to;
    }
    return { low: 0, high };
  }

  /** Newton from above, halving where it leaves the bracket; leaves the pump's power at the speed found in `#at`. */
  #balance(flow: number, governed: number): number {
    let { low, high } = this.#highestBracket(flow, governed);
    let s =
      high *
      Math.min(1, (this.available / (this.available + this.#excess(flow, high))) ** (1 / this.#exponent));
    if (!(s > low)) s = (low + high) / 2;
    for (let tries = 0; tries < 80; tries++) {
      const excess = this.#excess(flow, s);
      if (excess > 0) high = s;
      else low = s;
      const n = this.#exponent;
      const steep = s ** (n - 1) * (n * this.#at.power - (this.#at.slope * flow) / s);
      let next = s - excess / steep;
      if (!(next > low && next < high)) next = (low + high) / 2;
      if (Math.abs(next - s) <= SPEED_FOUND) break;
      s = next;
    }
    this.#excess(flow, s);
    return s;
  }
}

/**
 * Speed of a loaded engine that has lost or gained power, where nothing is known of the pump's own power: it stood at its limit when
 * its curve was measured, and works against an orifice.
 *
 * Formula: s = d^(1/3) at constant power, d^(1/2) at flat torque, d the power there over the power here
 * Range: d above 0; an outlet whose pressure goes with the square of its flow. Pressure goes by s^2, flow by s.
 * Errors: none.
 * Source: affinity laws, as in Crane TP-410 (2009) example 7.33: power goes by s^3.
 * @param powerRatio power there over power where the curve was measured [1]
 * @param lugging constant_power or flat_torque [name]
 * @returns part of the speed of the curve [1]
 * @example carriedSpeed(0.85, 'constant_power') // => 0.947
 */
export function carriedSpeed(powerRatio: number, lugging: Lugging): number {
  return powerRatio ** (lugging === 'constant_power' ? 1 / 3 : 1 / 2);
}
