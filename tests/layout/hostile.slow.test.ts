import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOSTILE_TEXTS } from './hostile-texts.js';

const LIMIT_MEGABYTES = 300;

/** A program of its own for each text, since a program's memory never shrinks again. */
const PROGRAM = `
import { readLayout } from './src/layout/read-layout.js';
import { catalogue } from './tests/layout/support.js';
let message = 'it was read';
try { readLayout(process.argv[2], { catalogue }); } catch (error) { message = error.message; }
const { maxRSS } = process.resourceUsage();
process.stdout.write(JSON.stringify({ kilobytes: maxRSS, message }));
`;

const folder = mkdtempSync(join(tmpdir(), 'memory-'));
const program = join(folder, 'program.mjs');

beforeAll(async () => {
  await build({
    stdin: { contents: PROGRAM, resolveDir: process.cwd(), loader: 'ts' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile: program,
    logLevel: 'error',
    banner: {
      js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
    },
  });
});
afterAll(() => rmSync(folder, { recursive: true }));

describe(`memory that a hostile text takes, under ${LIMIT_MEGABYTES} MB in all`, () => {
  for (const [name, [text, message]] of Object.entries(HOSTILE_TEXTS)) {
    it(`${name}`, () => {
      const path = join(folder, 'layout.yaml');
      writeFileSync(path, text);
      const { stdout } = spawnSync(process.execPath, [program, path], { encoding: 'utf8' });
      const used = JSON.parse(stdout);
      expect(used.message).toMatch(message);
      expect(used.kilobytes / 1024).toBeLessThan(LIMIT_MEGABYTES);
    });
  }

  it('standard input without end is read no further than a file may be large', () => {
    const { stdout } = spawnSync('sh', ['-c', `"${process.execPath}" "${program}" - < /dev/zero`], {
      encoding: 'utf8',
    });
    const used = JSON.parse(stdout);
    expect(used.message).toBe('standard input: it is larger than 1 MB, so it is no layout');
    expect(used.kilobytes / 1024).toBeLessThan(LIMIT_MEGABYTES);
  });

  it('standard input is read whole where it is a layout', () => {
    const input = 'engine: {tank: {capacity: 500 gal}, pumps: {a: {model: twin}}}';
    const { stdout } = spawnSync(process.execPath, [program, '-'], { encoding: 'utf8', input });
    expect(JSON.parse(stdout).message).toBe('it was read');
  });
});
