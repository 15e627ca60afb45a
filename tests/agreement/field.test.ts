import { describe, expect, it } from 'vitest';
import { agree, type Made } from './field-support.js';

const SEED = Number(process.env.PROPERTY_SEED ?? 1988);
const EACH = 50;

describe('the same field question asked two ways has one answer: 500 random layouts', () => {
  const made: Made = {};
  for (let block = 0; block < 10; block++) {
    it(`layouts ${block * EACH + 1} to ${(block + 1) * EACH}`, async () => {
      for (let i = 0; i < EACH; i++) await agree(SEED * 100_000 + block * EACH + i, made);
    }, 120_000);
  }

  it('each kind of comparison was made', () => {
    for (const kind of [
      'possible',
      'impossible',
      'require can',
      'require cannot',
      'require cannot be',
      'advance step',
      'advance cannot be',
      'advance option',
      'reach nozzle',
      'reach hose',
    ])
      expect(made[kind] ?? 0, kind).toBeGreaterThan(0);
  });
});
