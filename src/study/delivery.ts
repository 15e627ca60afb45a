import type { AssembledPump, Assembly, NamedPlace, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Flows are found to this, m3/s (0.0016 gpm). */
const FLOW_FOUND = 1e-7;

/**
 * What the engine delivers at one of its ends, with the others shut: the pressure there against the flow drawn.
 * Pressures are what a gauge at the end reads, or net of the intake where that is asked.
 */
export class Delivery {
  readonly end: NamedPlace;
  readonly staging: StagingName;
  readonly assembly: Assembly;
  private readonly solved: SolvedAssembly;
  /** Bore that the gauge at the end stands in, m. */
  private readonly bore: number | undefined;

  constructor(assembly: Assembly, end: NamedPlace, gaugeBore?: number) {
    this.assembly = assembly;
    this.end = end;
    this.staging = assembly.staging;
    this.solved = new SolvedAssembly(assembly);
    this.bore = gaugeBore ?? end.place.bore;
  }

  /** Solves with a flow drawn at the end, m3/s. */
  at(flow: number): OperatingPoint {
    this.solved.setDemand(this.end.place.node, flow);
    return this.solved.solve();
  }

  /** Gauge pressure at the end, Pa; net of the intake if asked. */
  pressure(point: OperatingPoint, flow: number, net: boolean): number {
    const { place } = this.end;
    const velocity = this.bore === undefined ? 0 : velocityHead(flow / place.lines, this.bore);
    const gauge = point.totalPressure(place) - pressureOfHeight(velocity, this.assembly.site.waterDensity);
    return net ? gauge - intakePressure(point) : gauge;
  }

  pressureAt(flow: number, net = false): number {
    return this.pressure(this.at(flow), flow, net);
  }

  /** A pump that runs past the last point of its curve at a flow, if one does. */
  offCurve(point: OperatingPoint): AssembledPump | undefined {
    return this.assembly.pumps.find((pump) => point.isOffCurve(pump));
  }

  /** The largest flow, m3/s, at which no pump runs past the last point of its curve, and the pump that it ends with. */
  endOfCurves(): { flow: number; pump: AssembledPump } {
    let high = this.assembly.pumps.reduce((sum, pump) => sum + pump.curve.lastFlow * pump.speed, 0) * 1.05;
    let pump = this.offCurve(this.at(high));
    while (pump === undefined) {
      high *= 2;
      pump = this.offCurve(this.at(high));
    }
    let low = 0;
    while (high - low > FLOW_FOUND) {
      const middle = (low + high) / 2;
      const off = this.offCurve(this.at(middle));
      if (off === undefined) low = middle;
      else {
        high = middle;
        pump = off;
      }
    }
    return { flow: low, pump };
  }

  /** The flow at which the end still has a pressure, m3/s, up to `most`; undefined where even no flow leaves less. */
  flowAt(pressure: number, most: number, net = false): number | undefined {
    let low = 0;
    let atLow = this.pressureAt(low, net) - pressure;
    if (atLow < 0) return undefined;
    let high = most;
    let atHigh = this.pressureAt(high, net) - pressure;
    if (atHigh >= 0) return most;
    // Regula falsi, halving where it stalls: pressure falls steadily with flow.
    for (let tries = 0; high - low > FLOW_FOUND && tries < 100; tries++) {
      const guess = low + (atLow * (high - low)) / (atLow - atHigh);
      const margin = 0.01 * (high - low);
      const flow =
        tries % 3 === 2 ? (low + high) / 2 : Math.min(Math.max(guess, low + margin), high - margin);
      const at = this.pressureAt(flow, net) - pressure;
      if (at >= 0) {
        low = flow;
        atLow = at;
      } else {
        high = flow;
        atHigh = at;
      }
    }
    return low;
  }
}

/**
 * Total gauge pressure where the engine's first pump takes its water, Pa: the highest of them where both draw from the
 * intake, so that no net pressure is flattered.
 */
export function intakePressure(point: OperatingPoint): number {
  const own = point.assembly.pumps.filter((pump) => !pump.booster);
  const drawing = point.assembly.staging.startsWith('series') ? own.slice(0, 1) : own;
  return Math.max(...drawing.map((pump) => point.totalPressure(pump.inlet)));
}

/** The ends of a rig in a staging, each with what it delivers. */
export function deliveries(rig: Rig, staging: StagingName): Delivery[] {
  const orifice = closingOrifice(rig);
  const assembly = rig.assemble({ staging, lay: orifice ? 'to_end' : 'none' });
  return assembly.ends.map((end) => new Delivery(assembly, end, orifice?.teeBore));
}

/** The sharp orifice that the layout's only lay ends in, where it is a line without branches: the agency's test. */
export function closingOrifice(rig: Rig): { bore: number; teeBore?: number } | undefined {
  const { lay } = rig.layout;
  if (lay.length !== 1) return undefined;
  const { steps } = lay[0];
  if (steps.some((step) => step.kind === 'branch' || step.kind === 'tank')) return undefined;
  const last = steps.findLast((step) => step.kind === 'nozzle');
  if (last?.kind !== 'nozzle' || last.nozzle.kind !== 'sharp_orifice' || last.state !== 'open')
    return undefined;
  return { bore: last.nozzle.bore, teeBore: last.nozzle.tee_bore };
}
