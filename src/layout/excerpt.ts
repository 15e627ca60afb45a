import { printable } from './problem.js';

/** Widest excerpt, so that it fits a terminal of 80 columns with its line number. */
const WIDTH = 70;
/** What stays visible before the offending text of a long line. */
const LEAD = 20;

export interface Excerpt {
  line: number;
  column: number;
  excerpt: string;
  markerOffset: number;
  markerLength: number;
}

/** Offsets of the starts of lines. */
export function lineStartsOf(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return starts;
}

function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle] <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function positionAt(starts: readonly number[], offset: number): { line: number; column: number } {
  const index = lineAt(starts, offset);
  return { line: index + 1, column: offset - starts[index] + 1 };
}

/** The line at `offset`, cut to a window around the text up to `end`, with a marker's place and length. */
export function excerptAt(text: string, starts: readonly number[], offset: number, end: number): Excerpt {
  const index = lineAt(starts, Math.min(offset, text.length));
  const start = starts[index];
  let stop = index + 1 < starts.length ? starts[index + 1] - 1 : text.length;
  if (text[stop - 1] === '\r' && stop > start) stop--;
  const column = Math.min(offset, stop) - start;
  const length = Math.max(1, Math.min(end - offset, stop - start - column));
  const fits = column + Math.min(length, WIDTH - LEAD) <= WIDTH;
  const from = stop - start <= WIDTH || fits ? 0 : Math.max(0, column - LEAD);
  const before = from > 0 ? '...' : '';
  const room = WIDTH - before.length;
  const cut = stop - start - from > room;
  const shown = cut
    ? `${text.slice(start + from, start + from + room - 3)}...`
    : text.slice(start + from, stop);
  const markerOffset = before.length + column - from;
  return {
    line: index + 1,
    column: column + 1,
    excerpt: printable(before + shown),
    markerOffset,
    markerLength: Math.max(1, Math.min(length, before.length + shown.length - markerOffset)),
  };
}
