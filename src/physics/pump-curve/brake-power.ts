import { waterPower } from '../pump-power.js';
import { headAt, type PumpCurve } from './curve.js';

/** Least and most of the first row's power that is taken at no flow. Common practice, no source. */
const LEAST_AT_SHUTOFF = 0.3;
const ALONE_AT_SHUTOFF = 0.5;

/**
 * Power that a pump takes at its shaft at rated speed, against its flow, from rows of efficiency.
 *
 * Formula: P = rho g Q H / efficiency at each row, straight between rows; below the first row straight on, and at no flow from 0.3 to 1
 * of the first row's (half of it where there is one row); beyond the last row as there
 * Range: flow 0 to the last row. A worn pump takes the power of the unworn one: what it lacks in head it spends in leakage.
 * Errors: none; rows are checked where they are read.
 * Source: pump power as in `shaftPower`; what is said of no flow, of wear and beyond the rows is common practice, no source.
 */
export class BrakePower {
  readonly #flows: number[];
  readonly #powers: number[];

  /**
   * @param curve head of the unworn pump at rated speed [m]
   * @param rows flow [m3/s] against efficiency [1], flows rising
   * @param density density of the water [kg/m3]
   */
  constructor(curve: PumpCurve, rows: readonly (readonly [number, number])[], density: number) {
    const known = rows.filter(([flow]) => flow > 0);
    this.#flows = known.map(([flow]) => flow);
    this.#powers = known.map(
      ([flow, efficiency]) => waterPower(flow, Math.max(0, headAt(curve, flow)), density) / efficiency,
    );
    if (known.length === 0) return;
    const [first] = this.#powers;
    let atNoFlow = ALONE_AT_SHUTOFF * first;
    if (known.length > 1) {
      const slope = (this.#powers[1] - first) / (this.#flows[1] - this.#flows[0]);
      atNoFlow = Math.min(first, Math.max(LEAST_AT_SHUTOFF * first, first - slope * this.#flows[0]));
    }
    this.#flows.unshift(0);
    this.#powers.unshift(atNoFlow);
  }

  /** W at a flow (m3/s) at rated speed, with its slope by flow in `out`. */
  evaluate(flow: number, out: { power: number; slope: number }): void {
    const last = this.#flows.length - 1;
    if (flow <= 0 || flow >= this.#flows[last]) {
      out.power = this.#powers[flow <= 0 ? 0 : last];
      out.slope = 0;
      return;
    }
    let i = 0;
    while (flow > this.#flows[i + 1]) i++;
    out.slope = (this.#powers[i + 1] - this.#powers[i]) / (this.#flows[i + 1] - this.#flows[i]);
    out.power = this.#powers[i] + out.slope * (flow - this.#flows[i]);
  }

  /** W at a flow (m3/s) at a part of rated speed, by the affinity laws. */
  at(flow: number, speed: number): number {
    const out = { power: 0, slope: 0 };
    this.evaluate(flow / speed, out);
    return out.power * speed ** 3;
  }
}
