import { waterPower } from '../pump-power.js';
import { headAt, type PumpCurve } from './curve.js';

/** Least and most of the first row's power that is taken at no flow. Common practice, no source. */
const LEAST_AT_SHUTOFF = 0.3;
const ALONE_AT_SHUTOFF = 0.5;

/**
 * Power that a pump takes at its shaft at rated speed, against its flow, from rows of efficiency.
 *
 * Formula: P = rho g Q H / efficiency, efficiency straight between rows; below the first row power runs straight to that at no flow, which is
 * where the line through the first two rows gets to, kept from 0.3 to 1 of the first row's (half of it where there is one row); beyond
 * the last row as there
 * Range: flow 0 to the last row. A worn pump takes the power of the unworn one: what it lacks in head it spends in leakage.
 * Errors: none; rows are checked where they are read.
 * Source: pump power as in `shaftPower`; what is said of no flow, of wear and beyond the rows is common practice, no source.
 */
export class BrakePower {
  /** Head of the unworn pump at rated speed. */
  readonly curve: PumpCurve;
  readonly #rows: (readonly [number, number])[];
  readonly #weight: number;
  readonly #atNoFlow: number;
  readonly #atFirst: number;
  readonly #atLast: number;
  readonly #at = { head: 0, slope: 0 };

  /**
   * @param curve head of the unworn pump at rated speed [m]
   * @param rows flow [m3/s] against efficiency [1], flows rising
   * @param density density of the water [kg/m3]
   */
  constructor(curve: PumpCurve, rows: readonly (readonly [number, number])[], density: number) {
    this.curve = curve;
    this.#rows = rows.filter(([flow]) => flow > 0);
    this.#weight = waterPower(1, 1, density);
    const powers = this.#rows.map(
      ([flow, efficiency]) => waterPower(flow, Math.max(0, headAt(curve, flow)), density) / efficiency,
    );
    this.#atFirst = powers[0] ?? 0;
    this.#atLast = powers[powers.length - 1] ?? 0;
    this.#atNoFlow = ALONE_AT_SHUTOFF * this.#atFirst;
    if (powers.length > 1) {
      const [[first], [second]] = this.#rows;
      const slope = (powers[1] - powers[0]) / (second - first);
      const reached = powers[0] - slope * first;
      this.#atNoFlow = Math.min(powers[0], Math.max(LEAST_AT_SHUTOFF * powers[0], reached));
    }
  }

  /** Flows of the rows, m3/s, rising. */
  get rowFlows(): readonly number[] {
    return this.#rows.map(([flow]) => flow);
  }

  /** W at a flow (m3/s) at rated speed, with its slope by flow in `out`. */
  evaluate(flow: number, out: { power: number; slope: number }): void {
    const rows = this.#rows;
    const last = rows.length - 1;
    out.slope = 0;
    out.power = flow <= 0 ? this.#atNoFlow : this.#atLast;
    if (flow <= 0 || last < 0 || flow >= rows[last][0]) return;
    if (flow < rows[0][0]) {
      out.slope = (this.#atFirst - this.#atNoFlow) / rows[0][0];
      out.power = this.#atNoFlow + out.slope * flow;
      return;
    }
    let i = 0;
    while (flow > rows[i + 1][0]) i++;
    const [[q0, e0], [q1, e1]] = [rows[i], rows[i + 1]];
    const steep = (e1 - e0) / (q1 - q0);
    const efficiency = e0 + steep * (flow - q0);
    this.curve.evaluate(flow, this.#at);
    const { head, slope } = this.#at;
    out.power = (this.#weight * flow * head) / efficiency;
    out.slope = (this.#weight * (head + flow * slope) - out.power * steep) / efficiency;
  }

  /** W at a flow (m3/s) at a part of rated speed, by the affinity laws. */
  at(flow: number, speed: number): number {
    const out = { power: 0, slope: 0 };
    this.evaluate(flow / speed, out);
    return out.power * speed ** 3;
  }
}
