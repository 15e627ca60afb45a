import { citation } from '../catalogue/citation.js';
import { typingPoints } from '../catalogue/schema/typing.js';
import type { TypingAsked } from '../layout/layout.js';
import type { RatingPoint } from './answer.js';

/** The points that a typing asks for, with a pressure each. */
export function ratingPoints(typing: TypingAsked): RatingPoint[] {
  return typingPoints(typing.requirement).map((point) => {
    const pressure = point.pressure ?? typing.pressure;
    if (pressure === undefined)
      throw new TypeError('a typing without a pressure passed the reading of the layout');
    const { net = false, lift } = point;
    return { name: point.name ?? '', flow: point.flow, pressure, net, lift };
  });
}

export function typingSource(typing: TypingAsked, key?: string): string {
  const { requirement, table } = typing;
  return citation(requirement.source || table === undefined ? requirement : table, key);
}
