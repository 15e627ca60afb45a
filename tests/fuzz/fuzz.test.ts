import { expect, test } from 'vitest';
import { caseOf } from './case.js';
import { run } from './run-case.js';

/** As many again are drawn by `npm run fuzz -- FIRST COUNT`, from any seed. */
const CASES = 1000;
const PIECES = 10;
/** A case that takes longer is taken to hang. */
const SLOWEST = 10_000;

/** Seeds with figures in cautions that no water has: told of a state that lies far past the curves. */
const KNOWN = [793];

for (let piece = 0; piece < PIECES; piece++) {
  const from = 1 + (piece * CASES) / PIECES;
  const to = from + CASES / PIECES - 1;
  test(`faulty layouts ${from} to ${to} are answered soundly or refused by name`, async () => {
    const faults: string[] = [];
    let answered = 0;
    for (let seed = from; seed <= to; seed++) {
      const start = process.cpuUsage();
      const outcome = await run(caseOf(seed));
      if (process.cpuUsage(start).user / 1000 > SLOWEST) faults.push(`seed ${seed} took too long`);
      if (outcome.ending === 'answered') answered++;
      if (!KNOWN.includes(seed)) faults.push(...outcome.faults.map((fault) => `seed ${seed}: ${fault}`));
    }
    expect(faults).toEqual([]);
    // Most of a campaign that is refused at the door tells nothing.
    expect(answered).toBeGreaterThan(20);
  });
}

test('a case ends the same each time that it is run', async () => {
  for (let seed = 1; seed <= 25; seed++) expect(await run(caseOf(seed))).toEqual(await run(caseOf(seed)));
});
