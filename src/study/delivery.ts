import type { HungOutlet } from '../assembly/assemble.js';
import type { AssembledPump, Assembly, NamedPlace, StagingName } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { whyImpossible } from '../limits/impossible.js';
import type { LinkLaw } from '../network/network.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { velocityHead } from '../physics/velocity.js';
import { samePlumbing } from './conditions.js';
import { closeIn, closeInBySquares } from './falling-root.js';
import { type Rig, SolvedAssembly } from './rig.js';

/** Flows are found to this, m3/s (0.0016 gpm), or once what they give lies this near, Pa (0.0015 psi) or part of a curve. */
const FLOW_FOUND = 1e-7;
const PRESSURE_FOUND = 10;
const CURVE_FOUND = 1e-5;
/** What can be drawn at all is found to this part of what was looked for. */
const POSSIBLE_FOUND = 1e-4;

/** A flow that is too small to bracket a pressure is taken this much larger at most. */
const WIDER = 1.15;
const A_HAIR_PAST = 1.0005;

/** What was found once with the water at one height, for whoever asks again. */
interface Found {
  rest?: OperatingPoint;
  end?: EndOfCurves;
}

/** The largest flow, m3/s, at which no pump runs past the last point of its curve, and the pump that it ends with. */
export interface EndOfCurves {
  flow: number;
  pump: AssembledPump;
}

/** How an outlet is hung on an end, with the networks in which one hangs already, whatever drives the pumps in them. */
interface Hanging {
  assemble: (staging: StagingName, hung: HungOutlet) => Assembly;
  made: { law: LinkLaw; solved: SolvedAssembly }[];
  /** An assembly with the pumps as the asking rig has them; the rig that laid it needs none. */
  turned?: (assembly: Assembly) => Assembly;
}

const sameLaw = (one: LinkLaw, other: LinkLaw): boolean =>
  one.kind === 'resistance' &&
  other.kind === 'resistance' &&
  one.resistance === other.resistance &&
  one.linearBelow === other.linearBelow;

/** A state with the flow that is drawn in it, m3/s. */
export interface Drawn {
  flow: number;
  state: OperatingPoint;
}

/**
 * What the engine delivers at one of its ends, with the others shut: the pressure there against the flow drawn.
 * Pressures are what a gauge at the end reads, or net of the intake where that is asked.
 */
export class Delivery {
  readonly end: NamedPlace;
  readonly staging: StagingName;
  readonly assembly: Assembly;
  private readonly fromTank: boolean;
  private readonly hanging: Hanging | undefined;
  private readonly solved: SolvedAssembly;
  /** Bore that the gauge at the end stands in, m. */
  private readonly bore: number | undefined;
  private lift: number | undefined;
  private latest: (Drawn & { lift: number | undefined }) | undefined;
  private readonly found = new Map<number | undefined, Found>();

  constructor(
    solved: SolvedAssembly,
    end: NamedPlace,
    gaugeBore?: number,
    fromTank = false,
    hanging?: Hanging,
  ) {
    this.hanging = hanging;
    this.fromTank = fromTank;
    this.assembly = solved.assembly;
    this.end = end;
    this.staging = this.assembly.staging;
    this.solved = solved;
    this.bore = gaugeBore ?? end.place.bore;
  }

  /** The same end of the same network, with the pumps as another rig of the same plumbing has them. */
  as(assembly: Assembly, turned: Hanging['turned']): Delivery {
    const { solved, end, bore, fromTank, hanging } = this;
    return new Delivery(solved.as(assembly), end, bore, fromTank, hanging && { ...hanging, turned });
  }

  /**
   * Judges with the water so far below the pumps (m) as a rating point asks, where the layout draws from its tank; undefined
   * puts it back. A layout that drafts is judged at its own lift, with the losses of its own suction.
   */
  drawFrom(lift: number | undefined): void {
    const { source, network } = this.assembly;
    if (!this.fromTank || lift === this.lift) return;
    this.lift = lift;
    this.solved.setHead(
      source.node,
      lift === undefined ? (network.nodes[source.node].head as number) : -lift,
    );
  }

  /** Asks something with the water so far below the pumps (m), and puts it back. */
  drawing<T>(lift: number | undefined, ask: () => T): T {
    this.drawFrom(lift);
    try {
      return ask();
    } finally {
      this.drawFrom(undefined);
    }
  }

  /** What flows through an outlet of a law that hangs on the end, m3/s, and the state. */
  through(law: LinkLaw): Drawn {
    const hung = this.hung(law);
    const state = hung.solve();
    return { flow: state.flow(hung.assembly.hung as number), state };
  }

  /** The network with an outlet of a law on the end: a part of it, and not a flow that is drawn. */
  private hung(law: LinkLaw): SolvedAssembly {
    const { hanging, end, staging } = this;
    if (hanging === undefined) throw new TypeError('nothing can be hung on an end that no rig laid');
    const known = hanging.made.find((one) => sameLaw(one.law, law));
    if (known) {
      const { turned } = hanging;
      return turned ? known.solved.as(turned(known.solved.assembly)) : known.solved;
    }
    const solved = new SolvedAssembly(hanging.assemble(staging, { end: end.name, law }));
    hanging.made.push({ law, solved });
    return hanging.turned ? solved.as(hanging.turned(solved.assembly)) : solved;
  }

  /** Solves with a flow drawn at the end, m3/s. */
  at(flow: number): OperatingPoint {
    return this.drawn(flow).state;
  }

  drawn(flow: number): Drawn {
    this.solved.setDemand(this.end.place.node, flow);
    this.latest = undefined;
    this.latest = { lift: this.lift, flow, state: this.solved.solve() };
    return this.latest;
  }

  /** The state solved last with the water where it is, if there is one. */
  get last(): Drawn | undefined {
    return this.latest?.lift === this.lift ? this.latest : undefined;
  }

  /** With nothing drawn at the end. */
  atRest(): OperatingPoint {
    const found = this.foundHere();
    found.rest ??= this.at(0);
    return found.rest;
  }

  private foundHere(): Found {
    let found = this.found.get(this.lift);
    if (found === undefined) {
      found = {};
      this.found.set(this.lift, found);
    }
    return found;
  }

  /** Gauge pressure at the end, Pa; net of the intake if asked. */
  pressure(point: OperatingPoint, flow: number, net: boolean): number {
    const { place } = this.end;
    const velocity = this.bore === undefined ? 0 : velocityHead(flow / place.lines, this.bore);
    const gauge = point.totalPressure(place) - pressureOfHeight(velocity, this.assembly.site.waterDensity);
    return net ? gauge - intakePressure(point) : gauge;
  }

  /** A pump that runs past the last point of its curve at a flow, if one does. */
  offCurve(point: OperatingPoint): AssembledPump | undefined {
    return this.assembly.pumps.find((pump) => point.isOffCurve(pump));
  }

  endOfCurves(): EndOfCurves {
    const found = this.foundHere();
    found.end ??= this.findEndOfCurves();
    return found.end;
  }

  private findEndOfCurves(): EndOfCurves {
    const { pumps } = this.assembly;
    // How much of its curve the pump nearest the end of it has left; it falls almost straight with what is drawn.
    const left = (point: OperatingPoint) => {
      const parts = pumps.map(
        (pump) => 1 - point.flow(pump.link) / (pump.curve.lastFlow * point.speedOf(pump)),
      );
      const value = Math.min(...parts);
      return { value, pump: pumps[parts.indexOf(value)] };
    };
    const at = (flow: number) => left(this.at(flow));
    const atLow = left(this.atRest());
    if (atLow.value < 0) return { flow: 0, pump: atLow.pump };
    const ends = pumps.map((pump) => pump.curve.lastFlow * pump.speed);
    let high = this.staging === 'parallel' ? ends.reduce((sum, end) => sum + end) : Math.max(...ends);
    let atHigh = at(high);
    while (atHigh.value >= 0) {
      high *= WIDER;
      atHigh = at(high);
    }
    const end = closeIn(at, { low: 0, atLow, high, atHigh }, FLOW_FOUND, ({ value }) => value < CURVE_FOUND);
    return { flow: end.low, pump: end.atHigh.pump };
  }

  /**
   * The most that can be drawn up to a flow, m3/s, in a state that the gate lets pass, and that state; undefined where not even
   * nothing can be drawn.
   */
  mostPossible(upTo: number): Drawn | undefined {
    const possible = (flow: number): Drawn | undefined => {
      const state = flow === 0 ? this.atRest() : this.at(flow);
      return whyImpossible(state) ? undefined : { flow, state };
    };
    let high = Math.min(upTo, this.endOfCurves().flow);
    const most = possible(high);
    if (most) return most;
    let low = possible(0);
    // The gate says yes or no, and no more: there is nothing to draw a line through.
    for (const width = high * POSSIBLE_FOUND; low && high - low.flow > width; ) {
      const middle: Drawn | undefined = possible((low.flow + high) / 2);
      if (middle) low = middle;
      else high = (low.flow + high) / 2;
    }
    return low;
  }

  /**
   * The flow, m3/s, at which the end still has a pressure, and the state there; undefined where even with nothing drawn it
   * has less. A flow that it finds past the end of a curve is no answer, and for the caller to refuse. `near` is where the
   * search starts: a flow, or a state that is solved already.
   */
  flowAt(pressure: number, near: number | Drawn, net = false): Drawn | undefined {
    const over = ({ flow, state }: Drawn) => ({ value: this.pressure(state, flow, net) - pressure, state });
    const at = (flow: number) => over({ flow, state: this.at(flow) });
    const rest = over({ flow: 0, state: this.atRest() });
    if (rest.value < 0) return undefined;
    let low = { flow: 0, at: rest };
    let high = typeof near === 'number' ? { flow: near, at: at(near) } : { flow: near.flow, at: over(near) };
    while (high.at.value >= 0) {
      if (this.offCurve(high.at.state)) return { flow: high.flow, state: high.at.state };
      low = high;
      const flow = this.beyond(high.flow, high.at.value, rest.value);
      high = { flow, at: at(flow) };
    }
    // Pressure falls nearly straight with the square of the flow, so that a few steps find it there.
    const end = closeInBySquares(
      at,
      { low: low.flow, atLow: low.at, high: high.flow, atHigh: high.at },
      FLOW_FOUND,
      ({ value }) => value < PRESSURE_FOUND,
    );
    return { flow: end.low, state: end.atLow.state };
  }

  /** A larger flow to look at: a hair past where the fall of pressure so far leads, and never far. */
  private beyond(flow: number, over: number, overAtRest: number): number {
    const fallen = overAtRest - over;
    const most = flow * WIDER;
    return fallen > 0 ? Math.min(most, flow * Math.sqrt(1 + over / fallen) * A_HAIR_PAST) : most;
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

/**
 * The ends of a rig in a staging, each with what it delivers. Where a rig of the same plumbing has asked before, its networks
 * serve again: another place, wear or throttle is a matter of solving on.
 */
export function deliveries(rig: Rig, staging: StagingName): readonly Delivery[] {
  const { layout, throttle, made } = rig;
  const before = made.get(staging);
  if (before && samePlumbing(before.rig.layout, layout)) {
    const { ends } = before;
    const sameThrottle = before.rig.throttle.a === throttle.a && before.rig.throttle.b === throttle.b;
    if (before.rig.layout === layout && sameThrottle) return ends;
    const turned = rig.turned(ends[0].assembly);
    return ends.map((end) => end.as(turned, (assembly) => rig.turned(assembly)));
  }
  const orifice = closingOrifice(rig);
  const lay = orifice ? 'to_end' : 'none';
  const assembly = rig.assemble({ staging, lay });
  const fromTank = layout.supply.kind === 'tank';
  const ends = assembly.ends.map(
    (end) =>
      new Delivery(new SolvedAssembly(assembly), end, orifice?.teeBore, fromTank, {
        assemble: (of, hung) => rig.assemble({ staging: of, lay, hung }),
        made: [],
      }),
  );
  if (before === undefined) made.set(staging, { rig, ends });
  return ends;
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
