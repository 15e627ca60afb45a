import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/** Every import of `src/` against the table of DEVELOPERS.md, which runs from what knows least to what knows most. */
const ROOT = join(import.meta.dirname, '..');
const SRC = join(ROOT, 'src');
/** The bundler's own scripts, which nothing of the program imports. */
const OUTSIDE = 'build';

interface Import {
  file: string;
  from: string;
  to: string;
}

/** The order of the house, as the table has it. */
export function houseOrder(markdown: string): string[] {
  return [...markdown.matchAll(/^\| `([\w.]+)\/?` \|/gm)].map(([, name]) => name);
}

/** What a source file imports from beside itself, by the folder or file under `src/` that it is in. */
export function importsOf(file: string, source: string): Import[] {
  const from = file.split('/')[0];
  // `import`, `export ... from`, `import()`, types too; and imports for nothing but what they do.
  const pattern = /(?:\bfrom|\bimport\s*\(?)\s*['"](\.{1,2}\/[^'"]+)['"]/g;
  return [...source.matchAll(pattern)].map(([, target]) => {
    const path = normalize(join(dirname(file), target)).replace(/\.js$/, '.ts');
    return { file, from, to: path.split('/')[0] };
  });
}

/** Imports that go back up: from a folder to one further down the table, or to one that is not in it. */
export function upward(imports: readonly Import[], order: readonly string[]): string[] {
  const level = (name: string) => order.indexOf(name);
  return imports
    .filter(({ from, to }) => from !== to && (level(to) < 0 || level(to) > level(from)))
    .map(({ file, to }) => `${file} imports from ${to}`);
}

/** A way from a folder back to itself; undefined where there is none. */
export function folderCycle(imports: readonly Import[]): string[] | undefined {
  const edges = new Map<string, Set<string>>();
  for (const { from, to } of imports) {
    if (from !== to) edges.set(from, (edges.get(from) ?? new Set()).add(to));
  }
  const sound = new Set<string>();
  const search = (at: string, way: string[]): string[] | undefined => {
    if (way.includes(at)) return [...way.slice(way.indexOf(at)), at];
    if (sound.has(at)) return undefined;
    for (const next of edges.get(at) ?? []) {
      const found = search(next, [...way, at]);
      if (found) return found;
    }
    sound.add(at);
    return undefined;
  };
  for (const folder of edges.keys()) {
    const found = search(folder, []);
    if (found) return found;
  }
  return undefined;
}

const order = houseOrder(readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8'));
const imports = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.[jt]s$/.test(file) && !file.endsWith('.d.ts'))
  .map((file) => relative(SRC, join(SRC, file)))
  .flatMap((file) => importsOf(file, readFileSync(join(SRC, file), 'utf8')));

describe('one way down the house', () => {
  test('the table and the folders are the same', () => {
    const folders = readdirSync(SRC, { withFileTypes: true })
      .map(({ name }) => name)
      .filter((name) => name !== OUTSIDE);
    expect([...order].sort()).toEqual(folders.sort());
    expect(imports.length).toBeGreaterThan(1000);
  });

  test('no import goes back up it', () => {
    expect(
      upward(
        imports.filter(({ from }) => from !== OUTSIDE),
        order,
      ),
    ).toEqual([]);
  });

  test('no folder leads back to itself', () => {
    expect(folderCycle(imports)).toBeUndefined();
  });
});

describe('the walk itself', () => {
  test('sees every form of import, types too', () => {
    const source = `
      import { a } from '../study/a.js';
      import type { B } from '../report/b.js';
      export * from '../cli/c.js';
      import '../drill/d.js';
      const e = await import('../layout/e.js');
      import * as z from 'zod';
      import { f } from './f.js';`;
    expect(importsOf('caution/x.ts', source).map(({ to }) => to)).toEqual([
      'study',
      'report',
      'cli',
      'drill',
      'layout',
      'caution',
    ]);
  });

  test('names what goes back up, and what is in no row', () => {
    const found = upward(
      [
        { file: 'caution/x.ts', from: 'caution', to: 'study' },
        { file: 'study/y.ts', from: 'study', to: 'caution' },
        { file: 'study/z.ts', from: 'study', to: 'odds' },
      ],
      ['caution', 'study'],
    );
    expect(found).toEqual(['caution/x.ts imports from study', 'study/z.ts imports from odds']);
  });

  test('finds a cycle by way of a third folder', () => {
    const way = (from: string, to: string) => ({ file: `${from}/x.ts`, from, to });
    expect(folderCycle([way('a', 'b'), way('b', 'c'), way('c', 'a')])).toEqual(['a', 'b', 'c', 'a']);
    expect(folderCycle([way('a', 'b'), way('a', 'c'), way('b', 'c')])).toBeUndefined();
  });
});
