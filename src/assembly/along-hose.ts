import { pressureOfHeight } from '../physics/elevation.js';
import type { Element } from './network-builder.js';
import type { OperatingPoint } from './operating-point.js';

/** A point of a lay: on the ground, with the pressure in the hose there. */
export interface GroundLinePoint {
  name: string;
  /** Hose from the outlet to it, m. */
  distance: number;
  /** m above the pump inlets. */
  height: number;
  /** Total gauge pressure, Pa. */
  pressure: number;
  /** Through the hose, m3/s. */
  flow: number;
}

/** A length of hose at its ends and at the crests and dips of the ground between them. */
export function alongHose(point: OperatingPoint, element: Element, from = 0): GroundLinePoint[] {
  const { step, name, length = 0 } = element;
  const flow = point.flow(element.link);
  const start = { name: `start of ${name}`, distance: from, height: element.from.elevation, flow };
  const end = { name: `end of ${name}`, distance: from + length, height: element.to.elevation, flow };
  const ground = step?.kind === 'hose' ? (step.ground ?? []) : [];
  const atStart = point.totalPressure(element.from);
  const lost = point.lossOf(element);
  const between = ground.map(({ along, height }) => ({
    name: `a turn of the ground under ${name}`,
    distance: from + along * length,
    height: start.height + height,
    flow,
    pressure: atStart - along * lost - pressureOfHeight(height, point.assembly.site.waterDensity),
  }));
  return [{ ...start, pressure: atStart }, ...between, { ...end, pressure: point.totalPressure(element.to) }];
}

/** The lowest and the highest pressure that `alongHose` tells, Pa, for long lays in which nobody reads the points. */
export function pressuresAlong(point: OperatingPoint, element: Element): { lowest: number; highest: number } {
  const start = point.totalPressure(element.from);
  const end = point.totalPressure(element.to);
  const ends = { lowest: Math.min(start, end), highest: Math.max(start, end) };
  if (element.step?.kind !== 'hose' || !element.step.ground?.length) return ends;
  const all = alongHose(point, element).map(({ pressure }) => pressure);
  return { lowest: Math.min(...all), highest: Math.max(...all) };
}

/** Whether a part lies on the ground, rather than on the engine or in its suction. */
export function isLaid({ path }: Pick<Element, 'path'>): boolean {
  return path[0] === 'lay' || path[0] === 'progressive';
}
