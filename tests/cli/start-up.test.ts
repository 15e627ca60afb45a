import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
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

const KEPT = join(folder, 'kept');

function watched(args: string[], { executable = EXECUTABLE, kept = KEPT } = {}) {
  const watch = `data:text/javascript,import{createRequire}from'node:module';const require=createRequire('file:///');${encodeURIComponent(WATCH)}`;
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', watch, executable, ...args], {
    encoding: 'utf8',
    env: { ...process.env, XDG_CACHE_HOME: kept },
  });
  return { status, stdout, told: JSON.parse(stderr) };
}

const filesIn = (kept: string): string[] =>
  readdirSync(join(kept, 'pumpyoke')).map((name) => join(kept, 'pumpyoke', name));

describe('what has been compiled is kept from run to run', () => {
  const demo = ['check', example('demo.yaml')];
  const none = { given: false, rejected: undefined };
  const taken = { given: true, rejected: false };

  test("on the reader's machine, after the first run that answered", () => {
    const kept = join(folder, 'first');
    expect(watched(demo, { kept }).told).toEqual({ 'cli.cjs': none });
    const again = watched(demo, { kept });
    expect(again.status).toBe(0);
    expect(again.told).toEqual({ 'cli.cjs': taken });
    // Another command calls other functions, and has a file of its own.
    expect(watched(['flow', example('lay.yaml')], { kept }).told).toEqual({ 'cli.cjs': none });
    expect(filesIn(kept)).toHaveLength(2);
  });

  test('the drill too, whose parts no other command loads', () => {
    const kept = join(folder, 'drill');
    const drill = ['drill', '--mix', '--count', '2', '--seed', '7', '--quiet'];
    expect(watched(drill, { kept }).told).toEqual({
      'cli.cjs': none,
      'drill-run.cjs': none,
      'evaluate.cjs': none,
    });
    expect(watched(drill, { kept }).told).toEqual({
      'cli.cjs': taken,
      'drill-run.cjs': taken,
      'evaluate.cjs': taken,
    });
  });

  test.each([
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length / 2)],
    ['empty', () => Buffer.alloc(0)],
    [
      'damaged',
      (bytes: Buffer) => Buffer.from(bytes.map((byte, at) => (at % 1000 === 500 ? byte ^ 255 : byte))),
    ],
    ['another file', () => Buffer.from('not what V8 made\n'.repeat(1000))],
  ])('a kept file that is %s changes nothing, and is made anew', (_, spoil) => {
    const kept = join(folder, `spoilt-${_.replace(/ /g, '-')}`);
    const sound = watched(demo, { kept });
    const [file] = filesIn(kept);
    writeFileSync(file, spoil(readFileSync(file)));
    const after = watched(demo, { kept });
    expect(after.status).toBe(0);
    expect(after.stdout).toBe(sound.stdout);
    expect(after.told).toEqual({ 'cli.cjs': none });
    expect(watched(demo, { kept }).told).toEqual({ 'cli.cjs': taken });
  });

  test('a program that was edited to the same length is never run from what was kept of the old one', () => {
    const kept = join(folder, 'edited');
    const copy = copied('edited-program');
    const executable = join(copy, 'bin', 'pumpyoke.js');
    const before = watched(demo, { executable, kept });
    const program = join(copy, 'dist', 'cli.cjs');
    const source = readFileSync(program, 'latin1');
    writeFileSync(
      program,
      source.replaceAll('FALLS SHORT', 'FALLS shorT').replaceAll('MEETS ', 'MEETs '),
      'latin1',
    );
    const after = watched(demo, { executable, kept });
    expect(before.stdout).toContain('MEETS ');
    expect(after.stdout).toContain('MEETs ');
  });

  test('where there is no place to keep it, or the reader asks Node for none, it answers the same', () => {
    const run = (environment: Record<string, string>) =>
      spawnSync(process.execPath, [EXECUTABLE, ...demo, '--json'], {
        encoding: 'utf8',
        env: { ...process.env, ...environment },
      });
    const kept = run({ XDG_CACHE_HOME: KEPT });
    const off = run({ XDG_CACHE_HOME: join(folder, 'off'), NODE_DISABLE_COMPILE_CACHE: '1' });
    const nowhere = run({ XDG_CACHE_HOME: '/dev/null' });
    for (const other of [off, nowhere]) {
      expect(other.stderr).toBe('');
      expect(other.stdout).toBe(kept.stdout);
    }
    expect(existsSync(join(folder, 'off'))).toBe(false);
  });
});

/** The program in a folder of its own. */
function copied(name: string): string {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  for (const part of ['bin', 'dist', 'package.json'])
    cpSync(join(root, part), join(folder, name, part), {
      recursive: true,
      filter: (file) => !file.includes('.next-'),
    });
  return join(folder, name);
}

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
