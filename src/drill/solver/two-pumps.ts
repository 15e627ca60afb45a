import type { LossAtFlow, LossCurve, NetworkLink, NetworkNode } from '../../network/network.js';
import { NetworkSolver } from '../../network/solver.js';
import { REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { heightOfPressure, pressureOfHeight } from '../../physics/elevation.js';
import type { PumpCurve } from '../../physics/pump-curve/curve.js';
import { PowerCurve } from '../../physics/pump-curve/power.js';
import type { DrillUnits } from '../problem.js';
import { SI_VALUE } from './si.js';

/** A pump whose pressure falls with the square of its flow, in the units of the sheet. */
export interface SquarePump {
  readonly shutoff: number;
  /** What it has lost of its shutoff pressure at 100 gpm, or 100 L/min. */
  readonly fall: number;
}

/** What hangs on the manifold: a pressure that is held there, or a line of so much static pressure and loss at a flow of 100. */
export type Load = { readonly held: number } | { readonly static: number; readonly loss: number };

export interface Staged {
  readonly flows: readonly number[];
  readonly total: number;
  /** Gauge pressure at the manifold. */
  readonly pressure: number;
}

const LINEAR_BELOW = 1e-7;

/** A pump curve as a loss that is negative. */
class Lift implements LossCurve {
  readonly #curve: PumpCurve;
  readonly #at = { head: 0, slope: 0 };

  constructor(curve: PumpCurve) {
    this.#curve = curve;
  }

  evaluate(flow: number, out: LossAtFlow): void {
    this.#curve.evaluate(flow, this.#at);
    out.loss = -this.#at.head;
    out.slope = -this.#at.slope;
  }
}

/**
 * What pumps make together on a load, by the network solver, each behind its check valve.
 *
 * Errors: an Error where the network has no answer, which a sound problem never has.
 */
export function staged(
  pumps: readonly SquarePump[],
  staging: 'parallel' | 'series',
  load: Load,
  units: DrillUnits,
): Staged {
  const si = SI_VALUE[units];
  const head = (pressure: number) => heightOfPressure(pressure * si.pressure, REFERENCE_WATER_DENSITY);
  const hundred = 100 * si.flow;
  const nodes: NetworkNode[] = [{ name: 'source', elevation: 0, head: 0 }];
  const links: NetworkLink[] = [];
  const node = (name: string, fixed?: number) =>
    nodes.push({ name, elevation: 0, ...(fixed === undefined ? {} : { head: fixed }) }) - 1;
  const square = (resistance: number): NetworkLink['law'] => ({
    kind: 'resistance',
    resistance,
    linearBelow: LINEAR_BELOW,
  });
  const manifold = node('manifold', 'held' in load ? head(load.held) : undefined);
  const pumpLinks = pumps.map((pump, index) => {
    const from = staging === 'series' && index > 0 ? nodes.length - 1 : 0;
    const end = staging === 'series' ? index === pumps.length - 1 : true;
    const to = node(`discharge ${index + 1}`);
    const last = Math.sqrt((0.98 * pump.shutoff) / pump.fall) * hundred;
    const curve = new PowerCurve(
      [0, last / 2, last].map((flow) => ({
        flow,
        head: head(pump.shutoff - pump.fall * (flow / hundred) ** 2),
      })),
    );
    const link = links.push({
      name: `pump ${index + 1}`,
      from,
      to,
      law: { kind: 'curve', curve: new Lift(curve), speed: 1 },
    });
    if (end)
      links.push({
        name: `check valve ${index + 1}`,
        from: to,
        to: manifold,
        law: square(head(1e-9) / hundred ** 2),
        oneWay: true,
      });
    return link - 1;
  });
  if (!('held' in load)) {
    const end = node('end of the line', head(load.static));
    links.push({ name: 'line', from: manifold, to: end, law: square(head(load.loss) / hundred ** 2) });
  }
  const solution = new NetworkSolver({ nodes, links }).solve();
  if (solution.failure) throw new Error(`two pumps of the drill have no answer: ${solution.failure.message}`);
  const flows = pumpLinks.map((link) => Math.max(0, solution.flows[link] / si.flow));
  const total = staging === 'series' ? flows[0] : flows.reduce((sum, flow) => sum + flow, 0);
  const pressure = pressureOfHeight(solution.heads[manifold], REFERENCE_WATER_DENSITY) / si.pressure;
  return { flows, total, pressure };
}
