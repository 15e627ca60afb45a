import { test } from 'vitest';
import { checkAgrees } from './support/check-agrees.js';
import { holdsForDrawn } from './support/harness.js';

/** Thousands more are in the slow file. */
const LAYOUTS = 200;

test(
  'a check says one thing, however it is asked and however it is told',
  () => holdsForDrawn(LAYOUTS, checkAgrees),
  180_000,
);
