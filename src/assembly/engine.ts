import { SHARP_ORIFICE_COEFFICIENT } from '../catalogue/schema/nozzle.js';
import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import type { LossAtFlow, LossCurve } from '../network/network.js';
import { GALLON_PER_MINUTE } from '../physics/customary.js';
import { heightOfPressure } from '../physics/elevation.js';
import { jetResistance } from '../physics/nozzle/orifice.js';
import type { AssembledPump, NamedPlace, StagingName } from './assembly.js';
import { quadratic } from './laws.js';
import { type LineContext, layLine, layPump } from './line.js';
import type { Element, Place } from './network-builder.js';
import type { LaidSupply } from './supply.js';

export type PumpId = 'a' | 'b';

/** Where the engine's plumbing ends, and where its suctions part. */
export interface LaidEngine {
  intake: Place;
  outlets: NamedPlace[];
}

/** Speeds of the engine's pumps, as fractions of the speed of their curves. */
export type Throttle = Record<PumpId, number>;

/**
 * Lays the engine's own plumbing in a staging, from the water that it draws to its outlets. A pump that the staging does
 * not use is left out, as its valves are shut.
 *
 * In series water goes from the first pump by `transfer` to the second, in place of the first one's `discharge` and the
 * second one's `suction`.
 */
export function layEngine(
  layout: Layout,
  staging: StagingName,
  throttle: Throttle,
  supply: LaidSupply,
  context: LineContext,
): LaidEngine {
  const { plumbing } = layout.engine;
  const intake = through(plumbing.intake, supply.start, 'intake', context);
  const outlets: NamedPlace[] = [];
  const lay = new EnginePlumbing(layout, throttle, supply.source, context);
  if (staging === 'separate') {
    for (const id of ['a', 'b'] as const) {
      const start = lay.discharge(id, lay.pump(id, lay.suction(id, intake)));
      outlets.push(...lay.outlets(start, id));
    }
    return { intake, outlets };
  }
  const manifold = lay.staged(staging, intake);
  lay.relief(manifold);
  outlets.push(...lay.outlets(through(plumbing.manifold, manifold, 'manifold', context)));
  return { intake, outlets };
}

/** Lays steps that lead on; plumbing that ends is refused when the layout is read. */
function through(
  steps: readonly Step[],
  from: Place,
  group: string,
  context: LineContext,
  to?: Place,
): Place {
  const end = layLine(steps, from, group, context, to);
  if (end === undefined) throw new TypeError(`${group} ends before it leads anywhere`);
  return end;
}

class EnginePlumbing {
  private readonly layout: Layout;
  private readonly throttle: Throttle;
  private readonly source: Place;
  private readonly context: LineContext;

  constructor(layout: Layout, throttle: Throttle, source: Place, context: LineContext) {
    this.layout = layout;
    this.throttle = throttle;
    this.source = source;
    this.context = context;
  }

  /** From the intake to where the discharges meet, as one of the stagings with a common outlet has it. */
  staged(staging: Exclude<StagingName, 'separate'>, intake: Place): Place {
    const { plumbing } = this.layout.engine;
    switch (staging) {
      case 'a':
      case 'b':
        return this.discharge(staging, this.pump(staging, this.suction(staging, intake)));
      case 'parallel': {
        const first = this.discharge('a', this.pump('a', this.suction('a', intake)));
        // Two bores meet here, so that none tells the velocity at the joint.
        const manifold: Place = { node: first.node, elevation: first.elevation, lines: 1 };
        this.discharge('b', this.pump('b', this.suction('b', intake)), manifold);
        return manifold;
      }
      default: {
        const [first, second]: PumpId[] = staging === 'series' ? ['a', 'b'] : ['b', 'a'];
        const between = this.pump(first, this.suction(first, intake));
        const fed = through(plumbing.transfer, between, 'transfer', this.context);
        return this.discharge(second, this.pump(second, fed));
      }
    }
  }

  suction(id: PumpId, intake: Place): Place {
    return through(this.layout.engine.plumbing.suction[id], intake, `suction ${id}`, this.context);
  }

  /** Lays a pump, with its cooling line between it and its own check valve. */
  pump(id: PumpId, inlet: Place): Place {
    const own = this.layout.engine.pumps[id];
    if (own === undefined) throw new TypeError(`the engine has no pump ${id}`);
    const { model: pump, modelName, wear, path } = own;
    const laid = {
      name: `pump ${id}`,
      pump,
      modelName,
      throttle: this.throttle[id],
      wear,
      path,
      ownEngine: true,
    };
    const discharge = layPump(laid, inlet, `pump ${id}`, this.context);
    const { cooling } = this.layout.engine.plumbing;
    if (cooling) {
      const law = quadratic(
        jetResistance(cooling.orifice, cooling.discharge_coefficient ?? SHARP_ORIFICE_COEFFICIENT),
      );
      this.context.builder.link(`cooling line ${id}`, discharge, this.source, law, true);
    }
    return discharge;
  }

  discharge(id: PumpId, from: Place, to?: Place): Place {
    const { builder, laid } = this.context;
    const before = builder.elements.length;
    const end = through(this.layout.engine.plumbing.discharge[id], from, `discharge ${id}`, this.context, to);
    const check = builder.elements.slice(before).find((element: Element) => element.oneWay);
    const pump = laid.pumps.at(-1) as AssembledPump;
    pump.checkValve = check;
    return end;
  }

  /** A relief valve back to the tank, where the discharges meet. */
  relief(manifold: Place): void {
    const { relief } = this.layout.engine;
    if (relief === undefined) return;
    const opensAt = heightOfPressure(relief.opens_at, this.context.site.waterDensity);
    // The gauge that the setting is read on stands at the manifold, the valve discharges at the surface of the tank.
    const curve = new ReliefLoss(opensAt + manifold.elevation - this.source.elevation);
    this.context.builder.link('relief valve', manifold, this.source, { kind: 'curve', curve }, true);
  }

  /** Plumbing beyond the manifold, by name; of one pump where each has its own. */
  outlets(from: Place, pump?: PumpId): NamedPlace[] {
    const named = this.layout.engine.outlets.filter((outlet) => pump === undefined || outlet.pump === pump);
    if (named.length === 0) return [{ name: pump === undefined ? 'outlet' : `outlet ${pump}`, place: from }];
    return named.map((outlet) => ({
      name: outlet.name,
      place: through(outlet.steps, from, `outlet ${outlet.name}`, this.context),
    }));
  }
}

/**
 * A relief valve that starts to open at a head over its outlet and, as it lifts, passes more: RELIEF_FULL_FLOW at a tenth
 * over its setting. The rise of a tenth is common practice, no source; a valve of its own size and spring differs.
 */
class ReliefLoss implements LossCurve {
  private readonly opensAt: number;

  constructor(opensAt: number) {
    this.opensAt = opensAt;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    const slope = (0.1 * this.opensAt) / RELIEF_FULL_FLOW;
    out.loss = this.opensAt + slope * flow;
    out.slope = slope;
  }
}

/** Flow that a relief valve passes at a tenth over its setting, m3/s (100 gpm); common practice, no source. */
const RELIEF_FULL_FLOW = 100 * GALLON_PER_MINUTE;
