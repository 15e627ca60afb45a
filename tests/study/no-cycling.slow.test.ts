import { expect, test } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { Random } from '../support/random.js';
import { randomLayout } from '../support/random-engine.js';

const catalogue = loadCatalogue();
const layoutOf = (seed: number) =>
  readLayoutText(JSON.stringify(randomLayout(new Random(seed))), 'layout.yaml', { catalogue }).layout;

/** What a network may be refused for; that a solve did not come to an end is not among them. */
const NAMED = /^(no_source|cut_off_demand) /;

/**
 * Faults that are known and open: engines whose efficiency falls so steeply from one row to the next that they are pulled down just
 * there (in each the pump named loses more than half of it between two rows), one layout in three hundred of these. The solver gives up with the pump named instead of finding the flow; it neither loops
 * without end nor gives a wrong answer. A seed that is found again must leave the list.
 */
const NOT_FOUND_YET = [44, 411, 829, 1113, 1128, 8277];

interface Ends {
  answered: number;
  refused: string[];
  lost: string[];
  most: number;
}

/** Asks a question of many random layouts and counts how each of them ends. */
async function endsOf(
  seeds: { from: number; count: number },
  ask: (seed: number) => Promise<{ solver: { iterations: number; energyResidual: number } }>,
): Promise<Ends> {
  const ends: Ends = { answered: 0, refused: [], lost: [], most: 0 };
  for (let seed = seeds.from; seed < seeds.from + seeds.count; seed++) {
    try {
      const { solver } = await ask(seed);
      ends.answered++;
      ends.most = Math.max(ends.most, solver.iterations);
      if (!(solver.energyResidual < 1)) ends.lost.push(`${seed}: residual ${solver.energyResidual}`);
    } catch (error) {
      if (error instanceof NoSteadyAnswer && NAMED.test(error.detail ?? ''))
        ends.refused.push(`${seed}: ${error.message}`);
      else
        ends.lost.push(
          `${seed}: ${error instanceof Error ? `${error.message} ${(error as NoSteadyAnswer).detail ?? ''}` : error}`,
        );
    }
  }
  return ends;
}

/** Ten thousand were drawn when the rules were made, and are again by PUMPYOKE_LAYOUTS=10000; a run of all tests draws fewer. */
const LAYOUTS = Number(process.env.PUMPYOKE_LAYOUTS ?? 1500);

// Check valves, relief valves, cooling lines, governors, engines at their limit and automatic nozzles all at once.
test(`no rule of state cycles on ${LAYOUTS} random layouts: each ends in an answer or a named refusal`, async () => {
  const ends = await endsOf({ from: 1, count: LAYOUTS }, (seed) => operateLayout(layoutOf(seed)));
  const lost = ends.lost.map((one) => Number.parseInt(one, 10));
  // Both ways: a new fault fails, and so does a known one that has been mended and still stands in the list.
  expect(lost, ends.lost.join('\n')).toEqual(NOT_FOUND_YET.filter((seed) => seed <= LAYOUTS));
  expect(ends.answered + ends.refused.length + ends.lost.length).toBe(LAYOUTS);
  expect(ends.answered).toBeGreaterThan(0.9 * LAYOUTS);
  expect(ends.most).toBeLessThan(100);
}, 900_000);

test('a check of 60 random layouts ends too, with every staging, place, wear and limit in it', async () => {
  const ends = await endsOf({ from: 20_001, count: 60 }, (seed) => checkLayout(layoutOf(seed)));
  expect(ends.lost).toEqual([]);
  expect(ends.answered + ends.refused.length).toBe(60);
  expect(ends.answered).toBeGreaterThan(40);
});
