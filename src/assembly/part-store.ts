import type { Pump } from '../catalogue/schema/pump.js';
import type { PumpCurve } from '../physics/pump-curve/curve.js';
import type { Part } from './network-builder.js';
import { type PartStep, partOf } from './parts.js';
import { type FittedCurves, pumpCurveOf } from './pump.js';
import type { Site } from './site.js';

/** The parts and curves of one layout at one site, each made once however many stagings it stands in. */
export class PartStore {
  readonly site: Site;
  private readonly fitted: FittedCurves;
  private readonly parts = new Map<PartStep, { boreBefore: number | undefined; part: Part }>();
  private readonly curves = new Map<Pump, { wear: number; curve: PumpCurve }[]>();

  constructor(site: Site, fitted: FittedCurves) {
    this.site = site;
    this.fitted = fitted;
  }

  part(step: PartStep, boreBefore: number | undefined): Part {
    const made = this.parts.get(step);
    if (made !== undefined && made.boreBefore === boreBefore) return made.part;
    const part = partOf(step, boreBefore, this.site);
    this.parts.set(step, { boreBefore, part });
    return part;
  }

  curve(pump: Pump, wear: number): PumpCurve {
    const made = this.curves.get(pump) ?? [];
    const known = made.find((one) => one.wear === wear);
    if (known) return known.curve;
    const curve = pumpCurveOf(pump, wear, this.fitted);
    this.curves.set(pump, [...made, { wear, curve }]);
    return curve;
  }
}
