import { expect, test } from 'vitest';
import type { Drawing, Mark } from '../../../src/report/drawing.js';
import { drawSketch } from '../../../src/report/drill/sketch.js';
import { svgOf } from '../../../src/report/svg.js';
import { everyPart, progressive, singleLine } from './sheets.js';

const LETTER = 6.2;
const LINE = 11;

/** What a mark covers: left, top, right, bottom. */
function extent(mark: Mark): [number, number, number, number] {
  switch (mark.kind) {
    case 'line':
    case 'shape': {
      const xs = mark.points.map(([x]) => x);
      const ys = mark.points.map(([, y]) => y);
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    }
    case 'circle': {
      const [x, y] = mark.at;
      return [x - mark.radius, y - mark.radius, x + mark.radius, y + mark.radius];
    }
    case 'box':
      return [mark.at[0], mark.at[1], mark.at[0] + mark.size[0], mark.at[1] + mark.size[1]];
    case 'label': {
      const half = (mark.text.length * LETTER) / 2;
      return [mark.at[0] - half, mark.at[1] - LINE + 2, mark.at[0] + half, mark.at[1] + 2];
    }
  }
}

const drawings: Record<string, Drawing> = {
  'a single line': drawSketch({ parts: singleLine().sketch?.parts ?? [], words: '' }),
  'every part': drawSketch({ parts: everyPart(), words: '' }),
  ...Object.fromEntries(
    [1, 2, 4, 6, 8, 10].map((count) => [
      `a trunk with ${count} laterals`,
      drawSketch({ parts: progressive(count).sketch?.parts ?? [], words: '' }),
    ]),
  ),
};

for (const [name, drawing] of Object.entries(drawings)) {
  test(`${name}: nothing is drawn outside the drawing`, () => {
    for (const mark of drawing.marks) {
      const [left, top, right, bottom] = extent(mark);
      expect(left).toBeGreaterThanOrEqual(-1);
      expect(top).toBeGreaterThanOrEqual(-1);
      expect(right).toBeLessThanOrEqual(drawing.width + 1);
      expect(bottom).toBeLessThanOrEqual(drawing.height + 1);
    }
  });

  test(`${name}: it is no wider than paper, so that its letters stay readable`, () => {
    expect(drawing.width).toBeLessThanOrEqual(700);
  });

  test(`${name}: no label lies on another`, () => {
    const labels = drawing.marks
      .filter((mark) => mark.kind === 'label')
      .map((mark) => ({ mark, box: extent(mark) }));
    for (const [i, a] of labels.entries()) {
      for (const b of labels.slice(i + 1)) {
        const apart =
          a.box[2] <= b.box[0] || b.box[2] <= a.box[0] || a.box[3] <= b.box[1] || b.box[3] <= a.box[1];
        expect(apart, `${a.mark.text} / ${b.mark.text}`).toBe(true);
      }
    }
  });

  test(`${name}: no hose runs through a label`, () => {
    const labels = drawing.marks
      .filter((mark) => mark.kind === 'label')
      .map((mark) => ({ mark, box: extent(mark) }));
    for (const line of drawing.marks) {
      if (line.kind !== 'line' || line.style !== 'hose') continue;
      for (const { mark, box } of labels) {
        for (const [index, [x1, y1]] of line.points.slice(1).entries()) {
          const [x0, y0] = line.points[index];
          for (let t = 0; t <= 1; t += 0.05) {
            const [x, y] = [x0 + t * (x1 - x0), y0 + t * (y1 - y0)];
            const inside = x > box[0] + 2 && x < box[2] - 2 && y > box[1] + 1 && y < box[3] - 1;
            expect(inside, mark.text).toBe(false);
          }
        }
      }
    }
  });
}

test('a drawing in a page is read out in words, and its labels are text', () => {
  const parts = [{ kind: 'pump' as const, label: '<pump & "co">' }];
  const svg = svgOf(drawSketch({ parts, words: '' }), 'pump "a"');
  expect(svg).toContain('aria-label="pump &quot;a&quot;"');
  expect(svg).toContain('&lt;pump');
});
