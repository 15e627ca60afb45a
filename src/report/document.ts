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
}

export type Block = Heading | Paragraph | Table | List;

export interface Document {
  title: string;
  blocks: Block[];
}

export const heading = (text: string): Heading => ({ kind: 'heading', level: 2, text });

export const paragraph = (text: string, tone?: Tone): Paragraph => ({ kind: 'paragraph', text, tone });

export const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell : cell.text);

export const cellTone = (cell: Cell): Tone | undefined => (typeof cell === 'string' ? undefined : cell.tone);
