import { describe, it } from 'vitest';
import { agree } from './field-support.js';

const SEED = Number(process.env.PROPERTY_SEED ?? 1988);
/** PUMPYOKE_LAYOUTS=5000 draws as many; a run of all tests fewer. */
const EACH = Number(process.env.PUMPYOKE_LAYOUTS ?? 600) / 10;

describe('the same field question asked two ways has one answer: random layouts', () => {
  for (let block = 0; block < 10; block++) {
    it(`layouts ${block * EACH + 1} to ${(block + 1) * EACH}`, async () => {
      for (let i = 0; i < EACH; i++) await agree(SEED * 1_000_000 + block * EACH + i, {});
    }, 600_000);
  }
});
