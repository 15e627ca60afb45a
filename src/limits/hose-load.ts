import { alongHose, type GroundLinePoint, isLaid, pressuresAlong } from '../assembly/along-hose.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { STANDSTILL } from '../assembly/standstill.js';
import type { Hose } from '../catalogue/schema/hose.js';

/** A length of hose in a state, with what it stands at along the ground that it lies on and never at its ends alone. */
export interface HoseLoad {
  element: Element;
  hose: Hose;
  /** Total gauge pressures, Pa. */
  lowest: number;
  highest: number;
}

/** Every hose of a state, in the lay and on the truck. */
export function hoseLoads(point: OperatingPoint, elements = point.assembly.elements): HoseLoad[] {
  return elements.flatMap((element) =>
    element.step?.kind === 'hose'
      ? [{ element, hose: element.step.hose, ...pressuresAlong(point, element) }]
      : [],
  );
}

/** Soft hose on the ground, which the air presses flat where it stands below it. Hard suction bears a vacuum. */
export function isSoft({ element, hose }: Pick<HoseLoad, 'element' | 'hose'>): boolean {
  return hose.kind !== 'suction' && isLaid(element);
}

/** Whether water runs through a part. */
export function flowsThrough(point: OperatingPoint, { link }: Pick<Element, 'link'>): boolean {
  return Math.abs(point.flow(link)) > STANDSTILL;
}

/** The point of a hose at which it stands lowest. */
export function lowestAlong(point: OperatingPoint, element: Element): GroundLinePoint {
  return alongHose(point, element).reduce((kept, one) => (one.pressure < kept.pressure ? one : kept));
}

/** The point of a hose at which it stands highest. */
export function highestAlong(point: OperatingPoint, element: Element): GroundLinePoint {
  return alongHose(point, element).reduce((kept, one) => (one.pressure > kept.pressure ? one : kept));
}
