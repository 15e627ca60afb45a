import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { LayoutProblems } from '../../src/layout/problem.js';
import { readLayout, readLayoutText } from '../../src/layout/read-layout.js';
import { HOSTILE_TEXTS, ODD_TEXTS } from './hostile-texts.js';
import { catalogue, ENGINE } from './support.js';

const folder = mkdtempSync(join(tmpdir(), 'hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

/**
 * Of processor time. The program is held to 2 s on a machine to itself; on one that others slow down a test may take three
 * times as long before it says that something is wrong.
 */
const LIMIT_SECONDS = 6;

function messageOf(path: string): string {
  const start = process.cpuUsage();
  try {
    readLayout(path, { catalogue });
  } catch (error) {
    if (!(error instanceof LayoutProblems)) throw error;
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1e6).toBeLessThan(LIMIT_SECONDS);
    expect(error.message).not.toMatch(/\n\s+at |Error:/);
    return error.message;
  }
  throw new Error('it was read');
}

function fileOf(content: string | Uint8Array, name = 'layout.yaml'): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

describe('texts that ask for far more work than their size', () => {
  for (const [name, [text, message]] of Object.entries(HOSTILE_TEXTS)) {
    it(`${name}`, () => expect(messageOf(fileOf(text))).toMatch(message));
  }
});

describe('texts that are wrong in ways of their own', () => {
  for (const [name, [text, message]] of Object.entries(ODD_TEXTS)) {
    it(`${name}`, () => expect(messageOf(fileOf(text))).toMatch(message));
  }

  it('leave every object as it was', () => {
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('files that are no text', () => {
  const BYTES: Record<string, [bytes: Uint8Array, message: RegExp]> = {
    'a NUL byte': [Buffer.from('title: a\0b\n'), /it is no text \(it holds a NUL byte\)$/],
    'a program': [Buffer.from([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1, 0, 0, 0]), /it is no text/],
    'bytes at random': [
      Buffer.from(Array.from({ length: 5000 }, (_, index) => (index * 7919 + 13) % 256)),
      /it is no text|UTF/,
    ],
    'UTF-16 text': [Buffer.from('\ufefftitle: a\n', 'utf16le'), /it is UTF-16 text; save it as UTF-8$/],
    'Latin-1 text': [
      Buffer.from('title: caf\u00e9\nengine: x\n', 'latin1'),
      /:1:11: it is not UTF-8 text from here on/,
    ],
    'an escape character': [Buffer.from('title: a\n# \u001b[31m\n'), /:2:3: a control character stands here/],
  };
  for (const [name, [bytes, message]] of Object.entries(BYTES)) {
    it(`${name}`, () => expect(messageOf(fileOf(bytes))).toMatch(message));
  }

  it('a mark of UTF-8 at the start is no fault', () => {
    expect(readLayout(fileOf(`\ufeff${ENGINE}`), { catalogue }).layout.title).toBe('Engine');
  });

  it('a file over a megabyte', () => {
    expect(messageOf(fileOf(`# ${'x'.repeat(1_000_000)}`))).toMatch(
      /it is larger than 1 MB, so it is no layout$/,
    );
  });
});

describe('paths that are no file', () => {
  it('nothing there', () => {
    expect(messageOf(join(folder, 'none.yaml'))).toBe(`${join(folder, 'none.yaml')}: no such file`);
    expect(messageOf('a\0b')).toMatch(/no such file/);
    expect(messageOf(`${folder}/${'x'.repeat(5000)}`)).toMatch(/its name is too long/);
    expect(messageOf(join(fileOf('x', 'file'), 'below'))).toMatch(/part of the path is a file, not a folder/);
  });

  it('a folder', () => expect(messageOf(folder)).toMatch(/it is a folder, not a file/));

  it('a link that goes round', () => {
    symlinkSync(join(folder, 'round'), join(folder, 'round'));
    expect(messageOf(join(folder, 'round'))).toMatch(/its links go round in a circle/);
  });

  it.skipIf(process.platform === 'win32')('devices and pipes, without waiting', () => {
    expect(messageOf('/dev/zero')).toMatch(/it is a device, not a file/);
    expect(messageOf('/dev/null')).toMatch(/it is a device, not a file/);
    const pipe = join(folder, 'pipe');
    execFileSync('mkfifo', [pipe]);
    expect(messageOf(pipe)).toMatch(/it is a pipe, not a file; give - to read standard input/);
  });

  it.skipIf(process.getuid?.() === 0)('no permission', () => {
    const path = fileOf(ENGINE, 'locked.yaml');
    chmodSync(path, 0);
    expect(messageOf(path)).toMatch(/no permission to read it/);
  });

  it('the engine of a layout, told at its place in the layout', () => {
    const engine = (path: string) => messageOf(fileOf(`title: x\nengine: ${path}\n`));
    expect(engine('none.yaml')).toMatch(/:2:9: the engine's file none.yaml cannot be read: no such file/);
    expect(engine('.')).toMatch(/cannot be read: it is a folder/);
    expect(engine('/dev/zero')).toMatch(/cannot be read: it is a device/);
    expect(engine('layout.yaml')).toMatch(/this is a layout, and an engine is wanted/);
    fileOf('- 1\n', 'list.yaml');
    expect(engine('list.yaml')).toMatch(/list.yaml:1:1: a list stands here where a whole document is wanted/);
    fileOf(Buffer.from('name: caf\u00e9', 'latin1'), 'latin.yaml');
    expect(engine('latin.yaml')).toMatch(/latin.yaml:1:10: it is not UTF-8/);
  });
});

describe('any text at all', () => {
  const pieces = fc.constantFrom(
    ...'engine:|lay:|- |  |\n|[|]|{|}|,|: |&a |*a|!!x |"|\'|# |hose: trunk|length: 1,000 ft|repeat: 3|steps:|? || |>|%|@|0x|.inf|~|null|<<|---|\t|\u00e9'.split(
      '|',
    ),
  );
  const anything = fc.oneof(
    fc.array(pieces, { maxLength: 40 }).map((parts) => parts.join('')),
    fc.array(pieces, { maxLength: 20 }).map((parts) => `${ENGINE}\nlay: [${parts.join('')}`),
    fc.string({ unit: 'grapheme' }),
  );

  it('is read, or refused with at least one problem that has a message', () => {
    fc.assert(
      fc.property(anything, (text) => {
        try {
          readLayoutText(text, 'any.yaml', { catalogue });
        } catch (error) {
          if (!(error instanceof LayoutProblems)) throw error;
          expect(error.problems.length).toBeGreaterThan(0);
          for (const problem of error.problems) expect(problem.message).not.toBe('');
        }
      }),
      { numRuns: 1500 },
    );
  });

  it('a sound layout with one value spoilt is never read as if it were sound', () => {
    const wrong = fc.constantFrom(null, [], {}, true, 'x', 3, '3', '-1 psi', { x: 1 }, [[]]);
    const keys = fc.constantFrom(
      'site',
      'engine',
      'staging',
      'throttle',
      'supply',
      'typing',
      'terrain',
      'appliance_policy',
    );
    fc.assert(
      fc.property(keys, wrong, (key, value) => {
        fc.pre(!(key === 'site' && JSON.stringify(value) === '{}'));
        fc.pre(!(key === 'throttle' && JSON.stringify(value) === '{}'));
        const text =
          key === 'engine'
            ? JSON.stringify({ engine: value })
            : `${ENGINE}\n${key}: ${JSON.stringify(value)}`;
        expect(() => readLayoutText(text, 'any.yaml', { catalogue })).toThrow(LayoutProblems);
      }),
    );
  });
});
