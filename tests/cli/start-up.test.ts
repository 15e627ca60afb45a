import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { EXECUTABLE, example, quadraticLayout } from './run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-start-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Loaded ahead of the program: says at the end of each file of ours whether V8 took the cache. */
const WATCH = `
const vm = require('node:vm');
const { syncBuiltinESMExports } = require('node:module');
const { Script } = vm;
const told = {};
vm.Script = class extends Script {
  constructor(source, options) {
    super(source, options);
    const name = require('node:path').basename(options.filename);
    told[name] = { given: options.cachedData !== undefined, rejected: this.cachedDataRejected };
  }
};
process.on('exit', () => process.stderr.write(JSON.stringify(told)));
syncBuiltinESMExports();
`;

function watched(args: string[], executable = EXECUTABLE) {
  const watch = `data:text/javascript,import{createRequire}from'node:module';const require=createRequire('file:///');${encodeURIComponent(WATCH)}`;
  const { status, stderr } = spawnSync(process.execPath, ['--import', watch, executable, ...args], {
    encoding: 'utf8',
  });
  return { status, told: JSON.parse(stderr) };
}

test('V8 takes what was compiled when the program was built', () => {
  const { status, told } = watched(['check', example('demo.yaml')]);
  expect(status).toBe(0);
  expect(told).toEqual({ 'cli.cjs': { given: true, rejected: false } });
});

test('it takes that of the drill too, which no other command loads', () => {
  const { status, told } = watched(['drill', '--mix', '--count', '2', '--seed', '7', '--quiet']);
  expect(status).toBe(0);
  const taken = { given: true, rejected: false };
  expect(told).toEqual({ 'cli.cjs': taken, 'drill-run.cjs': taken, 'evaluate.cjs': taken });
});

test('what fits a quadratic is loaded where a curve asks for one, and not for the examples', () => {
  const file = join(folder, 'quadratic.yaml');
  writeFileSync(file, quadraticLayout());
  expect(watched(['check', file]).told).toHaveProperty(['least-squares.cjs']);
  for (const args of [
    ['check', example('demo.yaml')],
    ['flow', example('lay.yaml')],
  ]) {
    expect(watched(args).told).not.toHaveProperty(['least-squares.cjs']);
  }
});

test('without the cache it answers the same', () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  for (const part of ['bin', 'dist', 'package.json']) {
    cpSync(join(root, part), join(folder, part), {
      recursive: true,
      filter: (file) => !file.endsWith('.cache') && !file.includes('.next-'),
    });
  }
  const bare = join(folder, 'bin', 'pumpyoke.js');
  expect(watched(['check', example('demo.yaml')], bare).told['cli.cjs']).toMatchObject({ given: false });
  const run = (executable: string) =>
    spawnSync(process.execPath, [executable, 'check', example('demo.yaml'), '--json'], { encoding: 'utf8' });
  expect(run(bare).stdout).toBe(run(EXECUTABLE).stdout);
  expect(run(bare).stdout).toMatch(/^\{/);
});

test('a program that is not built says so in one line', () => {
  const empty = join(folder, 'empty');
  cpSync(fileURLToPath(new URL('../../bin', import.meta.url)), join(empty, 'bin'), { recursive: true });
  cpSync(fileURLToPath(new URL('../../package.json', import.meta.url)), join(empty, 'package.json'));
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(empty, 'bin', 'pumpyoke.js')], {
    encoding: 'utf8',
  });
  expect(status).toBe(70);
  expect(stdout).toBe('');
  expect(stderr).toBe('pumpyoke is not built yet: run "npm run build" in its folder first\n');
});
