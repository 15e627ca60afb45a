import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EXECUTABLE, example, pumpyoke } from './run-built.js';

const SCRIPT = '/usr/bin/script';

/** What the program says at a terminal so many columns wide, without colour. */
function atWidth(columns: number, words: string): string {
  const command = `stty cols ${columns}; '${process.execPath}' '${EXECUTABLE}' ${words}`;
  const { stdout } = spawnSync(SCRIPT, ['-qfc', command, '/dev/null'], {
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1', COLUMNS: undefined },
  });
  return stdout.replaceAll('\r', '');
}

const EXAMPLE = /^ {2}pumpyoke /;

for (const command of ['check', 'flow', 'require', 'reach', 'advance', 'clock', 'curve', 'trial', 'drill'])
  test.runIf(existsSync(SCRIPT))(`the help of ${command} fits a telephone`, { timeout: 30_000 }, () => {
    const wide = atWidth(44, `${command} --help`)
      .split('\n')
      // A command stands on one line, to be copied.
      .filter((line) => !EXAMPLE.test(line) && line.length > 44);
    expect(wide).toEqual([]);
  });

test.runIf(existsSync(SCRIPT))('an error fits a telephone too', () => {
  const said = atWidth(40, `advance '${example('demo.yaml')}'`);
  expect(said).toContain('error: ');
  expect(said.split('\n').filter((line) => line.length > 40)).toEqual([]);
});

test('wrong input of a drill is told in one line of words', () => {
  for (const [args, says] of [
    [
      ['drill', '--rules', example('demo.yaml'), '--count', '1'],
      /this is a layout, and a rule set is wanted/,
    ],
    [['drill', '--topic', 'frictionloss', '--count', '1'], /did you mean friction-loss\?/],
    [['check', example('lay.yaml')], /names no typing to check against: add typing:/],
  ] as const) {
    const { status, err } = pumpyoke([...args]);
    expect(status).toBe(2);
    expect(err).toMatch(says);
    expect(err.trim().split('\n')).toHaveLength(1);
  }
});
