import { alongHose, type GroundLinePoint, isLaid, pressuresAlong } from '../assembly/along-hose.js';
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
  let worst: { element: Element; highest: number } | undefined;
  for (const element of laidHose(point.assembly)) {
    const { highest } = pressuresAlong(point, element);
    if (worst === undefined || highest > worst.highest) worst = { element, highest };
  }
  if (worst === undefined) return undefined;
  const points = alongHose(point, worst.element);
  const { name, pressure } = points.reduce((kept, one) => (one.pressure > kept.pressure ? one : kept));
  return { at: name, pressure };
}

/** The lowest point of the hose on the ground. */
export function lowestPoint(point: OperatingPoint): GroundLinePoint | undefined {
  const points = laidHose(point.assembly).flatMap((element) => alongHose(point, element));
  return points.length === 0
    ? undefined
    : points.reduce((kept, one) => (one.height < kept.height ? one : kept));
}

/** The hose of the lay. */
export function laidHose({ elements }: Assembly): Element[] {
  return elements.filter((element) => isHose(element) && isLaid(element));
}
