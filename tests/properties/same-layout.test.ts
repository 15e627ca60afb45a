import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, layoutFrom } from '../support/layouts.js';
import { Random } from '../support/random.js';
import { inSi, reordered } from '../support/random-layout.js';
import { flowOf, layouts, PATIENCE, SEED } from './support.js';

const RUNS = { numRuns: 20, seed: SEED, endOnFailure: true };

/** What the units of the input may move an answer by: a part of the figure, or of the least that is told. */
const RELATIVE = 1e-9;
/** 1e-9 m3/s is 0.00002 gpm, 1e-2 Pa a millionth of a psi; the solver promises 1e-8 m3/s and 1e-6 m (0.01 Pa). */
const LEAST_FLOW = 1e-9;
const LEAST_PRESSURE = 2e-2;

function expectNear(one: number, other: number, least: number, what: string): void {
  const allowed = Math.max(RELATIVE * Math.max(Math.abs(one), Math.abs(other)), least);
  expect(Math.abs(one - other), `${what}: ${one} and ${other}`).toBeLessThanOrEqual(allowed);
}

/** By name, what a flow answer says of every part. */
async function figures(document: Document) {
  const answer = await flowOf(document);
  return (
    answer && {
      nozzles: new Map(answer.nozzles.map((one) => [one.name, one])),
      pumps: new Map(answer.pumps.map((one) => [one.name, one])),
      points: new Map(answer.points.map((one) => [one.name, one])),
      cautions: answer.cautions.map(({ code, at }) => `${code} at ${at}`).sort(),
    }
  );
}

async function expectSame(document: Document, other: Document): Promise<void> {
  const [one, two] = [await figures(document), await figures(other)];
  if (one === undefined || two === undefined) {
    expect(one).toBe(two);
    return;
  }
  expect([...two.nozzles.keys()].sort()).toEqual([...one.nozzles.keys()].sort());
  for (const [name, nozzle] of one.nozzles) {
    const same = two.nozzles.get(name);
    expectNear(nozzle.flow, same?.flow as number, LEAST_FLOW, `flow of ${name}`);
    expectNear(nozzle.pressure, same?.pressure as number, LEAST_PRESSURE, `pressure of ${name}`);
    expect(same?.inRange).toBe(nozzle.inRange);
  }
  for (const [name, pump] of one.pumps) {
    const same = two.pumps.get(name);
    expectNear(pump.flow, same?.flow as number, LEAST_FLOW, `flow of ${name}`);
    expectNear(pump.headRise, same?.headRise as number, LEAST_PRESSURE, `rise of ${name}`);
    expect(same?.state).toBe(pump.state);
  }
  for (const [name, point] of one.points)
    expectNear(point.pressure, two.points.get(name)?.pressure as number, LEAST_PRESSURE, name);
  expect(two.cautions).toEqual(one.cautions);
}

describe('the same layout', () => {
  it(
    'in SI units has the same answer',
    async () => {
      await fc.assert(
        fc.asyncProperty(layouts(), async (document) => {
          const other = inSi(document) as Document;
          expect(JSON.stringify(other)).not.toMatch(/ (ft|psi|gpm|gal|in)"/);
          await expectSame(document, other);
        }),
        RUNS,
      );
    },
    PATIENCE,
  );

  it(
    'with its keys in another order has the same answer',
    async () => {
      await fc.assert(
        fc.asyncProperty(layouts(), fc.nat(), async (document, seed) => {
          await expectSame(document, reordered(document, new Random(seed)) as Document);
        }),
        RUNS,
      );
    },
    PATIENCE,
  );

  it(
    'is judged the same in SI units, and with its keys in another order',
    async () => {
      await fc.assert(
        fc.asyncProperty(layouts({}, 4), fc.nat(), async (document, seed) => {
          if ((await flowOf(document)) === undefined) return;
          const one = await checkLayout(layoutFrom(document));
          const other = reordered(inSi(document), new Random(seed)) as Document;
          const two = await checkLayout(layoutFrom(other));
          expect(two.verdict).toBe(one.verdict);
          // Flows and readings are closed in on to 10 Pa, from wherever the search comes.
          for (const [index, judged] of one.stagings.entries()) {
            const same = two.stagings[index];
            expect(same.staging).toBe(judged.staging);
            expect(same.verdict).toBe(judged.verdict);
            const pressure = judged.atRequiredFlow?.pressure ?? 0;
            expectNear(pressure, same.atRequiredFlow?.pressure ?? 0, 1, `pressure in ${judged.staging}`);
          }
        }),
        { ...RUNS, numRuns: 8 },
      );
    },
    PATIENCE,
  );
});
