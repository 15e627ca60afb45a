import { expect, test } from 'vitest';
import { withArticle } from '../../src/quantity/article.js';

for (const words of [
  'an appliance',
  'an open end',
  'an automatic nozzle',
  'an 8 mm tip',
  'an 11/16 in tip',
  'an 18 mm tip',
  'an 80 psi nozzle',
  'a hose',
  'a 7/8 in tip',
  'a 1-1/8 in tip',
  'a 1.8 in bore',
  'a 110 psi nozzle',
  'a 1 in tip',
  'a unit',
  'a one-way valve',
])
  test(`it is ${words}`, () => expect(withArticle(words.replace(/^an? /, ''))).toBe(words));
