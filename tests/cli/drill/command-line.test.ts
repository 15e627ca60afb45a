import fc from 'fast-check';
import { expect, test } from 'vitest';
import { commandFor, optionsIn } from '../../../src/cli/commands/drill-command-line.js';
import type { SheetOptions } from '../../../src/cli/commands/drill-options.js';

const sheet = (given: Partial<SheetOptions> = {}): SheetOptions => ({
  topics: [],
  level: 2,
  count: 10,
  seed: 7,
  rules: 'wildland',
  units: 'us',
  choices: 0,
  ...given,
});

test('the command that stands on a sheet is one that a shell takes', () => {
  expect(commandFor(sheet())).toBe(
    'pumpyoke drill --mix --level 2 --count 10 --seed 7 --rules wildland --units us',
  );
  expect(commandFor(sheet({ topics: ['a', 'b'], choices: 4, layout: "the chief's lay.yaml" }))).toBe(
    "pumpyoke drill --topic a,b --level 2 --count 10 --seed 7 --rules wildland --units us --choices 4 --layout 'the chief'\\''s lay.yaml'",
  );
});

test('it is read back as it was said', () => {
  const path = fc.string({ minLength: 1 }).filter((text) => !/[\r\n]/.test(text) && text.trim() !== '');
  const topic = fc.stringMatching(/^[a-z][a-z0-9-]{0,12}$/);
  fc.assert(
    fc.property(
      fc.record({
        topics: fc.array(topic, { maxLength: 3 }),
        level: fc.integer({ min: 1, max: 5 }),
        count: fc.integer({ min: 1, max: 500 }),
        seed: fc.integer({ min: 0, max: 4294967295 }),
        rules: path,
        units: fc.constantFrom('us' as const, 'si' as const),
        choices: fc.constantFrom(0, 2, 4, 6),
        layout: path,
      }),
      (options) => {
        const { choices, ...rest } = options;
        expect(optionsIn(commandFor(options))).toEqual(choices > 0 ? options : rest);
      },
    ),
  );
});

test('another line is no command of a sheet', () => {
  for (const line of [
    '',
    'hello',
    'pumpyoke check x.yaml',
    'pumpyoke drill --seed x',
    'pumpyoke drill --out /etc/x',
  ]) {
    expect(optionsIn(line)).toBeUndefined();
  }
});
