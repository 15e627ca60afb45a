import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';

/**
 * Every public law says what it computes, by which formula, in which units and range, what it throws and where it comes from; and
 * the example in its docstring is run here. A figure in an example is right to half a unit of its last digit.
 */
const ROOT = join(import.meta.dirname, '../../src/physics');
/** Files that state no law: units, constants, checks of an argument, the shape that curves share. */
const NO_LAW = new Set(['constants.ts', 'customary.ts', 'range.ts', 'pump-curve/curve.ts']);

interface Law {
  file: string;
  name: string;
  parameters: string[];
  doc: string;
  isClass: boolean;
}

const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => relative(ROOT, join(ROOT, file)))
  .sort();

const laws = files.filter((file) => !NO_LAW.has(file)).flatMap(lawsOf);

const exports: Record<string, unknown> = Object.assign(
  {},
  ...(await Promise.all(files.map((file) => import(join(ROOT, file))))),
);

function lawsOf(file: string): Law[] {
  const source = readFileSync(join(ROOT, file), 'utf8');
  const pattern =
    /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?export (?:async )?(function|class) (\w+)(?:\(([\s\S]*?)\): )?/g;
  return [...source.matchAll(pattern)].map(([, doc = '', kind, name, parameters = '']) => ({
    file,
    name,
    isClass: kind === 'class',
    doc: doc.replace(/^ *\* ?/gm, ''),
    parameters:
      kind === 'class' ? [] : [...parameters.matchAll(/(?:^|,)\s*(\w+)\s*[:=?]/g)].map(([, p]) => p),
  }));
}

/** Wrappers whose law stands in the docstring of the function that they call. */
const WRAPPERS = new Set(['fitQuadratic', 'SpeedCurve']);

describe('every law in src/physics', () => {
  test('is found', () => {
    expect(laws.length).toBeGreaterThan(60);
  });

  for (const { file, name, doc, parameters, isClass } of laws) {
    if (WRAPPERS.has(name)) continue;
    test(`${file} ${name} states formula, range, errors, source and units`, () => {
      for (const part of ['Formula:', 'Range:', 'Errors:', 'Source:']) expect(doc).toContain(part);
      if (isClass) return;
      for (const parameter of parameters) {
        expect(doc, parameter).toMatch(new RegExp(`@param ${parameter} [^@]*\\[[^\\]]+\\]`));
      }
      expect(doc).toMatch(/@returns [^@]*\[[^\]]+\]/);
      expect(doc).toContain('@example');
    });
  }

  for (const { file, name, doc } of laws) {
    for (const [, expression, printed] of doc.matchAll(/@example (.+?) \/\/ => (\S+)/g)) {
      test(`${file} ${name}: ${expression} gives ${printed}`, () => {
        const run = new Function(...Object.keys(exports), `return ${expression};`);
        const found: number = run(...Object.values(exports));
        expect(Math.abs(found - Number(printed)), `${found}`).toBeLessThanOrEqual(
          halfUnit(printed) * 1.000001,
        );
      });
    }
  }
});

/** Half a unit in the last digit that a figure prints. */
function halfUnit(printed: string): number {
  const [mantissa, exponent = '0'] = printed.split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}
