import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import {
  type Answer,
  advanceLayout,
  answerDocument,
  cardOf,
  cardText,
  checkLayout,
  clockOf,
  htmlOf,
  type Layout,
  markdownOf,
  operateLayout,
  reachOf,
  requireOf,
  textOf,
  toJson,
} from '../../src/index.js';
import { type Document, layoutFrom } from '../support/layouts.js';

const read = (name: string): Document =>
  parse(readFileSync(fileURLToPath(new URL(`../../data/examples/${name}`, import.meta.url)), 'utf8'));

/** An example with its engine in it, so that every name in it is at hand. */
function whole(name: string): Document {
  const layout = read(name);
  return typeof layout.engine === 'string' ? { ...layout, engine: read(layout.engine) } : layout;
}

/** The document with every name, title and label of a gauge replaced; no two parts have the same one. */
function renamed(document: unknown, nameOf: (n: number) => string): Document {
  let n = 0;
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, one]) => {
        const isName = ['name', 'title', 'gauge'].includes(key) && typeof one === 'string';
        return [key, isName ? nameOf(n++) : walk(one)];
      }),
    );
  };
  return walk(document) as Document;
}

const QUESTIONS: Record<string, (layout: Layout) => Promise<Answer>> = {
  check: checkLayout,
  flow: (layout) => operateLayout(layout, { allCases: true }),
  require: requireOf,
  reach: (layout) => reachOf(layout, {}),
  advance: advanceLayout,
  clock: (layout) => clockOf(layout, {}),
};

/** Every question that this layout answers; a name changes nothing of that. */
async function answered(document: Document): Promise<Map<string, Answer>> {
  const layout = layoutFrom(document);
  const found = new Map<string, Answer>();
  for (const [question, ask] of Object.entries(QUESTIONS)) {
    try {
      found.set(question, await ask(layout));
    } catch (error) {
      if (!(error instanceof Error) || error.name === 'InternalFault') throw error;
    }
  }
  return found;
}

/** What stands for a name while the two answers are held against each other: a capital, as sentences begin with one. */
const benign = (n: number) => `QQ${n}QQ`;

const textsIn = (value: unknown): unknown => JSON.stringify(value);

const inJson = (text: string): string => JSON.stringify(text).slice(1, -1);

/** The placeholders of templates, and what else a filler, a shell or a table might take for its own. */
const HOSTILE = [
  '{value}',
  '{at}',
  '{limit}',
  '{pump}',
  '{{',
  '}}',
  '{',
  '}',
  '%s',
  '$&',
  '$1',
  '$`',
  '\\',
  '|',
  '`',
  '<b>',
  "'",
  '"',
  '=1+1',
  '\u202e',
  '\u200f',
  'x'.repeat(200),
];

/** No counter of a repeat, which `{n}` is by design, and a first letter that has no case. */
const hostile = fc
  .array(fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ minLength: 1, maxLength: 4 })), {
    minLength: 1,
    maxLength: 5,
  })
  .map((parts) =>
    parts
      .join('')
      .replaceAll('{n}', '{m}')
      .replace(/\p{Cc}/gu, '')
      .replace(/\s/g, ''),
  );

async function heldTo(example: string, name: string): Promise<void> {
  const document = whole(example);
  const nameOf = (n: number) => `9${name}${n}Z`;
  const [plain, odd] = [await answered(renamed(document, benign)), await answered(renamed(document, nameOf))];
  expect([...odd.keys()]).toEqual([...plain.keys()]);
  expect(odd.size).toBeGreaterThan(0);
  for (const [question, answer] of odd) {
    const wanted = String(textsIn(toJson(plain.get(question) as Answer, 'us'))).replace(
      /QQ(\d+)QQ/g,
      (_, n) => inJson(nameOf(Number(n))),
    );
    expect(textsIn(toJson(answer, 'us'))).toBe(wanted);
    const pages = answerDocument(answer, 'us', false);
    for (const page of [textOf(pages, { width: 80 }), markdownOf(pages), htmlOf(pages)]) {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
      expect(page).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f\u202e\u200f]/);
      expect(page).not.toContain('undefined');
    }
  }
}

const EXAMPLES = ['demo.yaml', 'lay.yaml', 'downhill.yaml', 'relay.yaml', 'ridge.yaml', 'short.yaml'];

describe('a name changes no answer and no sentence', () => {
  for (const example of EXAMPLES) {
    for (const name of ['{value}{at}{limit}{m} {pump} {{x}} $& %s \\'])
      test(`${name} in ${example}`, () => heldTo(example, name));
  }

  test('any name', () =>
    fc.assert(fc.asyncProperty(fc.constantFrom(...EXAMPLES), hostile, heldTo), {
      numRuns: 6,
      seed: 20261126,
    }));

  test('a card', async () => {
    const layout = layoutFrom(renamed(whole('lay.yaml'), (n) => `{value}{at}${n}`));
    expect(cardText(await cardOf(layout, {}), 'us', '2026-01-01')).toContain('{value}{at}');
  });
});
