import { requireWithin } from '../range.js';
import type { HeadAtFlow, PumpCurve } from './curve.js';

/** A wear above this leaves no pump to speak of, and is more likely a slip. */
const GREATEST_WEAR = 0.9;

/**
 * A worn pump: at every flow its head has fallen by one and the same part.
 *
 * Formula: H = H_new (1 - w)
 * Range: w from 0 to 0.9. Real wear of rings and vanes takes more at large flows than at shutoff; trial readings tell.
 * Errors: RangeError where w is out of range.
 * Source: common practice, no source.
 */
export class WornCurve implements PumpCurve {
  readonly #unworn: PumpCurve;
  readonly #left: number;

  /** @param wear part of the head lost at every flow [1] */
  constructor(unworn: PumpCurve, wear: number) {
    requireWithin('wear', wear, 0, GREATEST_WEAR, '');
    this.#unworn = unworn;
    this.#left = 1 - wear;
  }

  evaluate(flow: number, out: HeadAtFlow): void {
    this.#unworn.evaluate(flow, out);
    out.head *= this.#left;
    out.slope *= this.#left;
  }

  get firstFlow(): number {
    return this.#unworn.firstFlow;
  }

  get lastFlow(): number {
    return this.#unworn.lastFlow;
  }

  get shutoffHead(): number {
    return this.#unworn.shutoffHead * this.#left;
  }

  isOffCurve(flow: number): boolean {
    return this.#unworn.isOffCurve(flow);
  }

  droops(): boolean {
    return this.#unworn.droops();
  }
}
