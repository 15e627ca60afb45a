import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { pumpyoke } from '../run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'completion-'));
afterAll(() => rmSync(folder, { recursive: true }));

const there = (shell: string): boolean => spawnSync(shell, ['--version']).status === 0;

function scriptOf(shell: string): string {
  const file = join(folder, shell);
  if (existsSync(file)) return file;
  const { status, out } = pumpyoke(['completion', shell]);
  expect(status).toBe(0);
  writeFileSync(file, out);
  return file;
}

/** What the shell offers for a line, its last word being typed. */
const ASK: Record<string, (script: string, line: string[]) => string[]> = {
  bash: (script, line) => [
    '--norc',
    '-c',
    `source '${script}'; COMP_WORDS=(${line.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${line.length - 1}; _pumpyoke; printf '%s\\n' "\${COMPREPLY[@]}"`,
  ],
  // The functions that only a line editor has are stood in for.
  zsh: (script, line) => [
    '-f',
    '-c',
    `compdef() {}; _files() { print FILES }; compadd() { shift; for each in "$@"; do [[ "$each" == "$current"* ]] && print -r -- "$each"; done; true }
source '${script}'; words=(${line.map((word) => `'${word}'`).join(' ')}); CURRENT=${line.length}; _pumpyoke`,
  ],
  fish: (script, line) => ['--no-config', '-c', `source '${script}'; complete -C '${line.join(' ')}'`],
};

describe.each(Object.keys(ASK))('completion in %s', (shell) => {
  const missing = !there(shell);
  const offered = (...line: string[]): string[] => {
    const { stdout, stderr } = spawnSync(shell, ASK[shell](scriptOf(shell), ['pumpyoke', ...line]), {
      encoding: 'utf8',
      cwd: folder,
    });
    expect(stderr).toBe('');
    return stdout
      .split('\n')
      .map((text) => text.split('\t')[0])
      .filter(Boolean);
  };

  it.skipIf(missing)(
    `offers the commands${missing ? `: skipped, since no ${shell} is installed here` : ''}`,
    () => {
      expect(offered('ch')).toEqual(['check']);
      expect(offered('c').sort()).toEqual(['catalogue', 'check', 'clock', 'completion', 'curve']);
    },
  );

  it.skipIf(missing)('offers the options of the command, and those that all have', () => {
    expect(offered('check', '--acr')).toEqual(['--across']);
    expect(offered('flow', 'lay.yaml', '--thr')).toEqual(['--throttle']);
    expect(offered('clock', '--fo')).toEqual(['--format']);
    expect(offered('check', '--thr')).toEqual([]);
    expect(offered('drill', 'mark', '--pa')).toEqual(['--pass']);
  });

  it.skipIf(missing)('offers the words that an option or a command takes', () => {
    expect(offered('check', '--units', '').sort()).toEqual(['si', 'us']);
    expect(offered('check', '--format', 'm')).toEqual(['markdown']);
    expect(offered('catalogue', 'ho')).toEqual(['hose']);
    expect(offered('new', 'r').sort()).toEqual(['relay', 'rig']);
    expect(offered('completion', 'z')).toEqual(['zsh']);
  });
});

it('a shell that is not known is told', () => {
  expect(pumpyoke(['completion', 'csh'])).toMatchObject({
    status: 2,
    err: 'error: no completion for csh: bash, zsh, fish are known\n',
  });
});
