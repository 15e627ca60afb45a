import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';
import * as z from 'zod';
import * as library from '../../src/index.js';
import { EXECUTABLE, pumpyoke } from '../cli/run-built.js';

/** What README and the guides show is run here: every YAML, every command, the answer and the program. */
const root = fileURLToPath(new URL('../../', import.meta.url));
const GUIDES = readdirSync(`${root}docs`)
  .filter((name) => name.endsWith('.md') && name !== 'layout.md')
  .map((name) => `docs/${name}`);
const FILES = ['README.md', ...GUIDES];
const textOf = (file: string) => readFileSync(`${root}${file}`, 'utf8');

interface Shown {
  language: string;
  code: string;
  /** What a comment before it says of it. */
  note?: string;
}

function shownIn(text: string): Shown[] {
  return [...text.matchAll(/(?:<!-- yaml: (.+?) -->\n)?^```(\w*)\n([\s\S]*?)^```$/gm)].map(
    ([, note, language, code]) => ({ note, language, code }),
  );
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});
const newFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'shown-'));
  folders.push(folder);
  return folder;
};

/** The two that set everything up and run the tests themselves. */
const NOT_RUN = ['npm ci && npm run demo', 'npm ci && npm test'];

/** A line as a shell reads it, with the program as it is built. */
function shell(line: string, folder: string) {
  const program = `${process.execPath} ${EXECUTABLE}`;
  const { status, stdout, stderr } = spawnSync('sh', ['-c', line.replace(/^pumpyoke /, `${program} `)], {
    cwd: folder,
    encoding: 'utf8',
    input: '',
  });
  return { status, out: stdout, err: stderr };
}

describe.each(FILES)('%s', (file) => {
  const shown = shownIn(textOf(file));
  const yaml = shown.filter(({ language }) => language === 'yaml');
  const commands = shown
    .filter(({ language }) => language === 'sh')
    .flatMap(({ code }) => code.trim().split('\n'))
    .filter((line) => !NOT_RUN.includes(line));

  it('shows nothing of a kind that is not run here', () => {
    for (const { language, code } of shown)
      expect(['yaml', 'sh', 'text', 'json', 'js'], code).toContain(language);
    for (const { note, code } of yaml) expect(note, code).toBeDefined();
  });

  it('shows YAML that runs', () => {
    const folder = newFolder();
    for (const { note = '', code } of yaml) {
      const [, name] = /^file (\S+?)(?:;|$)/.exec(note) ?? [];
      if (name) writeFileSync(join(folder, name), code);
    }
    for (const { note = '', code } of yaml) {
      const [place, asked = ''] = note.split('; ');
      const [how, ...what] = place.split(' ');
      let path = join(folder, what.at(-1) as string);
      if (how === 'in') {
        const layout = parseDocument(pumpyoke(['new', what.at(-1) as string]).out);
        for (const [key, value] of Object.entries(parseDocument(code).toJS())) layout.set(key, value);
        path = join(folder, 'layout.yaml');
        writeFileSync(path, String(layout));
      }
      for (const word of asked.split(' ').filter(Boolean)) {
        const [command, wanted = '0'] = word.split('=');
        const { status, err } = pumpyoke([command, path]);
        expect(err, `${command}\n${code}`).toBe('');
        expect(status, `${command}\n${code}`).toBe(Number(wanted));
      }
    }
  });

  it('shows commands that run, one after the other', () => {
    const folder = newFolder();
    symlinkSync(`${root}data`, join(folder, 'data'));
    for (const name of ['rig', 'lay']) {
      const path = { rig: 'truck.yaml', lay: 'lay.yaml' }[name] as string;
      const made = commands.some((line) => line.includes(`--out ${path}`) && line.startsWith('pumpyoke new'));
      if (!made) writeFileSync(join(folder, path), pumpyoke(['new', name]).out);
    }
    for (const line of commands) {
      expect(line).toMatch(/^pumpyoke /);
      if (line.startsWith('pumpyoke drill mark'))
        appendFileSync(join(folder, 'answers.csv'), 'Anna,1 psi,,2\n');
      const { status, err } = shell(line, folder);
      if (line.includes('--ask')) {
        expect(err, line).toContain('talks to a person at a terminal');
        continue;
      }
      expect(err.replace(/^Wrote .*\n/gm, ''), line).toBe('');
      // Wrong answers fall short of the pass that is asked for, and the test day of the example does too.
      expect(/--pass|^pumpyoke trial/.test(line) ? [0, 1] : [0], line).toContain(status);
    }
  });
});

describe('README', () => {
  const text = textOf('README.md');

  it('is short, and shows what it is run by first', () => {
    const lines = text.split('\n');
    expect(lines.length).toBeLessThanOrEqual(150);
    expect(lines.slice(0, 4).join('\n')).toMatch(/`npx pumpyoke`.*`node bin\/pumpyoke.js`/);
    for (const command of NOT_RUN) expect(text).toContain(`\n\`\`\`sh\n${command}\n\`\`\`\n`);
  });

  it('shows the answer that the example gives', () => {
    const answer = shownIn(text).find(({ language }) => language === 'text')?.code ?? 'none';
    const { out } = pumpyoke(['check', '-'], { input: pumpyoke(['new', 'rig']).out });
    expect(out.startsWith(answer)).toBe(true);
  });

  it('names every command', () => {
    const help = pumpyoke(['--help']).out;
    const names = [...(help.split(/^(?:Commands|Exit status):/m)[1] ?? '').matchAll(/^ {2}(\w+)/gm)].map(
      ([, name]) => name,
    );
    expect(names).toContain('check');
    for (const name of names.filter((each) => each !== 'help'))
      expect(text, name).toMatch(new RegExp(`^\\| \`pumpyoke ${name}[ \`]`, 'm'));
  });

  it.each(FILES)('%s links to files that are there', (file) => {
    const folder = file.includes('/') ? 'docs/' : '';
    for (const [, target] of textOf(file).matchAll(/\]\(([^)#]+)[^)]*\)/g))
      expect(() => textOf(`${folder}${target}`), target).not.toThrow();
  });
});

describe('docs/library.md', () => {
  const text = textOf('docs/library.md');

  it('names every schema of an answer that the library exports', () => {
    const schemas = Object.entries(library)
      .filter(([, value]) => value instanceof z.ZodType)
      .map(([name]) => name);
    expect(schemas.length).toBeGreaterThan(9);
    for (const name of schemas) expect(text).toContain(`\`${name}\``);
  });

  it('shows a program that runs', () => {
    const code = shownIn(text).find(({ language }) => language === 'js')?.code ?? '';
    const folder = newFolder();
    writeFileSync(join(folder, 'truck.yaml'), pumpyoke(['new', 'rig']).out);
    const index = pathToFileURL(`${root}dist/index.js`).href;
    writeFileSync(join(folder, 'program.mjs'), code.replace("'pumpyoke'", `'${index}'`));
    const { status, out, err } = shell(`${process.execPath} program.mjs`, folder);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toContain("unit: 'psi'");
  });
});
