import type { Pump } from '../catalogue/schema/pump.js';
import type { PumpCurve } from '../physics/pump-curve/curve.js';
import type { HeldSpeed } from '../physics/pump-curve/held-speed.js';
import { heldSpeedOf } from './engine-power.js';
import type { Part } from './network-builder.js';
import { type PartStep, partOf } from './parts.js';
import { type FittedCurves, pumpCurveOf } from './pump.js';
import type { Site } from './site.js';

/** The parts and curves of one layout at one site, each made once however many stagings it stands in. */
export class PartStore {
  readonly site: Site;
  private readonly fitted: FittedCurves;
  private readonly parts = new Map<PartStep, { boreBefore: number | undefined; part: Part }>();
  private readonly curves: Map<Pump, { wear: number; curve: PumpCurve }[]>;
  private readonly heldSpeeds = new Map<Pump, HeldSpeed | undefined>();

  constructor(site: Site, fitted: FittedCurves, curves: PartStore['curves'] = new Map()) {
    this.site = site;
    this.fitted = fitted;
    this.curves = curves;
  }

  /** The same parts at another site; curves are the same everywhere. */
  at(site: Site): PartStore {
    return new PartStore(site, this.fitted, this.curves);
  }

  /** What the engine of a pump lets it hold here. */
  held(pump: Pump): HeldSpeed | undefined {
    if (!this.heldSpeeds.has(pump)) {
      this.heldSpeeds.set(pump, heldSpeedOf(pump, this.curve(pump, 0), this.site));
    }
    return this.heldSpeeds.get(pump);
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
