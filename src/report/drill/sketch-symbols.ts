import type { SketchPart } from '../../drill/problem.js';
import type { Mark } from '../drawing.js';

type Symbolic = Extract<SketchPart, { kind: 'source' | 'pump' | 'appliance' | 'gauge' | 'nozzle' }>;

/** Room that a symbol takes about the axis of its line. */
export const SYMBOL: Record<Symbolic['kind'], { width: number; above: number; below: number }> = {
  source: { width: 44, above: 18, below: 22 },
  pump: { width: 30, above: 17, below: 17 },
  appliance: { width: 12, above: 10, below: 10 },
  gauge: { width: 20, above: 30, below: 8 },
  nozzle: { width: 26, above: 10, below: 12 },
};

const wave = (x: number, y: number, width: number): Mark => {
  const points = Array.from({ length: 13 }, (_, i): [number, number] => [
    x + (i * width) / 12,
    y + (i % 4 === 1 ? -2 : i % 4 === 3 ? 2 : 0),
  ]);
  return { kind: 'line', style: 'thin', points };
};

const line = (...points: [number, number][]): Mark => ({ kind: 'line', style: 'thin', points });

function source(what: Extract<SketchPart, { kind: 'source' }>['what'], x: number): Mark[] {
  const hose: Mark = {
    kind: 'line',
    style: 'hose',
    points: [
      [x, 0],
      [x + 22, 0],
    ],
  };
  switch (what) {
    case 'hydrant':
      return [
        { kind: 'box', at: [x - 8, -10], size: [16, 28] },
        { kind: 'circle', at: [x, -10], radius: 8 },
        { kind: 'circle', at: [x, 0], radius: 4, filled: true },
        hose,
      ];
    case 'draft':
      return [
        wave(x - 22, 10, 34),
        wave(x - 22, 16, 34),
        {
          kind: 'line',
          style: 'hose',
          points: [
            [x - 5, 18],
            [x - 5, 0],
            [x + 22, 0],
          ],
        },
      ];
    case 'tender':
      return [
        { kind: 'box', at: [x - 20, -12], size: [32, 20] },
        { kind: 'circle', at: [x - 13, 12], radius: 5 },
        { kind: 'circle', at: [x + 5, 12], radius: 5 },
        {
          ...hose,
          points: [
            [x + 12, 0],
            [x + 22, 0],
          ],
        },
      ];
    case 'tank':
      return [
        { kind: 'box', at: [x - 22, -16], size: [36, 32] },
        wave(x - 22, -8, 36),
        {
          ...hose,
          points: [
            [x + 14, 0],
            [x + 22, 0],
          ],
        },
      ];
  }
}

const pump = (x: number): Mark[] => [
  { kind: 'circle', at: [x, 0], radius: 15 },
  {
    kind: 'shape',
    points: [
      [x - 7, -11],
      [x + 14, 0],
      [x - 7, 11],
    ],
  },
];

const gauge = (x: number): Mark[] => [
  {
    kind: 'line',
    style: 'hose',
    points: [
      [x - 10, 0],
      [x + 10, 0],
    ],
  },
  line([x, 0], [x, -10]),
  { kind: 'circle', at: [x, -19], radius: 9 },
  line([x, -19], [x + 5, -24]),
];

const nozzle = (x: number, shut: boolean): Mark[] => [
  {
    kind: 'shape',
    filled: true,
    points: [
      [x - 13, -5],
      [x + 7, -2],
      [x + 7, 2],
      [x - 13, 5],
    ],
  },
  ...(shut
    ? [line([x + 10, -9], [x + 10, 9])]
    : [line([x + 9, 0], [x + 13, 0]), line([x + 9, -2], [x + 13, -6]), line([x + 9, 2], [x + 13, 6])]),
];

/** A part of a lay, drawn about (x, 0). */
export function drawSymbol(part: Symbolic, x: number): Mark[] {
  switch (part.kind) {
    case 'source':
      return source(part.what, x);
    case 'pump':
      return pump(x);
    case 'appliance':
      return [
        {
          kind: 'shape',
          points: [
            [x - 6, 0],
            [x, -7],
            [x + 6, 0],
            [x, 7],
          ],
        },
      ];
    case 'gauge':
      return gauge(x);
    case 'nozzle':
      return nozzle(x, part.shut ?? false);
  }
}
