import { expect, test, vi } from 'vitest';
import { readLayout } from '../../src/layout/read-layout.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { reachOf } from '../../src/study/reach.js';
import { SolvedAssembly } from '../../src/study/rig.js';

const example = (name: string) => readLayout(`data/examples/${name}.yaml`).layout;

// Each wye is an allowance that is charged in full from a gallon a minute up: far out on a long lay many stand about there.
for (const [name, laterals] of [
  ['lay', [45, 60]],
  ['ridge', [36, 55]],
  ['downhill', [45, 55]],
  ['relay', [55, 80]],
] as const) {
  test(`every lay of ${name}.yaml with ${laterals.join(' and ')} laterals has its steady flow`, async () => {
    const { stagings } = await reachOf(example(name), { laterals, grades: [-0.3, 0, 0.5] });
    const limits = stagings.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.map(({ limit }) => limit)),
    );
    expect(new Set(limits)).not.toContain('no_steady_answer');
    expect(limits.length).toBeGreaterThan(5);
  });
}

test('a lay for which no steady flow is found leaves its own cell without a length, and no other', async () => {
  const solve = SolvedAssembly.prototype.solve;
  const spy = vi.spyOn(SolvedAssembly.prototype, 'solve').mockImplementation(function (this: SolvedAssembly) {
    if (this.assembly.nozzles.length === 3 && this.assembly.nozzles.every(({ state }) => state === 'open'))
      throw new NoSteadyAnswer({
        where: ['wye 1'],
        message: 'no steady flow was found',
        action: 'Look there.',
      });
    return solve.call(this);
  });
  const { stagings } = await reachOf(example('lay'), { laterals: [2, 0, 1], grades: [0] });
  spy.mockRestore();
  expect(stagings.some(({ overHose }) => overHose === undefined)).toBe(true);
  for (const { rows, overHose } of stagings) {
    const [two, none, one] = rows[0].cells;
    // Hose over its limit with every nozzle shut ends a cell before anything is solved for it.
    if (overHose) {
      expect(rows[0].cells.map(({ limit }) => limit)).toEqual(['hose', 'hose', 'hose']);
      continue;
    }
    expect(two).toEqual({ laterals: 2, length: 0, height: 0, limit: 'no_steady_answer' });
    expect(none.length).toBeGreaterThan(0);
    expect(one.limit).toBe('nozzle');
  }
});
