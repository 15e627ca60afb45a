import { expect, test } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { checkLayout } from '../../src/study/rating.js';
import { Random } from '../support/random.js';
import { randomLayout } from '../support/random-engine.js';

const catalogue = loadCatalogue();
const read = (document: unknown) =>
  readLayoutText(JSON.stringify(document), 'layout.yaml', { catalogue }).layout;
const layoutOf = (seed: number) => read(randomLayout(new Random(seed)));

/** What a network may be refused for; that a solve did not come to an end is not among them. */
const NAMED = /^(no_source|cut_off_demand|engine_hunts) /;
/** The refusal of engines whose speeds settle nowhere. */
const HUNTS = /^engine_hunts /;

/**
 * Those of 10,000 whose engines are refused by name: two in parallel, where one would run away from the balance if the other stood still.
 */
const HUNTING = [3473];

interface Ends {
  answered: number;
  refused: string[];
  /** Those of the refused whose engines hunt. */
  hunts: string[];
  lost: string[];
  most: number;
}

/** Asks a question of many random layouts and counts how each of them ends. */
async function endsOf(
  seeds: { from: number; count: number },
  ask: (seed: number) => Promise<{ solver: { iterations: number; energyResidual: number } }>,
): Promise<Ends> {
  const ends: Ends = { answered: 0, refused: [], hunts: [], lost: [], most: 0 };
  for (let seed = seeds.from; seed < seeds.from + seeds.count; seed++) {
    try {
      const { solver } = await ask(seed);
      ends.answered++;
      ends.most = Math.max(ends.most, solver.iterations);
      if (!(solver.energyResidual < 1)) ends.lost.push(`${seed}: residual ${solver.energyResidual}`);
    } catch (error) {
      if (error instanceof NoSteadyAnswer && NAMED.test(error.detail ?? '')) {
        ends.refused.push(`${seed}: ${error.message}`);
        if (HUNTS.test(error.detail ?? '')) ends.hunts.push(`${seed}: ${error.message}`);
      } else
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
test(
  `no rule of state cycles on ${LAYOUTS} random layouts: each ends in an answer or a named refusal`,
  async () => {
    const ends = await endsOf({ from: 1, count: LAYOUTS }, (seed) => operateLayout(layoutOf(seed)));
    expect(ends.lost).toEqual([]);
    const hunting = ends.hunts.map((one) => Number.parseInt(one, 10));
    // Both ways: one more fails, and so does one less.
    expect(hunting, ends.hunts.join('\n')).toEqual(HUNTING.filter((seed) => seed <= LAYOUTS));
    expect(ends.answered).toBeGreaterThan(0.9 * LAYOUTS);
    expect(ends.most).toBeLessThan(100);
  },
  Math.max(900_000, 500 * LAYOUTS),
);

test('a check of 60 random layouts ends too, with every staging, place, wear and limit in it', async () => {
  const ends = await endsOf({ from: 20_001, count: 60 }, (seed) => checkLayout(layoutOf(seed)));
  expect(ends.lost).toEqual([]);
  expect(ends.answered).toBeGreaterThan(40);
});

/** A layout whose pumps have efficiencies that leap from each row to the next, as no real pump's do, on engines most of which are short of power. */
function steepLayout(seed: number) {
  const document = randomLayout(new Random(seed)) as ReturnType<typeof JSON.parse>;
  const random = new Random(7 * seed + 1);
  for (const { model } of Object.values<ReturnType<typeof JSON.parse>>(document.engine.pumps)) {
    const last = Number.parseFloat(model.points[4][0]);
    const shutoff = Number.parseFloat(model.points[0][1]);
    model.efficiency = [0.15, 0.35, 0.55, 0.75, 0.95].map((part) => [
      `${(part * last).toPrecision(4)} gpm`,
      `${random.between(8, 80).toPrecision(3)} %`,
    ]);
    model.power = {
      rated: `${((shutoff * last) / 1714 / random.between(0.4, 2.2)).toPrecision(4)} hp`,
      lugging: random.pick(['constant_power', 'flat_torque']),
    };
  }
  return read(document);
}

test('efficiencies that leap from row to row end in an answer too, or are named: one engine alone always settles', async () => {
  const ends = await endsOf({ from: 1, count: 300 }, (seed) => operateLayout(steepLayout(seed)));
  expect(ends.lost).toEqual([]);
  for (const refusal of ends.hunts) expect(refusal).toMatch(/pump a and pump b would settle at: .* row/);
  expect(ends.hunts.length).toBeLessThan(0.01 * 300);
  expect(ends.answered).toBeGreaterThan(0.95 * 300);
}, 900_000);

test('so do checks of them, which draw flows that a nozzle would not, up to and past what the engines can give', async () => {
  const ends = await endsOf({ from: 1, count: 15 }, (seed) => checkLayout(steepLayout(seed)));
  expect(ends.lost).toEqual([]);
  expect(ends.answered).toBeGreaterThan(0.9 * 15);
}, 900_000);
