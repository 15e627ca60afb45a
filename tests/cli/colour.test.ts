import { expect, test } from 'vitest';
import { colourFlag, decideColour, widthOf } from '../../src/cli/colour.js';

const terminal = { isTTY: true };
const pipe = {};

const CASES: [string, boolean | undefined, Record<string, string>, { isTTY?: boolean }, boolean][] = [
  ['a terminal gets colour', undefined, {}, terminal, true],
  ['a pipe gets none', undefined, {}, pipe, false],
  ['a dumb terminal gets none', undefined, { TERM: 'dumb' }, terminal, false],
  ['NO_COLOR takes it from a terminal', undefined, { NO_COLOR: '1' }, terminal, false],
  ['an empty NO_COLOR does not count', undefined, { NO_COLOR: '' }, terminal, true],
  ['FORCE_COLOR gives it to a pipe', undefined, { FORCE_COLOR: '1' }, pipe, true],
  ['FORCE_COLOR=0 takes it from a terminal', undefined, { FORCE_COLOR: '0' }, terminal, false],
  ['NO_COLOR stands above FORCE_COLOR', undefined, { NO_COLOR: '1', FORCE_COLOR: '1' }, terminal, false],
  ['--color stands above NO_COLOR', true, { NO_COLOR: '1' }, pipe, true],
  ['--no-color stands above FORCE_COLOR', false, { FORCE_COLOR: '1' }, terminal, false],
];

for (const [title, flag, environment, stream, expected] of CASES) {
  test(title, () => {
    expect(decideColour(flag, environment, stream)).toBe(expected);
  });
}

test('the last flag counts, and none after --', () => {
  expect(colourFlag(['check', 'a.yaml'])).toBeUndefined();
  expect(colourFlag(['--color', 'check', '--no-color'])).toBe(false);
  expect(colourFlag(['--no-color', '--color', '--', '--no-color'])).toBe(true);
});

test('the width is the terminal, then COLUMNS, then 80', () => {
  expect(widthOf({ COLUMNS: '40' }, { columns: 100 })).toBe(100);
  expect(widthOf({ COLUMNS: '40' }, {})).toBe(40);
  expect(widthOf({}, {})).toBe(80);
  for (const wrong of ['', '0', '-3', 'wide', '4.5']) expect(widthOf({ COLUMNS: wrong }, {})).toBe(80);
});
