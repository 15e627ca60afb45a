import { describe, expect, test } from 'vitest';
import { example, pumpyoke } from './run-built.js';

/** Every command once, on what ships: run on every version of Node that is supported. */
const RUNS: [args: string[], statuses: number[]][] = [
  [['check', example('demo.yaml')], [0]],
  [['check', example('demo.yaml'), '--json'], [0]],
  [['check', example('demo.yaml'), '--format', 'html'], [0]],
  [
    ['flow', example('lay.yaml'), '--units', 'si'],
    [0, 1],
  ],
  [
    ['require', example('lay.yaml')],
    [0, 1],
  ],
  [
    ['reach', example('lay.yaml')],
    [0, 1],
  ],
  [
    ['clock', example('lay.yaml')],
    [0, 1],
  ],
  [['drill', '--mix', '--count', '3', '--seed', '7'], [0]],
  [['--help'], [0]],
  [['check', '--help'], [0]],
  [['--version'], [0]],
];

describe(`on Node ${process.version}`, () => {
  for (const [args, statuses] of RUNS)
    test(`${args.map((arg) => arg.replace(/.*\//, '')).join(' ')} answers, with nothing on standard error`, () => {
      const { status: ended, out, err } = pumpyoke(args);
      expect(err).toBe('');
      expect(out.length).toBeGreaterThan(0);
      expect(statuses).toContain(ended);
    });

  test('a file that is not there is refused in words', () => {
    const { status, out, err } = pumpyoke(['check', 'nowhere.yaml']);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('nowhere.yaml');
  });
});
