/** A drawing as marks on a sheet of `width` by `height`; y runs down. Looks are the renderer's affair. */

export interface Line {
  kind: 'line';
  points: [number, number][];
  /** What it stands for, which decides its thickness and dashes. */
  style: 'hose' | 'pipe' | 'thin' | 'dashed';
}

export interface Circle {
  kind: 'circle';
  at: [number, number];
  radius: number;
  filled?: boolean;
}

export interface Box {
  kind: 'box';
  at: [number, number];
  size: [number, number];
}

export interface Shape {
  kind: 'shape';
  points: [number, number][];
  filled?: boolean;
}

export interface Label {
  kind: 'label';
  at: [number, number];
  text: string;
  anchor: 'start' | 'middle' | 'end';
}

export type Mark = Line | Circle | Box | Shape | Label;

export interface Drawing {
  width: number;
  height: number;
  marks: Mark[];
}
