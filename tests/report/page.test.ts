import { beforeAll, describe, expect, test } from 'vitest';
import { makeSheet } from '../../src/drill/generate.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { answerDocument } from '../../src/report/answer-document.js';
import { keyDocument } from '../../src/report/drill/key-document.js';
import { sheetDocument } from '../../src/report/drill/sheet-document.js';
import { htmlOf } from '../../src/report/html.js';
import { flowing, meeting, short } from './answers.js';
import { reaching, requiring } from './field-answers.js';

/** Elements that have no end of their own. */
const VOID = ['meta', 'br', 'hr', 'img', 'link', 'input'];
/** What may stand in a paragraph or a heading: words, and what marks them. */
const PHRASES = ['span', 'strong', 'em', 'sub', 'sup', 'br', 'code'];
const DRAWN = ['svg', 'g', 'path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'text', 'title'];

const CHILDREN: Record<string, readonly string[]> = {
  html: ['head', 'body'],
  head: ['meta', 'title', 'style'],
  body: ['h1', 'h2', 'p', 'div', 'ul', 'ol', 'section', 'figure'],
  section: ['h1', 'h2', 'p', 'div', 'ul', 'ol', 'section', 'figure'],
  div: ['table'],
  table: ['thead', 'tbody'],
  thead: ['tr'],
  tbody: ['tr'],
  tr: ['th', 'td'],
  ul: ['li'],
  ol: ['li'],
  li: ['p'],
  figure: ['svg', 'figcaption'],
};
for (const tag of ['p', 'h1', 'h2', 'th', 'td', 'figcaption', 'span', 'strong', 'title', 'style'])
  CHILDREN[tag] = PHRASES;
for (const tag of DRAWN) CHILDREN[tag] = tag === 'svg' || tag === 'g' ? DRAWN : ['title'];

/** Elements that stand where none of their kind may, and those that are not closed in their order. */
function misplaced(page: string): string[] {
  const found: string[] = [];
  const open: string[] = [];
  for (const [whole, slash, tag, rest] of page.matchAll(
    /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:"[^"]*"|[^">])*)>/g,
  )) {
    if (slash) {
      if (open.pop() !== tag) found.push(`${whole} closes what is not open`);
      continue;
    }
    const parent = open.at(-1);
    if (parent !== undefined && !CHILDREN[parent]?.includes(tag)) found.push(`<${tag}> in <${parent}>`);
    if (!VOID.includes(tag) && !rest.endsWith('/')) open.push(tag);
  }
  return [...found, ...open.map((tag) => `<${tag}> is never closed`)];
}

const pages: Record<string, string> = {
  check: htmlOf(answerDocument(meeting(), 'us')),
  'a failing check': htmlOf(answerDocument(short(), 'si')),
  flow: htmlOf(answerDocument(flowing(), 'us')),
  require: htmlOf(answerDocument(requiring(), 'us')),
  reach: htmlOf(answerDocument(reaching(), 'us')),
  sheet: '',
  key: '',
};

beforeAll(async () => {
  const rules = await loadRuleSet('wildland');
  const sheet = makeSheet({ topics: [], level: 3, count: 22, seed: 4, rules, units: 'us', choices: 4 });
  const printed = { sheet, code: '9F3A-1C2B', command: 'pumpyoke drill --mix' };
  pages.sheet = htmlOf(sheetDocument(printed));
  pages.key = htmlOf(keyDocument(printed));
});

test('an element that stands where it may not, or is not closed, is found', () => {
  expect(misplaced('<html><body><p><p></p></p></body></html>')).toEqual(['<p> in <p>']);
  expect(misplaced('<html><body><ul><p></p></ul></body></html>')).toEqual(['<p> in <ul>']);
  expect(misplaced('<html><body><p>')).toHaveLength(3);
  expect(misplaced('<html><body></p></body></html>')[0]).toContain('not open');
});

describe.each(Object.keys(pages))('the page of a %s', (name) => {
  test('has every element where it may stand, closed in order', () => {
    expect(pages[name]).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(misplaced(pages[name])).toEqual([]);
  });

  test('has a language, a width for telephones, one title and one first heading', () => {
    const page = pages[name];
    expect(page).toContain('<meta name="viewport" content="width=device-width, initial-scale=1">');
    expect(page.match(/<meta charset="utf-8">/g)).toHaveLength(1);
    expect(page.match(/<title>[^<]+<\/title>/g)?.length).toBeGreaterThan(0);
    expect(page.match(/<h1\b/g)).toHaveLength(1);
  });

  test('gives no name twice, and fetches nothing', () => {
    const page = pages[name];
    const ids = [...page.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const named = [...page.matchAll(/\s(?:aria-labelledby|for|headers)="([^"]*)"/g)].map(([, id]) => id);
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    expect(page).not.toMatch(
      /<script|<link|<img|<iframe|<object|\bsrc=|\bhref=|url\(|@import|https?:\/\/(?!www\.w3\.org)/i,
    );
  });

  test('has as many cells in each row of a table as it has columns', () => {
    for (const [table] of pages[name].matchAll(/<table>[\s\S]*?<\/table>/g)) {
      const rows = table.match(/<tr>[\s\S]*?<\/tr>/g) ?? [];
      const cells = rows.map((row) => row.match(/<t[hd]\b/g)?.length);
      expect(new Set(cells).size).toBe(1);
    }
  });
});
