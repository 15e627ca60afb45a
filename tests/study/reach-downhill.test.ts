import { describe, expect, it } from 'vitest';
import { toJson } from '../../src/report/json.js';
import { reachDocument } from '../../src/report/reach-document.js';
import { textOf } from '../../src/report/text.js';
import { operateLayout } from '../../src/study/operation.js';
import { reachOf } from '../../src/study/reach.js';
import { engine, FOOT, layoutOf, PSI } from './support.js';

const weak = '{points: [[0 gpm, 40 psi], [40 gpm, 30 psi], [80 gpm, 20 psi], [160 gpm, 2 psi]]}';
const strong = '{points: [[0 gpm, 250 psi], [60 gpm, 200 psi], [120 gpm, 60 psi]]}';
const lay = (hose: string) =>
  `lay:\n  left:\n    - {hose: ${hose}, length: 300 ft}\n    - {nozzle: {kind: fog, flow: 30 gpm, pressure: 50 psi}, name: far}\n`;
const OPEN = '{inside_diameter: 1.5 in, coefficient: 24}';
const TESTED = '{inside_diameter: 1.5 in, coefficient: 24, limits: {service_test: 300 psi}}';

const cellOf = async (text: string, grade: number) => {
  const answer = await reachOf(layoutOf(text), { grades: [grade], laterals: [0] });
  const cell = answer.stagings.find(({ staging }) => staging === 'a')?.rows[0].cells[0];
  if (cell === undefined) throw new Error('no cell');
  return { cell, answer };
};

describe('reach downhill', () => {
  it('is found where short lays fall short and longer ones gain height enough', async () => {
    const text = `${engine('', weak)}staging: a\n${lay(OPEN)}`;
    const { cell } = await cellOf(text, -0.5);
    expect(cell.length / FOOT).toBeGreaterThan(300);
    expect((cell.from ?? 0) / FOOT).toBeGreaterThan(1);
    expect((cell.from ?? 0) / FOOT).toBeLessThan(300);
    // 300 ft of it do, as laid out.
    const laid = layoutOf(text.replace('length: 300 ft', 'length: 300 ft, rise: -50 %'));
    const [{ pressure }] = (await operateLayout(laid)).nozzles;
    expect(pressure / PSI).toBeGreaterThan(50);
  });

  it('ends where hose comes to its limit with every nozzle shut, and says so', async () => {
    const text = `${engine('', strong)}staging: a\n${lay(TESTED)}`;
    const { cell, answer } = await cellOf(text, -0.5);
    expect(cell.limit).toBe('hose');
    // 250 psi at the outlet and 50 psi of height: 115 ft of fresh water, 258 ft of hose at 50 %.
    const height = (50 * PSI) / (answer.site.waterDensity * 9.80665);
    expect(-cell.height).toBeCloseTo(height, 0);
    expect(-cell.height).toBeLessThanOrEqual(height + 1e-6);
    expect(textOf(reachDocument(answer, 'us'))).toMatch(/\d ft H/);
    expect(JSON.stringify(toJson(answer, 'us'))).toContain('"limit":"hose"');
  });

  it('is none where hose stands over its limit at the outlet already', async () => {
    const { cell, answer } = await cellOf(
      `${engine('', strong)}staging: a\n${lay(TESTED.replace('300 psi', '200 psi'))}`,
      0,
    );
    expect(cell).toMatchObject({ length: 0, limit: 'hose' });
    expect(textOf(reachDocument(answer, 'us'))).toMatch(/^REACHES NOTHING/);
  });
});
