import type { Drawing, Mark } from './drawing.js';
import { escaped } from './html-escape.js';

const PLACES = 1;

const number = (value: number): string => String(Number(value.toFixed(PLACES)));

const path = (points: [number, number][]): string =>
  points.map((point) => point.map(number).join(',')).join(' ');

function markSvg(mark: Mark): string {
  switch (mark.kind) {
    case 'line':
      return `<polyline class="${mark.style}" points="${path(mark.points)}"/>`;
    case 'circle':
      return `<circle class="${mark.filled ? 'full' : 'part'}" cx="${number(mark.at[0])}" cy="${number(mark.at[1])}" r="${number(mark.radius)}"/>`;
    case 'box':
      return `<rect class="part" x="${number(mark.at[0])}" y="${number(mark.at[1])}" width="${number(mark.size[0])}" height="${number(mark.size[1])}"/>`;
    case 'shape':
      return `<polygon class="${mark.filled ? 'full' : 'part'}" points="${path(mark.points)}"/>`;
    case 'label':
      return `<text x="${number(mark.at[0])}" y="${number(mark.at[1])}" text-anchor="${mark.anchor}">${escaped(mark.text)}</text>`;
  }
}

/** The drawing inside a page; `title` is read out to whoever cannot see it. */
export function svgOf({ width, height, marks }: Drawing, title: string): string {
  return [
    `<svg viewBox="0 0 ${number(width)} ${number(height)}" width="${number(width)}" height="${number(height)}" role="img" aria-label="${escaped(title)}">`,
    ...marks.map(markSvg),
    '</svg>',
  ].join('\n');
}
