import { describe, expect, test } from 'vitest';
import { advanceJson, clockJson } from '../../src/report/json-schema.js';
import { example, pumpyoke } from './run-built.js';

const EXAMPLES = ['ridge.yaml', 'downhill.yaml', 'relay.yaml'];
/** No line over the width, and no figure that is none. */
function expectReadable(out: string, width: number): void {
  for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(width);
  expect(out).not.toMatch(/NaN|Infinity|undefined|\{n\}|\{\w+\}/);
}

describe('advance and clock on the examples', () => {
  for (const file of EXAMPLES) {
    test(`${file}: text, JSON of the shape that is written down, and a card`, () => {
      for (const command of ['advance', 'clock']) {
        const text = pumpyoke([command, example(file)]);
        expect(text.err).toBe('');
        expect([0, 1]).toContain(text.status);
        expectReadable(text.out, 110);
        const json = JSON.parse(pumpyoke([command, example(file), '--json']).out);
        (command === 'advance' ? advanceJson : clockJson).parse(json);
      }
      for (const command of ['advance', 'flow']) {
        const card = pumpyoke([command, example(file), '--format', 'card', '--units', 'si']);
        expectReadable(card.out, 60);
        expect(card.out.split('\n').length).toBeLessThanOrEqual(61);
      }
    });
  }

  test('a plan that goes through is status 0, one that is stopped status 1', () => {
    expect(pumpyoke(['advance', example('relay.yaml')]).status).toBe(0);
    const stopped = pumpyoke(['advance', example('downhill.yaml')]);
    expect(stopped.status).toBe(1);
    expect(stopped.out).toMatch(/^ADVANCES TO section \d+/);
    expect(stopped.out).toContain('Stopped because');
  });

  test('a layout that does not grow, and a card of what has none, are status 2 with a word on what to do', () => {
    const still = pumpyoke(['advance', example('lay.yaml')]);
    expect(still.status).toBe(2);
    expect(still.err).toContain('progressive:');
    const card = pumpyoke(['check', example('demo.yaml'), '--format', 'card']);
    expect(card.status).toBe(2);
    expect(card.err).toContain('flow and advance have one');
  });
});
