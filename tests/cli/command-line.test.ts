import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EXECUTABLE, example, pumpyoke } from './run-built.js';

const demo = example('demo.yaml');

const MISTAKES: [string, string[], RegExp][] = [
  [
    'an unknown command suggests the nearest',
    ['chek', demo],
    /unknown command 'chek'\n\(Did you mean check\?\)/,
  ],
  [
    'an unknown option suggests the nearest',
    ['check', demo, '--jsn'],
    /unknown option '--jsn'\n\(Did you mean --json\?\)/,
  ],
  ['a missing layout', ['check'], /missing required argument 'layout'/],
  ['a layout too many', ['check', demo, demo], /too many arguments/],
  ['units that there are not', ['check', demo, '--units', 'metric'], /Allowed choices are us, si/],
  [
    'a look that there is not',
    ['check', demo, '--format', 'pdf'],
    /Allowed choices are text, json, markdown, html/,
  ],
  ['two looks at once', ['check', demo, '--json', '--format', 'html'], /^error: --json and --format html/],
  ['a file that is not there', ['check', 'no-such-layout.yaml'], /no-such-layout\.yaml\n {2}no such file/],
  ['a folder', ['check', '.'], /it is a folder/],
];

for (const [title, args, message] of MISTAKES) {
  test(`${title}: exit status 2, said on standard error, no stack`, () => {
    const { status, out, err } = pumpyoke(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).not.toMatch(/^ +at /m);
  });
}

test('no command at all shows the help, and is a mistake', () => {
  const { status, out, err } = pumpyoke([]);
  expect(status).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(/^Examples:/);
});

for (const args of [['--help'], ['help'], ['check', '--help'], ['help', 'flow']]) {
  test(`${args.join(' ')} opens with examples and ends with 0`, () => {
    const { status, out, err } = pumpyoke(args);
    expect(status).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/^Examples:\n {2}pumpyoke /);
    expect(out).toContain('--units <system>');
  });
}

test('help fits a narrow terminal', () => {
  for (const args of [['--help'], ['check', '--help']]) {
    const wide = pumpyoke(args, { environment: { COLUMNS: '60' } })
      .out.split('\n')
      .filter((line) => line.length > 60);
    expect(wide).toEqual([]);
  }
});

test('--version is the version of the package', () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  expect(pumpyoke(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
});

// biome-ignore lint/suspicious/noControlCharactersInRegex: colour is made of them
const COLOURED = /\u001b\[\d+m/;

test('a pipe gets no colour, FORCE_COLOR gives it, NO_COLOR and --no-color take it', () => {
  const out = (args: string[], environment: Record<string, string> = {}) =>
    pumpyoke(['check', demo, ...args], { environment }).out;
  expect(out([])).not.toMatch(COLOURED);
  expect(out([], { FORCE_COLOR: '1' })).toMatch(COLOURED);
  expect(out(['--color'])).toMatch(COLOURED);
  expect(out([], { FORCE_COLOR: '1', NO_COLOR: '1' })).not.toMatch(COLOURED);
  expect(out(['--no-color'], { FORCE_COLOR: '1' })).not.toMatch(COLOURED);
  expect(out(['--json'], { FORCE_COLOR: '1' })).not.toMatch(COLOURED);
});

for (const columns of [40, 80]) {
  test(`no line of a check is wider than ${columns} columns`, () => {
    const { out } = pumpyoke(['check', demo], { environment: { COLUMNS: String(columns) } });
    expect(out.split('\n').filter((line) => line.length > columns)).toEqual([]);
  });
}

const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

test('a reader that stops reading ends it quietly', () => {
  const command = `${quoted(process.execPath)} ${quoted(EXECUTABLE)} check ${quoted(demo)} --json | head -c 1`;
  const { stdout, stderr } = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
  expect(stdout).toBe('{');
  expect(stderr).toBe('');
});

test('a pipe that is read late gets every letter of an answer longer than it holds', () => {
  const words = ['drill', '--mix', '--count', '100', '--seed', '7', '--key', '--format', 'html'];
  const straight = pumpyoke(words).out;
  expect(straight.length).toBeGreaterThan(300_000);
  const late = spawnSync('sh', ['-c', '"$0" "$@" | (sleep 1; cat)', process.execPath, EXECUTABLE, ...words], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  expect(late.stdout).toBe(straight);
});

test('a pipe that nobody reads any more is no fault', () => {
  const command = `( sleep 0.3; ${quoted(process.execPath)} ${quoted(EXECUTABLE)} check ${quoted(demo)}; echo $? >&2 ) | true`;
  const { stderr } = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
  expect(stderr).toBe('0\n');
});
