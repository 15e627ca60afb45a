import { expect, test } from 'vitest';
import { Draw } from '../../../src/drill/random.js';
import { trialOf } from '../../../src/study/trial/trial.js';
import { ALL, FULL_SHEET, LAYOUT, simulate } from './simulated.js';

const FAULTS = 300;
const SOUND = 60;

test('of 300 simulated faults the right cause comes first in 80 %, and among the first three in 95 %', async () => {
  const draw = new Draw('trial faults');
  let first = 0;
  let three = 0;
  for (let i = 0; i < FAULTS; i++) {
    const { cause, readings } = await simulate(draw, ALL, FULL_SHEET);
    const { ranked } = await trialOf(LAYOUT, readings);
    const place = ranked.findIndex(({ causes }) => causes.length === 1 && causes[0].id === cause.id);
    if (place === 0) first++;
    if (place >= 0 && place < 3) three++;
  }
  expect(first / FAULTS).toBeGreaterThanOrEqual(0.8);
  expect(three / FAULTS).toBeGreaterThanOrEqual(0.95);
}, 600_000);

test('a sound truck is seldom called faulty, and nine readings in ten agree', async () => {
  const draw = new Draw('sound trucks');
  let cleared = 0;
  let agree = 0;
  let of = 0;
  for (let i = 0; i < SOUND; i++) {
    const { readings } = await simulate(draw, ALL, FULL_SHEET, undefined, true);
    const { answer, ranked } = await trialOf(LAYOUT, readings);
    if (
      answer.outcome === 'nothing_wrong' ||
      ranked.slice(0, answer.alike).some(({ causes }) => causes.length === 0)
    )
      cleared++;
    agree += answer.agree;
    of += answer.readings.length;
  }
  expect(cleared / SOUND).toBeGreaterThanOrEqual(0.8);
  expect(agree / of).toBeGreaterThanOrEqual(0.86);
  expect(agree / of).toBeLessThanOrEqual(0.94);
}, 600_000);
