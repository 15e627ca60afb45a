import { test } from 'vitest';
import { checkAgrees } from './support/check-agrees.js';
import { holdsForDrawn } from './support/harness.js';

test(
  'a check says one thing, however it is asked and however it is told, of thousands of layouts',
  () => holdsForDrawn(5000, checkAgrees),
  3_600_000,
);
