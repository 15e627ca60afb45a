import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { Draw } from '../../../src/drill/random.js';
import { trialOf } from '../../../src/study/trial/trial.js';
import { ALL, FULL_SHEET, LAYOUT, simulate } from './simulated.js';

const FAULTS = Number(process.env.FAULTS ?? 300);

test('of 300 simulated faults the right cause comes first in 80 %, and among the first three in 95 %', async () => {
  const draw = new Draw('trial faults');
  let first = 0;
  let three = 0;
  const missed: string[] = [];
  for (let i = 0; i < FAULTS; i++) {
    const { cause, size, readings } = await simulate(draw, ALL, FULL_SHEET);
    const { ranked, answer } = await trialOf(LAYOUT, readings);
    const place = ranked.findIndex(({ causes }) => causes.length === 1 && causes[0].id === cause.id);
    if (place === 0) first++;
    else missed.push(`${cause.id} ${size.toPrecision(3)} at ${place} ${answer.outcome}: ${ranked.slice(0, 3).map((r) => `${r.causes.map((c) => c.id).join('+')} ${r.chance.toFixed(2)} fit ${r.fits.toFixed(3)}`).join('; ')}`);
    if (place >= 0 && place < 3) three++;
  }
  writeFileSync('/tmp/bench-curve/missed.txt', `${first} ${three} of ${FAULTS}\n${missed.join('\n')}`);
  expect(first / FAULTS).toBeGreaterThanOrEqual(0.8);
  expect(three / FAULTS).toBeGreaterThanOrEqual(0.95);
}, 600_000);
