import type { LossAtFlow, LossCurve } from '../../src/network/network.js';

/**
 * Head rise = shutoff - coefficient q^exponent, m and m3/s: the form that EPANET fits through three points.
 * Reversed flow meets more head than shutoff, so that the curve stays monotone.
 */
export class PowerPumpCurve implements LossCurve {
  constructor(
    readonly shutoff: number,
    readonly coefficient: number,
    readonly exponent: number,
  ) {}

  evaluate(flow: number, out: LossAtFlow): void {
    const size = Math.abs(flow);
    const steep = this.coefficient * (this.exponent === 2 ? size : size ** (this.exponent - 1));
    out.loss = steep * flow - this.shutoff;
    out.slope = this.exponent * steep;
  }

  /** Three flows fix the curve in EPANET, whose fit through them is this very form. */
  sampleFlows(): number[] {
    const runOut = (this.shutoff / this.coefficient) ** (1 / this.exponent);
    return [0, runOut / 2, runOut];
  }
}

/** Head rise = shutoff - linear q - cubic q^3, m and m3/s: no power curve, so EPANET gets a dense table of it. */
export class CubicPumpCurve implements LossCurve {
  constructor(
    readonly shutoff: number,
    readonly linear: number,
    readonly cubic: number,
  ) {}

  evaluate(flow: number, out: LossAtFlow): void {
    out.loss = this.linear * flow + this.cubic * flow ** 3 - this.shutoff;
    out.slope = this.linear + 3 * this.cubic * flow ** 2;
  }

  sampleFlows(): number[] {
    // Well past runout, since a hydrant or another pump can push water through faster than that.
    const points = 4000;
    const last = 2.5 * Math.cbrt(this.shutoff / this.cubic);
    return Array.from({ length: points + 1 }, (_, index) => (last * index) / points);
  }
}

/** Head rise by straight lines between points, the last line going on: what EPANET makes of four or more points. */
export class TablePumpCurve implements LossCurve {
  constructor(readonly points: readonly (readonly [flow: number, rise: number])[]) {}

  evaluate(flow: number, out: LossAtFlow): void {
    let segment = 1;
    while (segment < this.points.length - 1 && flow > this.points[segment][0]) segment += 1;
    const [flow0, rise0] = this.points[segment - 1];
    const [flow1, rise1] = this.points[segment];
    out.slope = (rise0 - rise1) / (flow1 - flow0);
    out.loss = out.slope * (flow - flow0) - rise0;
  }

  sampleFlows(): number[] {
    return this.points.map(([flow]) => flow);
  }
}

export type TestPumpCurve = PowerPumpCurve | CubicPumpCurve | TablePumpCurve;
