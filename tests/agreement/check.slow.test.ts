import { test } from 'vitest';
import { checkAgrees } from './support/check-agrees.js';
import { holdsForDrawn } from './support/harness.js';

/** PUMPYOKE_LAYOUTS=5000 draws as many; a run of all tests fewer. */
const LAYOUTS = Number(process.env.PUMPYOKE_LAYOUTS ?? 600);

test(
  'a check says one thing, however it is asked and however it is told, of thousands of layouts',
  () => holdsForDrawn(LAYOUTS, checkAgrees),
  3_600_000,
);
