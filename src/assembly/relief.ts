import type { EngineDocument } from '../layout/schema/engine.js';
import type { LossAtFlow, LossCurve } from '../network/network.js';
import { GALLON_PER_MINUTE } from '../physics/customary.js';

/** Part of its setting over which a valve is fully lifted, where the file does not say. Common practice, no source. */
const USUAL_OVERPRESSURE = 0.1;
/** What a valve of unknown size passes fully lifted, m3/s (100 gpm). Common practice, no source. */
const USUAL_FLOW = 100 * GALLON_PER_MINUTE;
/** Part of the ideal flow that the seat of an open valve passes: a sharp edge's. Common practice, no source. */
const SEAT_COEFFICIENT = 0.62;

/** How far over its setting a relief valve is fully lifted, and what it passes then, m3/s. */
export function reliefLift(
  relief: NonNullable<EngineDocument['relief']>,
  waterDensity: number,
): { overpressure: number; fullFlow: number } {
  const { opens_at, overpressure = USUAL_OVERPRESSURE, bore, flow } = relief;
  const byBore =
    bore === undefined
      ? USUAL_FLOW
      : SEAT_COEFFICIENT *
        ((Math.PI * bore * bore) / 4) *
        Math.sqrt((2 * opens_at * (1 + overpressure)) / waterDensity);
  return { overpressure, fullFlow: flow ?? byBore };
}

/**
 * A relief valve that starts to open at a head over its outlet and lifts in proportion until it is fully open; from there on
 * it is an orifice, whose head goes with the square of its flow.
 */
export class ReliefLoss implements LossCurve {
  private readonly opensAt: number;
  private readonly fullHead: number;
  private readonly fullFlow: number;

  /**
   * @param opensAt head at which it starts to open, m
   * @param fullHead head at which it is fully open, m
   * @param fullFlow what it passes then, m3/s
   */
  constructor(opensAt: number, fullHead: number, fullFlow: number) {
    this.opensAt = opensAt;
    this.fullHead = fullHead;
    this.fullFlow = fullFlow;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    const { opensAt, fullHead, fullFlow } = this;
    if (flow <= fullFlow) {
      out.slope = (fullHead - opensAt) / fullFlow;
      out.loss = opensAt + out.slope * flow;
      return;
    }
    const part = flow / fullFlow;
    out.loss = fullHead * part * part;
    out.slope = (2 * fullHead * part) / fullFlow;
  }
}
