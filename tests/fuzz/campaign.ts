import { writeFileSync } from 'node:fs';
import { caseOf } from './case.js';
import { run } from './run-case.js';

/** Cases one after another, told at the terminal: `npm run fuzz -- FIRST COUNT`. */
const first = Number(process.argv[2] ?? 1);
const count = Number(process.argv[3] ?? 20_000);

const SLOWEST = 10_000;
const ends = { answered: 0, refused: 0, fault: 0 };
let slow = { seed: 0, time: 0 };
let found = 0;
for (let seed = first; seed < first + count; seed++) {
  const one = caseOf(seed);
  const start = performance.now();
  const { ending, faults } = await run(one);
  const time = performance.now() - start;
  if (time > slow.time) slow = { seed, time };
  if (time > SLOWEST) faults.push(`took ${Math.round(time)} ms`);
  ends[ending]++;
  if (faults.length === 0) continue;
  found++;
  process.stdout.write(`seed ${seed} ${one.command}: ${faults.join('; ')}\n`);
  if (process.env.FUZZ_KEEP)
    writeFileSync(`${process.env.FUZZ_KEEP}/${seed}.json`, JSON.stringify(one.document, null, 1));
}
const { maxRSS } = process.resourceUsage();
process.stdout.write(
  `${count} from seed ${first}: ${ends.answered} answered, ${ends.refused} refused, ${ends.fault} faults of the program's own; ${found} to look at; slowest seed ${slow.seed}, ${Math.round(slow.time)} ms; ${Math.round(maxRSS / 1024)} MB at most\n`,
);
process.exitCode = found > 0 ? 1 : 0;
