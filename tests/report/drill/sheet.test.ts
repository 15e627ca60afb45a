import { expect, test } from 'vitest';
import { keyDocument } from '../../../src/report/drill/key-document.js';
import { sheetDocument } from '../../../src/report/drill/sheet-document.js';
import { htmlOf } from '../../../src/report/html.js';
import { markdownOf } from '../../../src/report/markdown.js';
import { textOf } from '../../../src/report/text.js';
import { printed, progressive, singleLine } from './sheets.js';

const flat = (text: string): string => text.replace(/\s+/g, ' ');

test('a sheet says its code, its rule set, and how to make it again', () => {
  const text = flat(textOf(sheetDocument(printed())));
  expect(text).toContain('Sheet 9F3A-1C2B. Work by the rule set: Wildland field rules.');
  expect(text).toContain(printed().command);
});

test('a sheet holds every question and no answer, slip or step', () => {
  for (const look of [textOf, markdownOf, htmlOf]) {
    const text = flat(look(sheetDocument(printed([singleLine()]))).replaceAll('\u00a0', ' '));
    expect(text).toContain('What must the pump discharge pressure be?');
    expect(text).not.toMatch(/146 psi|25\.9|106 psi|143 psi|7\.3 psi/);
  }
});

test('the wording of one choice does not tell it from another', () => {
  const text = textOf(sheetDocument(printed()));
  expect(text).toContain('A) parallel\nB) series\n');
});

test('a key gives all that a trainer wants: given, find, rules, steps, answer, tolerance, solver, slips', () => {
  const text = flat(textOf(keyDocument(printed())));
  for (const part of [
    'Q = 60 gpm, flow',
    'C = 24, coefficient of 1-1/2 in hose (fire department slides',
    'Find: PDP, pump discharge pressure, in psi.',
    'Elevation 0.5 psi per foot (NWCG Firefighter Math 3.4)',
    'FL = C * (Q / (100 gpm))^2 * (L / (100 ft)) * 1 psi',
    '= 24 * (60 gpm / (100 gpm))^2 * (300 ft / (100 ft)) * 1 psi',
    '= 25.9 psi (shown to 0.1 psi)',
    'Answer: 146 psi (± 7.3 psi is right).',
    "By hand 146 psi; the program's own solution 143 psi. The field rule",
    '106 psi Elevation was taken off instead of added',
    'Answer: B) series.',
  ]) {
    expect(text).toContain(part);
  }
});

for (const [name, make] of Object.entries({ sheet: sheetDocument, key: keyDocument })) {
  for (const width of [24, 40, 80, 110]) {
    test(`${name}: no line is wider than ${width} columns`, () => {
      const lines = textOf(make(printed()), { width }).split('\n');
      expect(lines.filter((line) => [...line].length > width)).toEqual([]);
    });
  }

  test(`${name}: a colour underlines and says nothing that words do not`, () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is made of them
    const bare = textOf(make(printed()), { colour: true }).replace(/\u001b\[\d+m/g, '');
    expect(bare).toBe(textOf(make(printed())));
  });

  test(`${name}: what looks like a tag or a table in a question stays text`, () => {
    const html = htmlOf(make(printed([progressive()])));
    expect(html).not.toMatch(/<b>|<script/);
    expect(markdownOf(make(printed([progressive()])))).not.toMatch(/<b>|[^\\]\| of/);
  });

  test(`${name}: the page fetches nothing and runs nothing`, () => {
    expect(htmlOf(make(printed()))).not.toMatch(/<script|<link|<img|\bsrc=|\bhref=|url\(|@import/i);
  });
}

test('a key is numbered as its steps are', () => {
  expect(markdownOf(keyDocument(printed([singleLine()])))).toContain('\n2. **Elevation pressure**: EP = ');
});

test('in HTML a problem stays on one page and has room for its working', () => {
  const html = htmlOf(sheetDocument(printed([singleLine()])));
  expect(html).toContain('<section class="together">');
  expect(html).toContain('<div class="room" style="height:4.5em"></div>');
});
