import type { Sketch, SketchPart } from '../../drill/problem.js';
import { columnsOf } from '../columns.js';
import type { Drawing, Mark } from '../drawing.js';
import { plain } from '../plain.js';
import { wrap } from '../wrap.js';
import { drawSymbol, SYMBOL } from './sketch-symbols.js';

/** Widest row that stays readable on paper, A4 or Letter, without being made smaller. */
const ROW = 640;
const LETTER_WIDTH = 6.2;
const LINE = 13;
const LABEL_COLUMNS = 12;
const SHORTEST_HOSE = 56;
const GAP = 10;
const LEG_GAP = 14;
const LEG_RUN = 22;
const ROW_GAP = 18;
const MARGIN = 6;

/** A piece of the drawing around its own start, which is at (0, 0); it ends at (width, 0). */
interface Piece {
  width: number;
  above: number;
  below: number;
  marks: Mark[];
  /** Where what hangs below it ends; the next piece that hangs something must start after that. */
  hangs?: number;
}

const labelLines = (text: string): string[] => (text ? wrap(plain(text), LABEL_COLUMNS) : []);

const widthOf = (lines: string[]): number => Math.max(0, ...lines.map(columnsOf)) * LETTER_WIDTH;

function labelAt(lines: string[], x: number, firstBaseline: number): Mark[] {
  return lines.map((text, index) => ({
    kind: 'label',
    at: [x, firstBaseline + index * LINE],
    text,
    anchor: 'middle',
  }));
}

const above = (lines: string[], x: number, clear: number): Mark[] =>
  labelAt(lines, x, -clear - (lines.length - 1) * LINE);

const below = (lines: string[], x: number, clear: number): Mark[] => labelAt(lines, x, clear + LINE - 3);

function moved(marks: Mark[], dx: number, dy: number): Mark[] {
  const by = ([x, y]: [number, number]): [number, number] => [x + dx, y + dy];
  return marks.map((mark) =>
    'points' in mark ? { ...mark, points: mark.points.map(by) } : { ...mark, at: by(mark.at) },
  );
}

const hoseMark = (from: number, to: number, y = 0): Mark => ({
  kind: 'line',
  style: 'hose',
  points: [
    [from, y],
    [to, y],
  ],
});

function hosePiece(part: Extract<SketchPart, { kind: 'hose' }>, atLeast = 0): Piece {
  const label = labelLines(part.label);
  const rise = labelLines(part.rise ?? '');
  const width = Math.max(SHORTEST_HOSE, widthOf(label) + GAP, widthOf(rise) + GAP, atLeast);
  const twin = (part.lines ?? 1) > 1;
  const strokes = twin ? [hoseMark(0, width, -3), hoseMark(0, width, 3)] : [hoseMark(0, width)];
  const clear = twin ? 9 : 6;
  return {
    width,
    above: clear + label.length * LINE,
    below: rise.length > 0 ? clear + rise.length * LINE : clear,
    marks: [...strokes, ...above(label, width / 2, clear), ...below(rise, width / 2, clear)],
  };
}

type Symbolic = Extract<SketchPart, { kind: 'source' | 'pump' | 'appliance' | 'gauge' | 'nozzle' }>;

function symbolPiece(part: Symbolic): Piece {
  const label = labelLines(part.label);
  const { width: own, above: up, below: down } = SYMBOL[part.kind];
  const width = Math.max(own, widthOf(label) + GAP);
  const middle = width / 2;
  // A nozzle and a source end a line: the stroke runs up to them on one side only.
  const inlet = part.kind === 'source' ? [] : [hoseMark(0, middle - own / 2)];
  const outlet = part.kind === 'nozzle' ? [] : [hoseMark(middle + own / 2, width)];
  return {
    width,
    above: up,
    below: down + label.length * LINE,
    marks: [...inlet, ...outlet, ...drawSymbol(part, middle), ...below(label, middle, down)],
  };
}

const elbow = (from: [number, number], to: [number, number]): Mark => ({
  kind: 'line',
  style: 'hose',
  points: [from, to],
});

/** Heights at which legs run so that none touches another, the first as high as `top` allows. */
function stacked(legs: Piece[], start: number): number[] {
  let y = start;
  return legs.map((leg, index) => {
    y += index === 0 ? leg.above : legs[index - 1].below + LEG_GAP + leg.above;
    return y;
  });
}

/** Legs spread about the axis, as they leave a wye that nothing follows or a pair of lines that meet again. */
function spread(legs: Piece[]): number[] {
  const heights = stacked(legs, 0);
  const middle = (heights[0] + heights[heights.length - 1]) / 2;
  return heights.map((height) => height - middle);
}

const highest = (legs: Piece[], heights: number[]): number =>
  Math.max(0, ...legs.map((leg, index) => leg.above - heights[index]));

const lowest = (legs: Piece[], heights: number[]): number =>
  Math.max(0, ...legs.map((leg, index) => leg.below + heights[index]));

const KNOT: Mark = { kind: 'circle', at: [0, 0], radius: 4, filled: true };

function branchPiece(part: Extract<SketchPart, { kind: 'branch' }>, goesOn: boolean): Piece {
  const legs = part.legs.map((leg) => linePiece(leg));
  const label = labelLines(part.label);
  const reach = Math.max(0, ...legs.map((leg) => leg.width)) + LEG_RUN;
  // Below the axis there may stand how much the next hose rises.
  const heights = goesOn ? stacked(legs, LEG_GAP + LINE) : spread(legs);
  const marks = legs.flatMap((leg, index) => [
    elbow([0, 0], [LEG_RUN, heights[index]]),
    ...moved(leg.marks, LEG_RUN, heights[index]),
  ]);
  const half = widthOf(label) / 2 + 4;
  const lead = goesOn ? Math.max(12, half) : 2 * half + 2;
  const on = Math.max(LEG_RUN, half);
  const up = highest(legs, heights);
  const piece: Piece = {
    width: goesOn ? lead + on : lead + reach,
    above: Math.max(up, 10 + label.length * LINE),
    below: Math.max(8, lowest(legs, heights)),
    marks: [
      hoseMark(0, lead),
      ...moved([...marks, KNOT], lead, 0),
      ...(goesOn ? [hoseMark(lead, lead + on)] : []),
      ...above(label, goesOn ? lead : lead / 2 - 2, goesOn ? 10 : 6),
    ],
  };
  return goesOn ? { ...piece, hangs: lead + reach } : piece;
}

function joinedPiece(part: Extract<SketchPart, { kind: 'joined' }>): Piece {
  const legs = part.legs.map((leg) => linePiece(leg));
  const label = labelLines(part.label);
  const longest = Math.max(0, ...legs.map((leg) => leg.width));
  const heights = spread(legs);
  const end = LEG_RUN * 2 + longest;
  const tail = widthOf(label) + GAP;
  const marks = legs.flatMap((leg, index) => [
    elbow([0, 0], [LEG_RUN, heights[index]]),
    ...moved(leg.marks, LEG_RUN, heights[index]),
    hoseMark(LEG_RUN + leg.width, LEG_RUN + longest, heights[index]),
    elbow([LEG_RUN + longest, heights[index]], [end, 0]),
  ]);
  const knot = moved([KNOT], end, 0);
  return {
    width: end + Math.max(GAP, tail),
    above: Math.max(highest(legs, heights), 10 + label.length * LINE),
    below: Math.max(8, lowest(legs, heights)),
    marks: [
      ...marks,
      ...knot,
      hoseMark(end, end + Math.max(GAP, tail)),
      ...above(label, end + tail / 2 + 2, 8),
    ],
  };
}

function pieceOf(part: SketchPart, goesOn: boolean, atLeast: number): Piece {
  switch (part.kind) {
    case 'hose':
      return hosePiece(part, atLeast);
    case 'branch':
      return branchPiece(part, goesOn);
    case 'joined':
      return joinedPiece(part);
    default:
      return symbolPiece(part);
  }
}

/** How far a hose must run so that the branch after it hangs clear of what hangs already. */
function clearance(parts: readonly SketchPart[], index: number, x: number, hanging: number): number {
  const next = parts[index + 1];
  return parts[index].kind === 'hose' && next !== undefined && next.kind !== 'hose' ? hanging + GAP - x : 0;
}

function* piecesOf(parts: readonly SketchPart[]): Generator<{ piece: Piece; x: number }> {
  let x = 0;
  let hanging = Number.NEGATIVE_INFINITY;
  for (const [index, part] of parts.entries()) {
    const piece = pieceOf(part, index < parts.length - 1, clearance(parts, index, x, hanging));
    yield { piece, x };
    if (piece.hangs !== undefined) hanging = x + piece.hangs;
    x += piece.width;
  }
}

function linePiece(parts: readonly SketchPart[]): Piece {
  const placed = [...piecesOf(parts)];
  return together(placed);
}

function together(placed: { piece: Piece; x: number }[]): Piece {
  const ends = placed.map(({ piece, x }) => x + piece.width);
  return {
    width: Math.max(0, ...ends),
    above: Math.max(0, ...placed.map(({ piece }) => piece.above)),
    below: Math.max(0, ...placed.map(({ piece }) => piece.below)),
    marks: placed.flatMap(({ piece, x }) => moved(piece.marks, x, 0)),
    hangs: Math.max(0, ...ends, ...placed.map(({ piece, x }) => x + (piece.hangs ?? 0))),
  };
}

/** Parts that a row is never broken between: what a hose leads to stands behind it. */
function runsOf(parts: readonly SketchPart[]): SketchPart[][] {
  const runs: SketchPart[][] = [[]];
  for (const part of parts) {
    const run = runs[runs.length - 1];
    const previous = run[run.length - 1];
    if (part.kind === 'hose' && previous !== undefined && previous.kind !== 'hose') runs.push([part]);
    else run.push(part);
  }
  return runs;
}

const reachOf = (piece: Piece): number => Math.max(piece.width, piece.hangs ?? 0);

/** A row that goes on in the next one ends in a bare hose, clear of whatever hangs from it. */
function rowPiece(parts: readonly SketchPart[], last: boolean): Piece {
  const piece = linePiece(last ? parts : [...parts, { kind: 'hose', label: '' }]);
  if (last || reachOf(piece) <= piece.width) return piece;
  const width = reachOf(piece) + GAP;
  return { ...piece, width, marks: [...piece.marks, hoseMark(piece.width, width)] };
}

/** Breaks a lay that is longer than a page is wide into rows. */
function rowsOf(parts: readonly SketchPart[]): Piece[] {
  const rows: SketchPart[][] = [[]];
  for (const run of runsOf(parts)) {
    const row = rows[rows.length - 1];
    if (row.length > 0 && reachOf(linePiece([...row, ...run])) > ROW) rows.push([...run]);
    else row.push(...run);
  }
  return rows.map((row, index) => rowPiece(row, index === rows.length - 1));
}

const turn = (from: [number, number], between: number, to: number): Mark => ({
  kind: 'line',
  style: 'dashed',
  points: [from, [from[0], between], [MARGIN, between], [MARGIN, to]],
});

/** The lay as water meets it, left to right. */
export function drawSketch({ parts }: Sketch): Drawing {
  const marks: Mark[] = [];
  let bottom = 0;
  let width = 0;
  let end: [number, number] | undefined;
  for (const row of rowsOf(parts)) {
    const axis = bottom + (end ? ROW_GAP * 2 : MARGIN) + row.above;
    if (end) marks.push(turn(end, bottom + ROW_GAP, axis));
    marks.push(...moved(row.marks, MARGIN, axis));
    end = [MARGIN + row.width, axis];
    width = Math.max(width, MARGIN * 2 + reachOf(row));
    bottom = axis + row.below;
  }
  return { width: Math.ceil(width), height: Math.ceil(bottom + MARGIN), marks };
}
