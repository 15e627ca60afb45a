import type { Chart } from './chart/chart.js';
import type { Drawing } from './drawing.js';

/**
 * What every report is made of before it has a look. Text, Markdown and HTML are three renderings of the same blocks,
 * so a fact can never be in one of them and missing from another.
 */

/** How a passage is meant. Colour may underline it, words must already say it. */
export type Tone = 'good' | 'bad' | 'care' | 'quiet';

export interface Heading {
  kind: 'heading';
  /** 1 is the verdict, once, at the top. */
  level: 1 | 2;
  text: string;
  tone?: Tone;
}

export interface Paragraph {
  kind: 'paragraph';
  text: string;
  tone?: Tone;
}

export type Cell = string | { text: string; tone: Tone };

export interface Column {
  title: string;
  align?: 'left' | 'right';
}

export interface Table {
  kind: 'table';
  columns: Column[];
  /** The first cell of a row names it. */
  rows: Cell[][];
}

export interface ListItem {
  /** Stands out before the rest. */
  lead?: string;
  tone?: Tone;
  lines: string[];
}

export interface List {
  kind: 'list';
  items: ListItem[];
  /** What stands before an item; a bullet where nothing is said. */
  marks?: 'bullet' | 'number' | 'letter';
}

/** A line to write on, for a sheet that is filled in by hand. */
export interface Blank {
  kind: 'blank';
  fields: { label: string; unit?: string }[];
  /** Room above it for working, in lines of writing. */
  room?: number;
}

/** A drawing, with the words that say the same where none can be drawn. */
export interface Figure {
  kind: 'figure';
  words: string;
  drawing: Drawing;
}

/** A chart of figures that a table beside it has too: text and Markdown, which draw none, leave it out. */
export interface ChartFigure {
  kind: 'chart';
  words: string;
  chart: Chart;
}

/** Blocks that belong together: they stay on one page where there are pages, and start one if need be. */
export interface Group {
  kind: 'group';
  blocks: Block[];
  newPage?: boolean;
}

export type Block = Heading | Paragraph | Table | List | Blank | Figure | ChartFigure | Group;

export interface Document {
  title: string;
  blocks: Block[];
}

export const heading = (text: string): Heading => ({ kind: 'heading', level: 2, text });

export const paragraph = (text: string, tone?: Tone): Paragraph => ({ kind: 'paragraph', text, tone });

export const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

export const cellTone = (cell: Cell): Tone | undefined => (typeof cell === 'string' ? undefined : cell.tone);
