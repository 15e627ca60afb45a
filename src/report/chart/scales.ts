import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { Axis, Chart, Layer } from './chart.js';

/** Where the plot lies on the sheet. */
export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Scales {
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
}

const TICKS = { x: 8, y: 6 };

function valuesOf(layer: Layer, axis: 'x' | 'y'): number[] {
  switch (layer.kind) {
    case 'line':
      return layer.points.map(([x, y]) => (axis === 'x' ? x : y));
    case 'band':
      return layer.points.flatMap(({ x, low, high }) => (axis === 'x' ? [x] : [low, high]));
    case 'points':
      return layer.points.flatMap(({ x, y, low = y, high = y }) => (axis === 'x' ? [x] : [y, low, high]));
    case 'columns':
      return layer.columns.flatMap(({ from, to, y }) => (axis === 'x' ? [from, to] : [0, y]));
    case 'rule':
      return layer.axis === axis ? [layer.at] : [];
  }
}

function extent(chart: Chart, axis: 'x' | 'y'): [number, number] {
  const { from, to } = chart[axis];
  const values = chart.layers.flatMap((layer) => valuesOf(layer, axis));
  const ends = [...values, from, to].filter((value) => value !== undefined && Number.isFinite(value));
  if (ends.length === 0) return [0, 1];
  const least = Math.min(...(ends as number[]));
  const most = Math.max(...(ends as number[]));
  return least === most ? [least - 1, most + 1] : [least, most];
}

/** Scales whose ends are round figures and hold all that is drawn. */
export function scalesOf(chart: Chart, frame: Frame): Scales {
  return {
    x: scaleLinear(extent(chart, 'x'), [frame.left, frame.right]).nice(TICKS.x),
    y: scaleLinear(extent(chart, 'y'), [frame.bottom, frame.top]).nice(TICKS.y),
  };
}

/** Round figures along an axis with their texts. */
export function ticksOf(scale: ScaleLinear<number, number>, axis: 'x' | 'y'): { at: number; text: string }[] {
  const said = scale.tickFormat(TICKS[axis]);
  return scale.ticks(TICKS[axis]).map((value) => ({ at: scale(value), text: said(value).replace('−', '-') }));
}

export const axisTitle = ({ title, unit }: Axis): string => (unit === '' ? title : `${title}, ${unit}`);
