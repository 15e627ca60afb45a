import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LanguageServer } from '../support/language-server.js';

const at = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const SCHEMA = pathToFileURL(at('schema/layout.json')).href;
const MODELINE = `# yaml-language-server: $schema=${SCHEMA}\n`;

const server = new LanguageServer();
beforeAll(() => server.start());
afterAll(() => server.stop());

let documents = 0;

/** Opens a layout whose text has `|` where the cursor stands. */
async function opened(text: string) {
  const whole = MODELINE + text;
  const before = whole.slice(0, whole.indexOf('|')).split('\n');
  const uri = `file:///tmp/layout-${++documents}.yaml`;
  const diagnostics = await server.open(uri, whole.replace('|', ''));
  return { uri, line: before.length - 1, character: before[before.length - 1].length, diagnostics };
}

const hover = async (text: string) => {
  const { uri, line, character } = await opened(text);
  return server.hover(uri, line, character);
};

const complete = async (text: string) => {
  const { uri, line, character } = await opened(text);
  return server.complete(uri, line, character);
};

const ENGINE = 'engine:\n  pumps: {a: {model: demo-highlift}}\n';

describe('a YAML language server, by the modeline of a layout', () => {
  const files = ['data/examples', 'data/new'].flatMap((folder) =>
    readdirSync(at(folder))
      .filter((name) => name.endsWith('.yaml'))
      .map((name) => at(`${folder}/${name}`)),
  );

  it.each(files)('finds nothing wrong with %s', async (file) => {
    const text = readFileSync(file, 'utf8');
    expect(text).toMatch(/^# yaml-language-server: \$schema=\.\.\/\.\.\/schema\/(layout|engine)\.json\n/);
    expect(await server.open(pathToFileURL(file).href, text)).toEqual([]);
  });

  it('says what a key means and in which units it is written', async () => {
    expect(await hover(`site:\n  elev|ation: 300 ft\n${ENGINE}`)).toMatch(
      /Height above sea level.*with its unit \(.*ft.*m.*\)/,
    );
    expect(await hover(`${ENGINE}lay:\n  - hose: forestry-1.5\n    len|gth: 100 ft`)).toMatch(
      /Length along the hose.*ft/,
    );
    expect(await hover('engine:\n  pumps: {a: {model: demo-highlift, we|ar: 3 %}}\n')).toMatch(
      /Head lost since the curve.*%/,
    );
    expect(
      await hover('engine:\n  tank: {capa|city: 500 gal}\n  pumps: {a: {model: demo-highlift}}\n'),
    ).toMatch(/Water that it holds when full.*gal/);
  });

  it('completes keys, words and ids', async () => {
    expect(await complete(`${ENGINE}sta|`)).toContain('staging');
    expect(await complete(`${ENGINE}staging: |`)).toEqual(
      expect.arrayContaining(['parallel', 'series_reversed']),
    );
    expect(await complete(`${ENGINE}lay:\n  - hose: |`)).toEqual(
      expect.arrayContaining(['forestry-1.5', 'double-jacket-2.5']),
    );
    expect(await complete(`${ENGINE}lay:\n  - hose: forestry-1.5\n    |`)).toContain('length');
    expect(await complete('engine:\n  pumps:\n    a:\n      model: |')).toContain('demo-highlift');
    expect(await complete(`${ENGINE}typing:\n  scheme: nwcg\n  class: |`)).toContain('engine-3');
  });

  it('marks what is wrong where it stands', async () => {
    const lines = async (text: string) =>
      (await opened(`${text}|`)).diagnostics.map(({ message, range }) => `${range.start.line}: ${message}`);
    expect(await lines(`${ENGINE}stagin: parallel\n`)).toEqual([expect.stringMatching(/^3: .*stagin/)]);
    expect(await lines(`${ENGINE}site:\n  elevation: 300\n`)).toEqual([
      expect.stringMatching(/^4: .*string/),
    ]);
    expect(await lines(`${ENGINE}staging: both\n`)).toEqual([expect.stringMatching(/^3: .*parallel/)]);
  });
});
