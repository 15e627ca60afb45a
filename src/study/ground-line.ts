import type { Assembly } from '../assembly/assembly.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { isHose } from './paths.js';

/** A point of a lay: on the ground, with the pressure in the hose there. */
export interface GroundLinePoint {
  name: string;
  /** Hose from the outlet to it, m. */
  distance: number;
  /** m above the pump inlets. */
  height: number;
  /** Total gauge pressure, Pa. */
  pressure: number;
}

/** A length of hose at its ends and at the crests and dips of the ground between them. */
export function alongHose(point: OperatingPoint, element: Element, from = 0): GroundLinePoint[] {
  const { step, name, length = 0 } = element;
  const start = { name: `start of ${name}`, distance: from, height: element.from.elevation };
  const end = { name: `end of ${name}`, distance: from + length, height: element.to.elevation };
  const ground = step?.kind === 'hose' ? (step.ground ?? []) : [];
  const atStart = point.totalPressure(element.from);
  const lost = point.lossOf(element);
  const between = ground.map(({ along, height }) => ({
    name: `a turn of the ground under ${name}`,
    distance: from + along * length,
    height: start.height + height,
    pressure: atStart - along * lost - pressureOfHeight(height, point.assembly.site.waterDensity),
  }));
  return [{ ...start, pressure: atStart }, ...between, { ...end, pressure: point.totalPressure(element.to) }];
}

/** Every point of the hose along a path, in the order that water meets them. */
export function groundLine(point: OperatingPoint, path: readonly Element[]): GroundLinePoint[] {
  let distance = 0;
  return path.flatMap((element) => {
    if (!isHose(element)) return [];
    const points = alongHose(point, element, distance);
    distance += element.length ?? 0;
    return points;
  });
}

/** Where hose of the lay stands under the most pressure; undefined where there is no hose. */
export function highestHose(point: OperatingPoint): { at: string; pressure: number } | undefined {
  const points = pointsOf(point);
  if (points.length === 0) return undefined;
  const { name, pressure } = points.reduce((kept, one) => (one.pressure > kept.pressure ? one : kept));
  return { at: name, pressure };
}

/** The lowest point of the hose on the ground. */
export function lowestPoint(point: OperatingPoint): GroundLinePoint | undefined {
  const points = pointsOf(point);
  return points.length === 0
    ? undefined
    : points.reduce((kept, one) => (one.height < kept.height ? one : kept));
}

function pointsOf(point: OperatingPoint): GroundLinePoint[] {
  return laidHose(point.assembly).flatMap((element) => alongHose(point, element));
}

/** The hose of the lay. */
export function laidHose({ elements }: Assembly): Element[] {
  return elements.filter((element) => isHose(element) && isLaid(element));
}

/** Whether a part lies on the ground, rather than on the engine or in its suction. */
export function isLaid({ path }: Pick<Element, 'path'>): boolean {
  return path[0] === 'lay' || path[0] === 'progressive';
}
