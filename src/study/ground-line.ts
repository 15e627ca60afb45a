import { alongHose, type GroundLinePoint, isLaid } from '../assembly/along-hose.js';
import type { Assembly } from '../assembly/assembly.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { isHose } from './paths.js';

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
