import type { NetworkFailure, Solution } from '../network/network.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { flowVelocity } from '../physics/velocity.js';
import type { AssembledPump, Assembly } from './assembly.js';
import type { Element, Place } from './network-builder.js';

/** A solved state of an assembly: what every gauge reads and what flows where. */
export class OperatingPoint {
  readonly assembly: Assembly;
  readonly solution: Solution;
  /** By link: speeds that the flow alone does not tell, since the engine could hold several at it. */
  private readonly speeds: ReadonlyMap<number, number>;

  constructor(assembly: Assembly, solution: Solution, speeds: ReadonlyMap<number, number> = new Map()) {
    this.assembly = assembly;
    this.solution = solution;
    this.speeds = speeds;
  }

  get failure(): NetworkFailure | undefined {
    return this.solution.failure;
  }

  /** Flow through a link, m3/s. */
  flow(link: number): number {
    return this.solution.flows[link];
  }

  /** Pressure of a head of this water, Pa. */
  pressureOf(head: number): number {
    return pressureOfHeight(head, this.assembly.site.waterDensity);
  }

  /** Total head over a place, m. */
  headOver(place: Place): number {
    return this.solution.heads[place.node] - place.elevation;
  }

  /** Total gauge pressure at a place, Pa. */
  totalPressure(place: Place): number {
    return this.pressureOf(this.headOver(place));
  }

  /** What a gauge at a place reads: total pressure less the velocity head in the bore that it follows, Pa. */
  gaugePressure(place: Place): number {
    const velocity = this.velocityAt(place);
    return this.totalPressure(place) - 0.5 * this.assembly.site.waterDensity * velocity * velocity;
  }

  /** Whether a gauge at a place is told as it reads, static pressure; where no bore is known it is told as total. */
  readsStatic(place: Place): boolean {
    return place.bore !== undefined && place.link !== undefined;
  }

  /** m/s; 0 where no bore is known. */
  velocityAt(place: Place): number {
    if (place.bore === undefined || place.link === undefined) return 0;
    return flowVelocity(this.flow(place.link) / place.lines, place.bore);
  }

  /** Loss of total pressure along a part, its rise left out, Pa. */
  lossOf(element: Element): number {
    const { heads } = this.solution;
    return this.pressureOf(heads[element.from.node] - heads[element.to.node]);
  }

  /** Part of the speed of its curve that the pump runs at: its governor's, or what its engine has power for. */
  speedOf(pump: AssembledPump): number {
    if (pump.held === undefined) return pump.speed;
    const told = this.speeds.get(pump.link);
    if (told !== undefined) return told;
    const out = { speed: pump.speed, slope: 0 };
    pump.held.evaluate(this.flow(pump.link), pump.speed, out);
    return out.speed;
  }

  /** Whether the pump runs past the last point of its curve. */
  isOffCurve(pump: AssembledPump): boolean {
    return pump.curve.isOffCurve(this.flow(pump.link) / this.speedOf(pump));
  }
}
