/** A chart as what it shows, in the reader's units; scales, ticks and looks are the renderer's affair (`chart-svg.ts`). */

export interface Axis {
  /** What it measures: `flow`. */
  title: string;
  /** Unit of every figure along it: `gpm`. */
  unit: string;
  /** Ends that have to be on it, whatever the layers reach. */
  from?: number;
  to?: number;
}

/** How a line or mark differs from the others, without colour. */
export type Dash = 'solid' | 'dashed' | 'dotted';
export type SymbolName = 'circle' | 'ring' | 'square' | 'cross' | 'diamond';

export interface LineLayer {
  kind: 'line';
  name: string;
  points: [number, number][];
  dash?: Dash;
}

/** Between a low and a high value of y at each x. */
export interface BandLayer {
  kind: 'band';
  name: string;
  points: { x: number; low: number; high: number }[];
}

export interface PointsLayer {
  kind: 'points';
  name: string;
  symbol: SymbolName;
  /** `low` and `high` draw a whisker; a label stands beside the mark. */
  points: { x: number; y: number; low?: number; high?: number; label?: string }[];
}

/** Columns from the x axis up, as in a histogram. */
export interface ColumnsLayer {
  kind: 'columns';
  name: string;
  columns: { from: number; to: number; y: number }[];
}

/** A limit: a line right across at one value of x or y, with its name on it. */
export interface RuleLayer {
  kind: 'rule';
  name: string;
  axis: 'x' | 'y';
  at: number;
}

export type Layer = LineLayer | BandLayer | PointsLayer | ColumnsLayer | RuleLayer;

export interface Chart {
  x: Axis;
  y: Axis;
  layers: Layer[];
}
