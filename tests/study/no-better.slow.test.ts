import { expect, test } from 'vitest';
import type { SweptQuantity } from '../../src/study/answer.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { checkLayout } from '../../src/study/rating.js';
import { read } from '../caution/sound.js';
import { Random } from '../support/random.js';
import { randomLayout } from '../support/random-engine.js';

/** Rounding of what a solve finds, Pa. */
const FOUND = 20;

/**
 * Layouts whose pumps take more power as they move more, as centrifugal pumps do: the rows of the others are drawn without regard to
 * that.
 */
function layouts(count: number, from: number) {
  return Array.from({ length: count }, (_, index) => {
    const document = randomLayout(new Random(from + index)) as ReturnType<typeof JSON.parse>;
    document.lay = [];
    document.supply = 'tank';
    if (document.staging === 'separate') document.staging = 'parallel';
    document.engine.outlets = undefined;
    for (const name of ['a', 'b']) {
      const { points } = document.engine.pumps[name].model;
      const gpm = (row: string[]) => Number.parseFloat(row[0]);
      document.engine.pumps[name].model.efficiency = [
        [`${0.4 * gpm(points[4])} gpm`, '45 %'],
        [`${gpm(points[4])} gpm`, '20 %'],
      ];
    }
    return document;
  });
}

const SWEEPS: { of: SweptQuantity; values: number[] }[] = [
  { of: 'elevation', values: [0, 600, 1500, 3000, 4500] },
  { of: 'air_temperature', values: [270, 290, 303, 310, 318] },
  { of: 'wear', values: [0, 0.03, 0.1, 0.25] },
  { of: 'tank_level', values: [1, 0.7, 0.4, 0] },
];

for (const sweep of SWEEPS) {
  test(`more of ${sweep.of.replace('_', ' ')} in that order is never better, on 25 random engines`, async () => {
    let judged = 0;
    for (const document of layouts(25, 40_000)) {
      const rows = await rowsOf(document, sweep);
      for (let i = 1; i < rows.length; i++) {
        const [before, after] = [rows[i - 1], rows[i]];
        const size = Math.max(FOUND, 1e-6 * Math.abs(before.pressure ?? 0));
        if (after.pressure !== undefined) {
          expect(before.pressure, JSON.stringify(document)).toBeDefined();
          expect(after.pressure).toBeLessThanOrEqual((before.pressure ?? 0) + size);
        }
        if (after.verdict === 'meets') expect(before.verdict).toBe('meets');
        judged++;
      }
    }
    expect(judged).toBeGreaterThan(40);
  });
}

async function rowsOf(document: unknown, sweep: (typeof SWEEPS)[number]) {
  try {
    const { across } = await checkLayout(read(document), { across: [sweep] });
    return across[0].rows;
  } catch (error) {
    if (error instanceof NoSteadyAnswer) return [];
    throw error;
  }
}
