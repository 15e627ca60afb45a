import { describe, expect, test } from 'vitest';
import type { Chart } from '../../../src/report/chart/chart.js';
import { chartSvg } from '../../../src/report/chart/chart-svg.js';
import { scalesOf, ticksOf } from '../../../src/report/chart/scales.js';
import type { Document } from '../../../src/report/document.js';
import { htmlOf } from '../../../src/report/html.js';
import { markdownOf } from '../../../src/report/markdown.js';
import { textOf } from '../../../src/report/text.js';

const chart: Chart = {
  x: { title: 'flow', unit: 'gpm', from: 0 },
  y: { title: 'pressure', unit: 'psi' },
  layers: [
    {
      kind: 'band',
      name: '90 % band',
      points: [
        { x: 0, low: 390, high: 410 },
        { x: 97, low: 180, high: 220 },
      ],
    },
    {
      kind: 'line',
      name: 'fitted',
      points: [
        [0, 400],
        [97, 200],
      ],
    },
    {
      kind: 'points',
      name: 'readings <raw>',
      symbol: 'ring',
      points: [{ x: 50, y: 300, low: 296, high: 304, label: 'line 7' }],
    },
    { kind: 'columns', name: 'draws', columns: [{ from: 10, to: 20, y: 30 }] },
    { kind: 'rule', name: 'passes at 250 psi', axis: 'y', at: 250 },
  ],
};
const FRAME = { left: 0, right: 100, top: 0, bottom: 100 };

describe('a chart', () => {
  test('has axes whose ends are round and hold everything drawn', () => {
    const { x, y } = scalesOf(chart, FRAME);
    expect(x.domain()).toEqual([0, 100]);
    expect(y.domain()[0]).toBe(0);
    expect(y.domain()[1]).toBeGreaterThanOrEqual(410);
    expect(x(50)).toBeCloseTo(50);
    expect(y(0)).toBe(100);
  });

  test('writes its ticks in plain figures, minus signs too', () => {
    const { y } = scalesOf(
      { ...chart, y: { title: 'off', unit: 'psi', from: -20, to: 20 }, layers: [] },
      FRAME,
    );
    const texts = ticksOf(y, 'y').map(({ text }) => text);
    expect(texts).toContain('-10');
    expect(texts).toContain('20');
  });

  test('names its axes with their units, and each layer in its key or on its line', () => {
    const svg = chartSvg(chart, 'Readings over the curve').replaceAll('\u00a0', ' ');
    for (const words of [
      'flow, gpm',
      'pressure, psi',
      '90 % band',
      'fitted',
      'draws',
      'passes at 250 psi',
      'line 7',
    ])
      expect(svg).toContain(`>${words}<`);
    expect(svg).toContain('readings &lt;raw&gt;');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('draws one point and no points at all', () => {
    const lone = {
      ...chart,
      layers: [{ kind: 'points', name: 'one', symbol: 'cross', points: [{ x: 5, y: 5 }] }],
    } as Chart;
    for (const one of [lone, { ...chart, layers: [] }])
      expect(chartSvg(one, 'x')).not.toMatch(/NaN|Infinity/);
  });

  test('stands in HTML alone, with its looks only where it stands', () => {
    const document: Document = {
      title: 't',
      blocks: [{ kind: 'group', blocks: [{ kind: 'chart', words: 'w', chart }] }],
    };
    const html = htmlOf(document);
    expect(html).toContain('<svg class="chart"');
    expect(html).toContain('svg.chart .band');
    expect(htmlOf({ title: 't', blocks: [] })).not.toContain('svg.chart');
    expect(textOf(document, { width: 80, colour: false }).trim()).toBe('');
    expect(markdownOf(document).trim()).toBe('');
  });
});
