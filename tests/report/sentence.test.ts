import { expect, test } from 'vitest';
import { literal } from '../../src/caution/caution.js';
import { InternalFault } from '../../src/report/checked-number.js';
import { figuresIn } from '../../src/report/figures.js';
import { statementText } from '../../src/report/sentence.js';
import { inch, psi } from './answers.js';

const us = figuresIn('us');
const si = figuresIn('si');

test('a sentence is filled in the units of the reader', () => {
  const statement = {
    template: 'Relief opens at {opens_at} on {where}',
    values: { opens_at: { value: psi(400), dimension: 'pressure' as const }, where: 'the manifold' },
  };
  expect(statementText(statement, us)).toBe('Relief opens at 400 psi on the manifold');
  expect(statementText(statement, si)).toBe('Relief opens at 2,758 kPa on the manifold');
});

test('a bore is in inches or millimetres', () => {
  const statement = {
    template: 'tip {bore}',
    values: { bore: { value: inch(0.5), dimension: 'length' as const } },
  };
  expect(statementText(statement, us)).toBe('tip 0.5 in');
  expect(statementText(statement, si)).toBe('tip 12.7 mm');
});

test('a placeholder without a value is a fault, whatever it is called', () => {
  for (const name of ['flow', 'constructor', '__proto__', 'toString']) {
    expect(() => statementText({ template: `at {${name}}` }, us)).toThrow(InternalFault);
  }
});

test('a value with braces in it is not filled again', () => {
  expect(statementText({ template: '{a}', values: { a: '{b}', b: 'no' } }, us)).toBe('{b}');
});

test('a NaN in a sentence is a fault that names it', () => {
  const statement = {
    template: '{flow}',
    values: { flow: { value: Number.NaN, dimension: 'flow' as const } },
  };
  expect(() => statementText(statement, us)).toThrow(/flow is NaN/);
});

test.each(['{n}', '{value}', '{{at}}', '}{', '{', '$&', '{pump', 'at}}', '%s'])(
  'a name %s that stands in the template itself is printed as it was written',
  (name) => {
    const values = { pump: 'pump a', n: 'wrong', value: 'wrong', at: 'wrong' };
    const template = `{pump} feeds ${literal(name)}{pump}`;
    expect(statementText({ template, values }, us)).toBe(`pump a feeds ${name}pump a`);
  },
);
