import type { LinkLaw, LossAtFlow, LossCurve, SpeedAtFlow, SpeedLimit } from '../network/network.js';
import type { HeadAtFlow, PumpCurve } from '../physics/pump-curve/curve.js';
import type { HeldSpeed } from '../physics/pump-curve/held-speed.js';

/**
 * A pump as a link: a loss of what it adds, no faster than its engine lets it. Curve and engine may be exchanged between
 * solves, so that one network serves for every age of the pump and every place that its engine breathes at.
 */
export class PumpLaw {
  private readonly loss: PumpLoss;
  private readonly limit?: EngineLimit;

  constructor(curve: PumpCurve, held: HeldSpeed | undefined) {
    this.loss = new PumpLoss(curve);
    this.limit = held && new EngineLimit(held);
  }

  /** The law with the governor at a part of the speed of the curve. */
  at(speed: number): LinkLaw {
    return { kind: 'curve', curve: this.loss, speed, limit: this.limit };
  }

  become(curve: PumpCurve, held: HeldSpeed | undefined): void {
    if ((held === undefined) !== (this.limit === undefined))
      throw new TypeError('a pump has an engine of known power or has not, wherever it stands');
    this.loss.curve = curve;
    if (this.limit && held) this.limit.held = held;
  }

  /** Holds the pump at a part of the speed of its curve, whatever its engine has power for; undefined lets it go. */
  pin(speed: number | undefined): void {
    if (this.limit) this.limit.pinned = speed;
  }

  /** The speed that it is pinned at. */
  get pinned(): number | undefined {
    return this.limit?.pinned;
  }
}

class PumpLoss implements LossCurve {
  curve: PumpCurve;
  private readonly at: HeadAtFlow = { head: 0, slope: 0 };

  constructor(curve: PumpCurve) {
    this.curve = curve;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    this.curve.evaluate(flow, this.at);
    out.loss = -this.at.head;
    out.slope = -this.at.slope;
  }
}

class EngineLimit implements SpeedLimit {
  held: HeldSpeed;
  pinned: number | undefined;

  constructor(held: HeldSpeed) {
    this.held = held;
  }

  evaluate(flow: number, set: number, out: SpeedAtFlow): void {
    if (this.pinned === undefined) {
      this.held.evaluate(flow, set, out);
      return;
    }
    out.speed = this.pinned;
    out.slope = 0;
  }
}
