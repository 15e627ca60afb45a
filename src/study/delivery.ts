import type { AssembledPump, Assembly, NamedPlace, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import { closeIn } from './falling-root.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Flows are found to this, m3/s (0.0016 gpm), or once what they give lies this near, Pa (0.0015 psi) or part of a curve. */
const FLOW_FOUND = 1e-7;
const PRESSURE_FOUND = 10;
const CURVE_FOUND = 1e-5;

/** A flow that is too small to bracket a pressure is taken this much larger. */
const WIDER = 1.15;

/**
 * What the engine delivers at one of its ends, with the others shut: the pressure there against the flow drawn.
 * Pressures are what a gauge at the end reads, or net of the intake where that is asked.
 */
export class Delivery {
  readonly end: NamedPlace;
  readonly staging: StagingName;
  readonly assembly: Assembly;
  private readonly fromTank: boolean;
  private readonly solved: SolvedAssembly;
  /** Bore that the gauge at the end stands in, m. */
  private readonly bore: number | undefined;

  constructor(assembly: Assembly, end: NamedPlace, gaugeBore?: number, fromTank = false) {
    this.fromTank = fromTank;
    this.assembly = assembly;
    this.end = end;
    this.staging = assembly.staging;
    this.solved = new SolvedAssembly(assembly);
    this.bore = gaugeBore ?? end.place.bore;
  }

  /**
   * Judges with the water so far below the pumps (m) as a rating point asks, where the layout draws from its tank; undefined
   * puts it back. A layout that drafts is judged at its own lift, with the losses of its own suction.
   */
  drawFrom(lift: number | undefined): void {
    const { source, network } = this.assembly;
    if (!this.fromTank) return;
    this.solved.setHead(
      source.node,
      lift === undefined ? (network.nodes[source.node].head as number) : -lift,
    );
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
    const { pumps } = this.assembly;
    // How much of its curve the pump nearest the end of it has left; it falls almost straight with what is drawn.
    const left = (flow: number) => {
      const point = this.at(flow);
      const parts = pumps.map(
        (pump) => 1 - point.flow(pump.link) / (pump.curve.lastFlow * point.speedOf(pump)),
      );
      const value = Math.min(...parts);
      return { value, pump: pumps[parts.indexOf(value)] };
    };
    const ends = pumps.map((pump) => pump.curve.lastFlow * pump.speed);
    let high = this.staging === 'parallel' ? ends.reduce((sum, end) => sum + end) : Math.max(...ends);
    let atHigh = left(high);
    while (atHigh.value >= 0) {
      high *= WIDER;
      atHigh = left(high);
    }
    const atLow = left(0);
    if (atLow.value < 0) return { flow: 0, pump: atLow.pump };
    const end = closeIn(
      left,
      { low: 0, atLow, high, atHigh },
      FLOW_FOUND,
      ({ value }) => value < CURVE_FOUND,
    );
    return { flow: end.low, pump: end.atHigh.pump };
  }

  /**
   * The flow, m3/s, at which the end still has a pressure, and the state there; undefined where even with nothing drawn it
   * has less. A flow that it finds past the end of a curve is no answer, and for the caller to refuse.
   */
  flowAt(pressure: number, guess: number, net = false): { flow: number; state: OperatingPoint } | undefined {
    const over = (flow: number) => {
      const state = this.at(flow);
      return { value: this.pressure(state, flow, net) - pressure, state };
    };
    const atLow = over(0);
    if (atLow.value < 0) return undefined;
    let low = { flow: 0, at: atLow };
    let high = { flow: guess, at: over(guess) };
    while (high.at.value >= 0) {
      if (this.offCurve(high.at.state)) return { flow: high.flow, state: high.at.state };
      low = high;
      high = { flow: high.flow * WIDER, at: over(high.flow * WIDER) };
    }
    // Pressure falls nearly straight with the square of the flow, so that a few steps find it there.
    const end = closeIn(
      (square) => over(Math.sqrt(square)),
      { low: low.flow ** 2, atLow: low.at, high: high.flow ** 2, atHigh: high.at },
      2 * high.flow * FLOW_FOUND,
      ({ value }) => value < PRESSURE_FOUND,
    );
    return { flow: Math.sqrt(end.low), state: end.atLow.state };
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
  const fromTank = rig.layout.supply.kind === 'tank';
  return assembly.ends.map((end) => new Delivery(assembly, end, orifice?.teeBore, fromTank));
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
