import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-package-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What is handed out, packed as it would be and unpacked again. */
const unpacked = (() => {
  execFileSync('npm', ['pack', '--silent', '--pack-destination', folder], { cwd: ROOT, stdio: 'pipe' });
  const [packed] = readdirSync(folder).filter((name) => name.endsWith('.tgz'));
  execFileSync('tar', ['xzf', packed], { cwd: folder });
  return { file: join(folder, packed), at: join(folder, 'package') };
})();

const files = readdirSync(unpacked.at, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map(({ parentPath, name }) => join(parentPath, name));

describe('the package', () => {
  test('carries its license and those of what is inside it, NOTICE too', () => {
    expect(readFileSync(join(unpacked.at, 'LICENSE'), 'utf8')).toContain('MIT License');
    const others = readFileSync(join(unpacked.at, 'dist/THIRD-PARTY.txt'), 'utf8');
    const notice = readFileSync(join(ROOT, 'node_modules/mathjs/NOTICE'), 'utf8').trim();
    expect(others).toContain(notice);
    for (const name of ['commander', 'zod', 'chalk', 'cli-table3', 'yaml', 'mathjs'])
      expect(others).toMatch(new RegExp(`^${name} \\d`, 'm'));
  });

  test('names no folder of whoever built it, and has nothing that V8 compiled there', () => {
    expect(files.length).toBeGreaterThan(20);
    for (const file of files) {
      expect(file).not.toMatch(/\.cache$/);
      expect(readFileSync(file, 'latin1').includes(ROOT), file).toBe(false);
    }
  });

  test('installs into an empty folder without another package, and checks the example', () => {
    const empty = join(folder, 'empty');
    mkdirSync(empty);
    writeFileSync(join(empty, 'package.json'), '{"private": true}');
    execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', unpacked.file], {
      cwd: empty,
      stdio: 'pipe',
    });
    expect(readdirSync(join(empty, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'pumpyoke',
    ]);
    const demo = join(empty, 'node_modules/pumpyoke/data/examples/demo.yaml');
    const { status, stdout, stderr } = spawnSync('npx', ['--offline', 'pumpyoke', 'check', demo], {
      cwd: empty,
      encoding: 'utf8',
      env: { ...process.env, XDG_CACHE_HOME: join(folder, 'kept') },
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^MEETS Type 3/);
  });
});
