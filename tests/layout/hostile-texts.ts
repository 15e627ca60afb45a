import { MOST_BYTES } from '../../src/layout/read-text.js';

const fill = (piece: string) => piece.repeat(Math.floor(MOST_BYTES / Buffer.byteLength(piece)));
const copies = (names: string) =>
  [...names].map((name, index) => {
    const before = index === 0 ? 'x' : `*${names[index - 1]}`;
    return `${name}: &${name} [${Array(9).fill(before).join(', ')}]`;
  });

/** Texts that ask for far more work than their size, each with the start of the line that it has to end in. */
export const HOSTILE_TEXTS: Record<string, [text: string, message: RegExp]> = {
  'brackets without end': [fill('['), /nested deeper than 250 levels/],
  'braces without end': [fill('{a: '), /nested deeper than 250 levels/],
  'dashes without end': [fill('- '), /nested deeper than 250 levels/],
  'question marks without end': [fill('? '), /nested deeper than 250 levels/],
  'keys nested ten thousand deep': [
    `${Array.from({ length: 10_000 }, (_, level) => `${' '.repeat(Math.min(level, 90))}a: {`).join('')}`,
    /nested deeper than 250 levels/,
  ],
  'keys indented a thousand deep': [
    Array.from({ length: 1000 }, (_, level) => `${' '.repeat(level)}a:`).join('\n'),
    /nested deeper than 250 levels/,
  ],
  'a list of half a million entries': [`[${fill('1,').slice(2)}]`, /more than 200,000 words and marks/],
  'a hundred thousand keys': [
    Array.from({ length: 90_000 }, (_, index) => `k${index}: 1`).join('\n'),
    /more than 200,000 words and marks/,
  ],
  'twenty-five thousand unknown keys': [
    Array.from({ length: 25_000 }, (_, index) => `k${index}: 1`).join('\n'),
    /k0 is no key that is known here/,
  ],
  'twenty thousand wrong steps': [
    `lay:\n${Array.from({ length: 20_000 }, (_, index) => `- s${index}: 1`).join('\n')}`,
    /s0 names no kind of step|no key here names a kind of step/,
  ],
  'the same key over and over': ['a: 1\n'.repeat(25_000), /a is here twice/],
  'comments without end': [fill('#\n'), /more than 200,000 words and marks/],
  'anchors without end': [fill('&a '), /more than 200,000 words and marks/],
  'tags without end': [fill('! '), /more than 200,000 words and marks/],
  'directives without end': [fill('%\n'), /line upon line that starts with %/],
  'documents without end': [fill('---\n'), /a second document starts here/],
  'a quote that never closes': [`a: "${fill('x\n').slice(4)}`, /a text in quotes is not closed/],
  'one word of a million letters': [fill('x').slice(1), /stands here where a whole document is wanted/],
  'one key of a million letters': [`${fill('x').slice(3)}: 1`, /is no key that is known here|key/],
  'a quantity of a million digits': [
    `site: {elevation: ${fill('1').slice(40)} ft}`,
    /larger than any number we hold/,
  ],
  'an id of a million letters': [
    `engine: {pumps: {a: {model: ${fill('x').slice(60)}}}}`,
    /the catalogue has no pump xxx/,
  ],
  'copies of copies of copies': [
    copies('abcdefghijkl').join('\n'),
    /more than 200,000 values once its copies are written out/,
  ],
  'copies nested thousands deep': [
    Array.from(
      { length: 5000 },
      (_, index) => `a${index}: &a${index} [${index === 0 ? 1 : `*a${index - 1}`}]`,
    ).join('\n'),
    /copies are written out/,
  ],
  'steps that copy themselves many times': [
    `engine: x\nlay: [${Array.from({ length: 20_000 }, (_, index) => (index === 0 ? '&a {hose: x}' : '*a')).join(', ')}]`,
    /the engine's file x cannot be read/,
  ],
  'repeats of repeats of repeats': [
    `engine: x\nlay: [${'{repeat: 100000, steps: ['.repeat(50)}{gauge: x}${']}'.repeat(50)}]`,
    /more than 100,000 steps/,
  ],
};

/** Short texts that are wrong in ways of their own. */
export const ODD_TEXTS: Record<string, [text: string, message: RegExp]> = {
  empty: ['', /nothing is written here but blanks or comments/],
  'only blanks': [' \n\n  \n', /nothing is written here but blanks or comments/],
  'only comments': ['# a\n# b\n', /nothing is written here but blanks or comments/],
  'only the mark of a document': ['---\n...\n', /nothing is written here but blanks or comments/],
  'several documents': ['engine: a\n---\nengine: b\n', /:3:1: a second document starts here/],
  'a list at the top': ['- 1\n- 2\n', /:1:1: a list stands here where a whole document is wanted/],
  'a text at the top': ['hello', /:1:1: "hello" stands here where a whole document is wanted/],
  'a number at the top': ['42', /:1:1: 42 stands here where a whole document is wanted/],
  'keys twice': ['engine: a\ntitle: b\nengine: c\n', /:3:1: engine is here twice; the first is on line 1/],
  'a tab as indentation': ['engine:\n\ttank: x\n', /:2:1: a tab indents this line/],
  'a tag of a program': [
    'engine: !!js/function "function () {}"\n',
    /:1:9: tags such as !!js\/function are not read here/,
  ],
  'a tag of its own': ['engine: !thing x\n', /:1:9: tags such as !thing are not read here/],
  'a binary tag': ['title: !!binary aGVsbG8=\n', /:1:8: tags such as !!binary are not read here/],
  'a merge of mappings': [
    'a: &a {x: 1}\nengine:\n  <<: *a\n',
    /:3:3: << \(merging of mappings\) is not read here/,
  ],
  'a copy within itself': [
    'engine: &a {tank: *a}\n',
    /:1:19: \*a stands within what it copies, so it has no end/,
  ],
  'a copy of nothing': [
    'engine: *nothing\n',
    /:1:9: \*nothing copies something that is not named &nothing before it/,
  ],
  'a key __proto__': ['__proto__: {polluted: 1}\nengine: x\n', /:1:1: __proto__ cannot be a name/],
  'an outlet __proto__': ['engine:\n  outlets: {__proto__: []}\n', /:2:13: __proto__ cannot be a name/],
  'a key constructor': [
    'constructor: {prototype: {polluted: 1}}\n',
    /:1:1: constructor is no key that is known here/,
  ],
  'an outlet constructor': [
    'engine: {pumps: {}, outlets: {constructor: 3}}\n',
    /:1:44: 3 stands here; a list of steps is wanted/,
  ],
  'a list as a key': ['? [1, 2]\n: 3\n', /:1:3: a list or mapping stands where a key is wanted/],
  'a key without a name': [': 3\n', /:1:1: a key is missing before this colon/],
  'a bracket that is not closed': [
    'lay: [{cap: true}\nengine: x\n',
    /:2:1: a bracket or brace that is opened above is not closed/,
  ],
  'a quote that is not closed': ['title: "x\nengine: y\n', /a text in quotes is not closed/],
  'two colons in a line': ['title: a: b\n', /:1:8: two keys on one line, or a text with a colon in it/],
  'keys below a value': [
    'title: a\n  b: c\n',
    /:1:8: a value stands here, and below it keys that are indented further/,
  ],
  'a value that is cut off': [
    'engine:\n',
    /:1:1: nothing stands here; the path of an engine's file or a mapping is wanted/,
  ],
};
