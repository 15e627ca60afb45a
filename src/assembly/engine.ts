import type { Layout } from '../layout/layout.js';
import type { Step } from '../layout/step.js';
import { heightOfPressure } from '../physics/elevation.js';
import { jetResistance } from '../physics/nozzle/orifice.js';
import { SHARP_ORIFICE_COEFFICIENT } from '../physics/nozzle/sharp-orifice.js';
import type { NamedPlace, StagingName } from './assembly.js';
import { quadratic } from './laws.js';
import { type LineContext, layLine, layPump } from './line.js';
import type { Element, Place } from './network-builder.js';
import { ReliefLoss, reliefLift } from './relief.js';
import { standingPump } from './standing-pump.js';
import type { LaidSupply } from './supply.js';

export type PumpId = 'a' | 'b';

/** Where the engine's plumbing ends, and where its suctions part. */
export interface LaidEngine {
  intake: Place;
  outlets: NamedPlace[];
}

/** A pump that stands still with its valves open, and its check valve, which works or does not. */
export interface StoppedPump {
  pump: PumpId;
  check: 'works' | 'stuck_open';
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
  stopped?: StoppedPump,
): LaidEngine {
  const { plumbing } = layout.engine;
  const intake = through(plumbing.intake, supply.start, 'intake', context);
  const outlets: NamedPlace[] = [];
  const lay = new EnginePlumbing(layout, throttle, supply.tank, context, stopped);
  if (staging === 'separate') {
    for (const id of ['a', 'b'] as const) {
      const start = lay.discharge(id, lay.pump(id, lay.suction(id, intake)));
      outlets.push(...lay.outlets(start, id));
    }
    return { intake, outlets };
  }
  const manifold = lay.staged(staging, intake);
  lay.relief('manifold', 'relief valve', manifold);
  lay.cool('manifold', 'cooling line of both pumps', manifold);
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
  private readonly tank: Place;
  private readonly context: LineContext;
  private readonly stopped?: StoppedPump;

  constructor(layout: Layout, throttle: Throttle, tank: Place, context: LineContext, stopped?: StoppedPump) {
    this.stopped = stopped;
    this.layout = layout;
    this.throttle = throttle;
    this.tank = tank;
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
    const discharge =
      id === this.stopped?.pump
        ? this.context.builder.add(standingPump(laid, this.context), `pump ${id}`, inlet)
        : layPump(laid, inlet, `pump ${id}`, this.context);
    const cooling = this.cool('pump', `cooling line ${id}`, discharge);
    const running = this.context.laid.pumps.find(({ name }) => name === laid.name);
    const relief = this.relief('pump', `relief valve ${id}`, discharge);
    if (running) Object.assign(running, { cooling, relief });
    return discharge;
  }

  /** A line back to the tank, where the layout has one there and its valve is open. */
  cool(at: 'pump' | 'discharge' | 'manifold', name: string, from: Place): number | undefined {
    const { cooling } = this.layout.engine.plumbing;
    if (cooling === undefined || cooling.at !== at || cooling.state === 'shut') return undefined;
    const law = quadratic(
      jetResistance(cooling.orifice, cooling.discharge_coefficient ?? SHARP_ORIFICE_COEFFICIENT),
    );
    const link = this.context.builder.link(name, from, this.tank, law, true);
    if (at !== 'pump') this.context.laid.coolers.push({ name, link });
    return link;
  }

  discharge(id: PumpId, from: Place, to?: Place): Place {
    const { builder, laid } = this.context;
    const before = builder.elements.length;
    const group = `discharge ${id}`;
    const end = through(this.layout.engine.plumbing.discharge[id], from, group, this.context, to);
    const own = builder.elements.slice(before).filter((element: Element) => element.group === group);
    const checks = own.filter((element) => element.oneWay);
    const pump = laid.pumps.find(({ name }) => name === `pump ${id}`);
    if (pump) [pump.checkValve] = checks;
    if (id === this.stopped?.pump && this.stopped.check === 'stuck_open') {
      for (const check of checks) {
        check.oneWay = false;
        builder.links[check.link] = { ...builder.links[check.link], oneWay: false };
      }
    }
    this.cool('discharge', `cooling line ${id}`, end);
    return end;
  }

  /** A relief valve back to the tank, where the layout has one there; with outlets apart there is no manifold for one. */
  relief(at: 'pump' | 'manifold', name: string, from: Place): number | undefined {
    const { relief } = this.layout.engine;
    if (relief === undefined || relief.at !== at) return undefined;
    const opensAt = heightOfPressure(relief.opens_at, this.context.site.waterDensity);
    const { overpressure, fullFlow } = reliefLift(relief, this.context.site.waterDensity);
    // The gauge that the setting is read on stands where the valve does, which discharges at the surface of the tank.
    const height = from.elevation - this.tank.elevation;
    const curve = new ReliefLoss(opensAt + height, opensAt * (1 + overpressure) + height, fullFlow);
    const link = this.context.builder.link(name, from, this.tank, { kind: 'curve', curve }, true);
    this.context.laid.reliefs.push({ name, link });
    return link;
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
