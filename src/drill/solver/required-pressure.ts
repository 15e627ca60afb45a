import type { Network, NetworkLink, NetworkNode } from '../../network/network.js';
import { NetworkSolver } from '../../network/solver.js';
import { REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { heightOfPressure, pressureOfHeight } from '../../physics/elevation.js';
import { hoseHeadResistance } from '../../physics/hose-coefficient.js';
import { REFERENCE_COEFFICIENT } from '../equipment.js';
import type { DrillUnits } from '../problem.js';
import type { HoseSize } from '../rules/rule-set.js';
import { SI_VALUE } from './si.js';

/** A line of hose in the units of the sheet, and what it ends in: a nozzle, or lines that part from its end. */
export interface LayLine {
  readonly hose: HoseSize;
  readonly length: number;
  /** Lines of it side by side; 1 where nothing is said. */
  readonly lines?: number;
  readonly rise?: number;
  readonly end: NozzleEnd | readonly LayLine[];
}

export interface NozzleEnd {
  readonly flow: number;
  readonly pressure: number;
}

/** Below this flow (m3/s) a line is taken as laminar, so that its slope never vanishes. */
const LINEAR_BELOW = 1e-6;

const isNozzle = (end: LayLine['end']): end is NozzleEnd => !Array.isArray(end);

/**
 * What the pump must discharge so that every nozzle has its pressure, by the network solver: hose by its published
 * coefficient, height by the weight of water at 60 degF, nothing for appliances.
 */
export function requiredPressure(lay: readonly LayLine[], units: DrillUnits): number {
  const si = SI_VALUE[units];
  const nodes: NetworkNode[] = [{ name: 'pump', elevation: 0, head: 0 }];
  const links: NetworkLink[] = [];
  const wanted: { node: number; head: number }[] = [];
  const add = (line: LayLine, from: number) => {
    const elevation = nodes[from].elevation + (line.rise ?? 0) * si.length;
    const to = nodes.push({ name: `point ${nodes.length}`, elevation }) - 1;
    const resistance =
      hoseHeadResistance(REFERENCE_COEFFICIENT[line.hose], line.length * si.length) / (line.lines ?? 1) ** 2;
    links.push({
      name: `hose ${links.length + 1}`,
      from,
      to,
      law: { kind: 'resistance', resistance, linearBelow: LINEAR_BELOW },
    });
    if (isNozzle(line.end)) {
      nodes[to].demand = line.end.flow * si.flow;
      const pressure = line.end.pressure * si.pressure;
      wanted.push({ node: to, head: elevation + heightOfPressure(pressure, REFERENCE_WATER_DENSITY) });
    } else for (const next of line.end) add(next, to);
  };
  for (const line of lay) add(line, 0);
  const network: Network = { nodes, links };
  const solution = new NetworkSolver(network).solve();
  if (solution.failure) throw new Error(`a lay of the drill has no answer: ${solution.failure.message}`);
  const head = Math.max(...wanted.map((end) => end.head - solution.heads[end.node]));
  return pressureOfHeight(head, REFERENCE_WATER_DENSITY) / si.pressure;
}

/** Height lost or gained as the solver has it, in the pressure of the sheet. */
export function exactElevation(rise: number, units: DrillUnits): number {
  const si = SI_VALUE[units];
  return pressureOfHeight(rise * si.length, REFERENCE_WATER_DENSITY) / si.pressure;
}
