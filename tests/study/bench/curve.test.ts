import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { pumpSchema } from '../../../src/catalogue/schema/pump.js';
import { LayoutProblems } from '../../../src/layout/problem.js';
import { readLayoutText } from '../../../src/layout/read-layout.js';
import { readBench, readBenchText } from '../../../src/readings/read-bench.js';
import { curveDocument } from '../../../src/report/bench/curve-document.js';
import { curveTree } from '../../../src/report/bench/json-curve.js';
import { curveJson } from '../../../src/report/bench/json-schema-curve.js';
import { curveRow, curveRowYaml } from '../../../src/report/bench/write-row.js';
import { htmlOf } from '../../../src/report/html.js';
import { treeInUnits } from '../../../src/report/json.js';
import { markdownOf } from '../../../src/report/markdown.js';
import { textOf } from '../../../src/report/text.js';
import { curveOf } from '../../../src/study/bench/curve.js';
import { checkLayout } from '../../../src/study/rating.js';

const PSI = 6894.757293168361;
const EXAMPLE = `${import.meta.dirname}/../../../data/examples/bench.csv`;

/** Readings of demo-highlift less a part of its pressure, on gauges at one height and in one bore, at several speeds. */
function readingsOf(wear: number, extra = '', speeds = [6500]): string {
  const points = [
    [0, 415],
    [0, 415],
    [30, 385],
    [60, 318],
    [85, 228],
    [105, 110],
  ];
  const rows = points.map(([flow, pressure], i) => {
    const speed = speeds[i % speeds.length];
    const ratio = speed / 6500;
    return `${flow * ratio}, ${pressure * (1 - wear) * ratio ** 2 - 2}, -2, ${speed}`;
  });
  rows[1] = rows[1].replace(/, -2,/, ', -1.9,');
  return `pump, demo-highlift\n${extra}\nflow gpm, discharge psi, inlet psi, speed rpm\n${rows.join('\n')}\n`;
}

const messagesOf = (text: string): string => {
  try {
    readBenchText(text, 'bench.csv');
  } catch (error) {
    if (error instanceof LayoutProblems) return error.message;
    throw error;
  }
  throw new Error('nothing was wrong with it');
};

describe('the curve of bench readings', () => {
  test('finds a wear that was put in, whatever the speeds that it was read at', async () => {
    for (const speeds of [[6500], [6500, 6200, 6700]]) {
      const { wear } = await curveOf(readBenchText(readingsOf(0.05, '', speeds), 'bench.csv'));
      expect(wear?.wear).toBeCloseTo(0.05, 3);
      expect(wear?.proven).toBe(true);
      expect(wear?.lies).toBe('evenly');
    }
  });

  test('says that shutoff was measured, and that it was not', async () => {
    const whole = readingsOf(0);
    const without = `${whole.replace(/^0, .*\n/gm, '')}45, 356, -2, 6500\n70, 285, -2, 6500\n`;
    expect((await curveOf(readBenchText(whole, 'b.csv'))).shutoff.basis).toBe('measured');
    const answer = await curveOf(readBenchText(without, 'b.csv'));
    expect(answer.shutoff.basis).toBe('extrapolated');
    expect(answer.row.points[0].flow).toBeCloseTo(30 * 6.30902e-5, 6);
    expect(answer.notes.some(({ template }) => template.startsWith('Shutoff was not measured'))).toBe(true);
  });

  test('names the one bad reading of the example, and leaves it out', async () => {
    const answer = await curveOf(readBench(EXAMPLE));
    expect(answer.odd?.line).toBe(21);
    expect(answer.readings.filter(({ odd }) => odd).map(({ line }) => line)).toEqual([21]);
    // The example was drawn with 4.5 % and a scatter of 1.5 psi.
    expect(answer.wear?.low).toBeLessThan(0.045);
    expect(answer.wear?.high).toBeGreaterThanOrEqual(0.0445);
  });

  test('counts the velocity heads and the heights of the gauges', async () => {
    const plain = await curveOf(readBenchText(readingsOf(0), 'b.csv'));
    const set = 'discharge bore, 1.5 in\ninlet bore, 2 in\ndischarge height, 2 ft';
    const corrected = await curveOf(readBenchText(readingsOf(0, set), 'b.csv'));
    const more = (i: number) => (corrected.readings[i].pressure - plain.readings[i].pressure) / PSI;
    expect(more(0)).toBeCloseTo(2 * 0.4331, 3);
    // NWCG's velocity pressure, Q^2 / 891 d^4, is 2.444 psi at 105 gpm in 1.5 in and 0.773 in 2 in (computed).
    const velocity = 105 ** 2 / 891 / 1.5 ** 4 - 105 ** 2 / 891 / 2 ** 4;
    expect(more(5) - more(0)).toBeCloseTo(velocity, 2);
  });

  test('makes a row that a layout takes and that runs as the fitted curve does', async () => {
    for (const shape of ['power', 'quadratic', 'monotone'] as const) {
      const bench = readBench(EXAMPLE);
      const answer = await curveOf(bench, { shape });
      const row = parse(curveRowYaml(answer, bench, 'us'));
      const pump = pumpSchema.parse(row);
      expect(pump.limits?.casing).toBeCloseTo(600 * PSI, 0);
      expect(pump.uncertainty).toBeGreaterThan(0.003);
      const layout = `engine: {name: e, tank: {capacity: 500 gal, outlet_height: 1 ft}, pumps: {a: {model: ${JSON.stringify(row)}}}}\nstaging: a\ntyping: {custom: {flow: 48 gpm, pressure: 300 psi}}`;
      const check = await checkLayout(readLayoutText(layout, 'l.yaml').layout);
      const expected = answer.curve.reduce((near, one) =>
        Math.abs(one.flow - 48 * 6.30902e-5) < Math.abs(near.flow - 48 * 6.30902e-5) ? one : near,
      );
      const tank = 0.433 * PSI;
      expect(
        Math.abs((check.atRequiredFlow?.pressure ?? 0) - tank - expected.pressure) / expected.pressure,
      ).toBeLessThan(0.01);
    }
  });

  test('is read from YAML as from CSV', async () => {
    const rows = [
      [0, 410],
      [30, 380],
      [60, 313],
      [85, 223],
      [105, 105],
    ].map(
      ([flow, psi]) => `  - {flow: ${flow} gpm, discharge: ${psi} psi, vacuum: 4 inHg, speed: "6,500 rpm"}`,
    );
    const text = `pump: demo-highlift\nwater_temperature: 60 degF\nreadings:\n${rows.join('\n')}\n`;
    const { readings, compared } = readBenchText(text, 'bench.yaml');
    expect(readings).toHaveLength(5);
    expect(readings[0].inlet / PSI).toBeCloseTo(-1.9647, 3);
    expect(compared?.name).toBe('demo-highlift');
  });

  test('prints in every look, its JSON by its schema', async () => {
    const bench = readBench(EXAMPLE);
    const answer = await curveOf(bench);
    for (const units of ['us', 'si'] as const) {
      const tree = treeInUnits(curveTree(answer, curveRow(answer, bench, units), units), units);
      expect(z.safeParse(curveJson, tree).error).toBeUndefined();
      const document = curveDocument(answer, units);
      const text = textOf(document, { width: 80 });
      expect(text.split('\n').length).toBeLessThanOrEqual(41);
      expect(markdownOf(document)).toContain('LEFT OUT');
      expect(htmlOf(document)).toContain('<svg class="chart"');
    }
  });
});

describe('wrong readings', () => {
  const good = readingsOf(0.03);
  const WRONG: [string, string, RegExp][] = [
    [
      'a missing column',
      good.replace(/speed rpm/, 'x').replaceAll(', 6500', ', 1'),
      /the column speed is missing[\s\S]*no column x is known here/,
    ],
    [
      'a column without a unit',
      good.replace('discharge psi', 'discharge'),
      /5:|has no unit, and the header of discharge says none/,
    ],
    ['a unit of another kind', good.replace('flow gpm', 'flow psi'), /psi is a pressure, and flow is a flow/],
    ['a unit that is none', good.replace('flow gpm', 'flow gmp'), /gmp is no unit/],
    [
      'a blank cell',
      good.replace('30, 371', '30, , 1').replace('30, 37', '30, '),
      /nothing stands under|cells and the header/,
    ],
    ['decimal commas', good.replace('-1.9', '-1,9'), /cells and the header 4[\s\S]*point/],
    ['decimal commas among semicolons', good.replaceAll(', ', '; ').replace('-1.9', '-1,9'), /-1,9/],
    ['a pump that is not known', good.replace('demo-highlift', 'demo-higlift'), /did you mean demo-highlift/],
    [
      'readings in kPa under psi',
      good.replace(/^(\d+), ([\d.]+)/gm, (_, q, p) => `${q}, ${(Number(p) * 6.895).toFixed(0)}`),
      /times what demo-highlift makes/,
    ],
    [
      'L/min under gpm',
      good.replace(/^(\d+), /gm, (_, q) => `${(Number(q) * 3.785).toFixed(0)}, `),
      /times the last point/,
    ],
    [
      'columns exchanged',
      good.replace('discharge psi, inlet psi', 'inlet psi, discharge psi'),
      /no higher than the inlet/,
    ],
    ['engine speed', good.replaceAll('6500', '2400'), /too far from the rated 6500 rpm/],
    [
      'a vacuum without a sign',
      good.replace('inlet psi', 'inlet inHg').replaceAll('-2', '2').replace('-1.9', '1.9'),
      /vacuum inHg/,
    ],
    ['too few readings', good.split('\n').slice(0, 6).join('\n'), /too few/],
    ['no speed of the curve', good.replace('pump, demo-highlift', ''), /at what speed/],
    ['nothing at all', '', /no readings/],
    ['a layout', 'engine: x\nstaging: a\n', /no header|no list/],
  ];
  for (const [name, text, expected] of WRONG)
    test(`${name} is answered with the place and what to write`, () => {
      const message = messagesOf(text);
      expect(message).toMatch(expected);
      expect(message).toMatch(/bench\.csv:\d+:\d+/);
    });

  test('a row that repeats another in every figure is counted once', () => {
    const bench = readBenchText(`${good}${good.trim().split('\n').at(-1)}\n`, 'b.csv');
    expect(bench.copies).toEqual([{ line: 10, of: 9 }]);
    expect(bench.readings).toHaveLength(6);
  });
});
