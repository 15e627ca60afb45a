import {
  area,
  line,
  type SymbolType,
  symbol,
  symbolCircle,
  symbolDiamond,
  symbolSquare,
  symbolTimes,
} from 'd3-shape';
import { escaped } from '../html-escape.js';
import type {
  BandLayer,
  Chart,
  ColumnsLayer,
  Layer,
  LineLayer,
  PointsLayer,
  RuleLayer,
  SymbolName,
} from './chart.js';
import { axisTitle, type Frame, type Scales, scalesOf, ticksOf } from './scales.js';

const WIDTH = 640;
const PLOT_HEIGHT = 320;
const FRAME: Frame = { left: 58, right: WIDTH - 14, top: 14, bottom: 14 + PLOT_HEIGHT };
/** From the foot of the plot to the middle of the first line of the key. */
const KEY_DROP = 58;
const KEY_LINE = 20;
const KEY_SAMPLE = 26;
const LETTER = 6.2;
const SYMBOL_SIZE = 44;

const SYMBOLS: Record<SymbolName, SymbolType> = {
  circle: symbolCircle,
  ring: symbolCircle,
  square: symbolSquare,
  cross: symbolTimes,
  diamond: symbolDiamond,
};

const round = (value: number): string => String(Number(value.toFixed(1)));

function markAt(kind: SymbolName, x: number, y: number): string {
  const path = symbol(SYMBOLS[kind], SYMBOL_SIZE)() ?? '';
  return `<path class="mark ${kind}" transform="translate(${round(x)},${round(y)})" d="${path}"/>`;
}

function bandSvg({ points }: BandLayer, { x, y }: Scales): string {
  const shape = area<BandLayer['points'][number]>()
    .x((at) => x(at.x))
    .y0((at) => y(at.low))
    .y1((at) => y(at.high))
    .digits(1);
  return `<path class="band" d="${shape(points) ?? ''}"/>`;
}

function lineSvg({ points, dash = 'solid' }: LineLayer, { x, y }: Scales): string {
  const shape = line()
    .x(([at]) => x(at))
    .y(([, value]) => y(value))
    .digits(1);
  return `<path class="curve ${dash}" d="${shape(points) ?? ''}"/>`;
}

function pointsSvg({ points, symbol: kind }: PointsLayer, { x, y }: Scales): string {
  return points
    .map(({ x: at, y: value, low, high, label }) => {
      const whisker =
        low === undefined || high === undefined
          ? ''
          : `<path class="whisker" d="M${round(x(at))},${round(y(low))}V${round(y(high))}"/>`;
      const text = label
        ? `<text x="${round(x(at) - 8)}" y="${round(y(value) + 14)}" text-anchor="end">${escaped(label)}</text>`
        : '';
      return `${whisker}${markAt(kind, x(at), y(value))}${text}`;
    })
    .join('\n');
}

function columnsSvg({ columns }: ColumnsLayer, { x, y }: Scales): string {
  return columns
    .map(({ from, to, y: value }) => {
      const top = Math.min(y(0), y(value));
      return `<rect class="column" x="${round(x(from))}" y="${round(top)}" width="${round(x(to) - x(from))}" height="${round(Math.abs(y(value) - y(0)))}"/>`;
    })
    .join('\n');
}

function ruleSvg({ axis, at, name }: RuleLayer, { x, y }: Scales): string {
  if (axis === 'y') {
    const height = round(y(at));
    return `<path class="rule" d="M${FRAME.left},${height}H${FRAME.right}"/><text x="${FRAME.left + 6}" y="${round(y(at) - 5)}">${escaped(name)}</text>`;
  }
  return `<path class="rule" d="M${round(x(at))},${FRAME.top}V${FRAME.bottom}"/><text x="${round(x(at) + 5)}" y="${FRAME.top + 11}">${escaped(name)}</text>`;
}

function layerSvg(layer: Layer, scales: Scales): string {
  switch (layer.kind) {
    case 'band':
      return bandSvg(layer, scales);
    case 'line':
      return lineSvg(layer, scales);
    case 'points':
      return pointsSvg(layer, scales);
    case 'columns':
      return columnsSvg(layer, scales);
    case 'rule':
      return ruleSvg(layer, scales);
  }
}

function axesSvg(chart: Chart, scales: Scales): string[] {
  const { left, right, top, bottom } = FRAME;
  const middle = (top + bottom) / 2;
  return [
    ...ticksOf(scales.x, 'x').map(
      ({ at, text }) =>
        `<path class="grid" d="M${round(at)},${top}V${bottom}"/><text x="${round(at)}" y="${bottom + 16}" text-anchor="middle">${text}</text>`,
    ),
    ...ticksOf(scales.y, 'y').map(
      ({ at, text }) =>
        `<path class="grid" d="M${left},${round(at)}H${right}"/><text x="${left - 6}" y="${round(at + 4)}" text-anchor="end">${text}</text>`,
    ),
    `<path class="axis" d="M${left},${top}V${bottom}H${right}"/>`,
    `<text x="${(left + right) / 2}" y="${bottom + 34}" text-anchor="middle">${escaped(axisTitle(chart.x))}</text>`,
    `<text transform="translate(14,${middle}) rotate(-90)" text-anchor="middle">${escaped(axisTitle(chart.y))}</text>`,
  ];
}

function sampleSvg(layer: Layer, x: number, y: number): string {
  const end = x + KEY_SAMPLE - 6;
  switch (layer.kind) {
    case 'band':
      return `<rect class="band" x="${x}" y="${y - 6}" width="${KEY_SAMPLE - 6}" height="12"/>`;
    case 'columns':
      return `<rect class="column" x="${x}" y="${y - 6}" width="${KEY_SAMPLE - 6}" height="12"/>`;
    case 'line':
      return `<path class="curve ${layer.dash ?? 'solid'}" d="M${x},${y}H${end}"/>`;
    case 'points':
      return markAt(layer.symbol, x + KEY_SAMPLE / 2 - 3, y);
    case 'rule':
      return `<path class="rule" d="M${x},${y}H${end}"/>`;
  }
}

/** What each layer is, under the plot, in as many lines as it takes. */
function keySvg(layers: readonly Layer[]): { marks: string[]; lines: number } {
  let x = FRAME.left;
  let lines = 1;
  const marks = layers.map((layer) => {
    const width = KEY_SAMPLE + layer.name.length * LETTER + 18;
    if (x + width > FRAME.right && x > FRAME.left) {
      x = FRAME.left;
      lines++;
    }
    const y = FRAME.bottom + KEY_DROP + (lines - 1) * KEY_LINE;
    const mark = `${sampleSvg(layer, x, y)}<text x="${round(x + KEY_SAMPLE)}" y="${y + 4}">${escaped(layer.name)}</text>`;
    x += width;
    return mark;
  });
  return { marks, lines };
}

/** The chart inside a page; `title` is read out to whoever cannot see it. */
export function chartSvg(chart: Chart, title: string): string {
  const scales = scalesOf(chart, FRAME);
  // A rule carries its name on itself.
  const key = keySvg(chart.layers.filter(({ kind }) => kind !== 'rule'));
  const height = FRAME.bottom + KEY_DROP + key.lines * KEY_LINE;
  return [
    `<svg class="chart" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-label="${escaped(title)}">`,
    ...axesSvg(chart, scales),
    ...chart.layers.map((layer) => layerSvg(layer, scales)),
    ...key.marks,
    '</svg>',
  ].join('\n');
}
