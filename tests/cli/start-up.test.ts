import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';
import { EXECUTABLE, example, quadraticLayout } from './run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-start-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Loaded ahead of the program: says at the end whether V8 took the cache, and what else was loaded. */
const WATCH = `
const vm = require('node:vm');
const { syncBuiltinESMExports } = require('node:module');
const { Script } = vm;
vm.Script = class extends Script {
  constructor(source, options) {
    super(source, options);
    const told = { given: options.cachedData !== undefined, rejected: this.cachedDataRejected };
    process.on('exit', () => {
      const loaded = Object.keys(require.cache).map((file) => require('node:path').basename(file));
      process.stderr.write(JSON.stringify({ ...told, loaded }));
    });
  }
};
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
  expect(told).toMatchObject({ given: true, rejected: false });
});

test('what fits a quadratic is loaded where a curve asks for one, and not for the examples', () => {
  const file = join(folder, 'quadratic.yaml');
  writeFileSync(file, quadraticLayout());
  expect(watched(['check', file]).told.loaded).toContain('least-squares.cjs');
  for (const args of [
    ['check', example('demo.yaml')],
    ['flow', example('lay.yaml')],
  ]) {
    expect(watched(args).told.loaded).not.toContain('least-squares.cjs');
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
  expect(watched(['check', example('demo.yaml')], bare).told).toMatchObject({ given: false });
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
