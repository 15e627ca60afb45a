import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { example, pumpyoke } from '../run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-drill-'));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (name: string): string => join(folder, name);

const SHEET = ['--mix', '--count', '5', '--seed', '7'];
interface JsonSheet {
  sheet: string;
  problems: {
    topic: string;
    level: number;
    question: string;
    answer: { value?: number; unit?: string; word?: string; text: string };
    tolerance: { value: number; unit: string } | null;
    steps: unknown[];
    slips: { slip: string; text: string }[];
    choices: { letter: string; right: boolean }[];
  }[];
}

const sheets = new Map<string, JsonSheet>();

/** Made once for each way to ask for it. */
function sheet(...more: string[]): JsonSheet {
  const name = more.join(' ');
  const made = sheets.get(name) ?? JSON.parse(pumpyoke(['drill', ...SHEET, ...more, '--json', '--key']).out);
  sheets.set(name, made);
  return made;
}

test('the same seed gives the same sheet, another seed another', () => {
  const first = pumpyoke(['drill', ...SHEET]);
  expect(first).toMatchObject({ status: 0, err: '' });
  expect(pumpyoke(['drill', ...SHEET]).out).toBe(first.out);
  expect(pumpyoke(['drill', '--mix', '--count', '5', '--seed', '8']).out).not.toBe(first.out);
});

test('without a seed a new one is drawn, and the sheet says which', () => {
  const { out } = pumpyoke(['drill', '--mix', '--count', '2'], { environment: { COLUMNS: '400' } });
  const command = /pumpyoke (drill .*)$/m.exec(out)?.[1].split(' ') ?? [];
  expect(command).toContain('--seed');
  expect(pumpyoke(command, { environment: { COLUMNS: '400' } }).out).toBe(out);
});

test('JSON carries of each problem topic, level, question, answer, tolerance and steps', () => {
  const { problems } = sheet();
  expect(problems).toHaveLength(5);
  for (const problem of problems) {
    expect(problem).toMatchObject({ topic: expect.any(String), level: 2, question: expect.any(String) });
    expect(problem.steps.length).toBeGreaterThan(0);
    if (problem.answer.word === undefined) {
      expect(problem.answer.value).toBeTypeOf('number');
      expect(problem.tolerance?.unit).toBe(problem.answer.unit);
    }
  }
});

test('a key behind, and a key apart: without being asked a sheet has none', () => {
  expect(pumpyoke(['drill', ...SHEET]).out).not.toContain('Answer:');
  expect(pumpyoke(['drill', ...SHEET, '--key']).out).toContain('Answer:');
  const files = ['--out', at('sheet.md'), '--key-out', at('key.md'), '--form-out', at('form.csv')];
  expect(pumpyoke(['drill', ...SHEET, ...files])).toMatchObject({ status: 0, out: '' });
  expect(readFileSync(at('sheet.md'), 'utf8')).not.toContain('Answer:');
  const key = readFileSync(at('key.md'), 'utf8');
  expect(key).toMatch(/^# Key: /);
  const code = sheet().sheet;
  expect(key).toContain(code);
  expect(readFileSync(at('form.csv'), 'utf8')).toMatch(new RegExp(`^sheet,${code},`));
});

test('where the key is apart, a sheet for programs has no answers either', () => {
  pumpyoke(['drill', ...SHEET, '--out', at('sheet.json'), '--key-out', at('key.json')]);
  expect(readFileSync(at('sheet.json'), 'utf8')).not.toMatch(/"answer"|"steps"|"right"/);
  expect(JSON.parse(readFileSync(at('key.json'), 'utf8')).problems[0]).toHaveProperty('answer');
});

for (const [format, start] of Object.entries({
  text: /^Problems: /,
  markdown: /^# Problems: /,
  html: /^<!doctype html>/,
  csv: /^number,id,topic,/,
})) {
  test(`${format} is printed as such`, () => {
    const { status, out } = pumpyoke(['drill', ...SHEET, '--format', format]);
    expect(status).toBe(0);
    expect(out).toMatch(start);
  });
}

test('in metric units no unit of the other system stands in a problem', () => {
  const text = JSON.stringify(
    sheet('--units', 'si').problems.map(({ question, answer }) => [question, answer]),
  );
  expect(text).toMatch(/kPa|L\/min/);
  expect(text).not.toMatch(/\d (?:psi|gpm|ft|gal|lb)\b/);
});

test('the topics can be listed, and each can be asked for', () => {
  const { topics } = JSON.parse(pumpyoke(['drill', '--list-topics', '--json']).out);
  expect(topics.length).toBeGreaterThanOrEqual(20);
  const ids = topics.map(({ id }: { id: string }) => id);
  const asked = pumpyoke([
    'drill',
    '--topic',
    ids.join(','),
    '--count',
    String(ids.length),
    '--seed',
    '3',
    '--json',
  ]);
  expect(JSON.parse(asked.out).problems.map(({ topic }: { topic: string }) => topic)).toEqual(ids);
});

for (const [why, args, message] of [
  ['an unknown topic', ['--topic', 'nope'], /no topic is called nope/],
  ['an unknown rule set', ['--rules', 'nope'], /nope/],
  ['a level that there is not', ['--level', '6'], /from 1 to 5/],
  ['a count of none', ['--count', '0'], /from 1 to 500/],
  ['a seed that is no number', ['--seed', 'x'], /whole number/],
  ['one choice', ['--choices', '1'], /2 to 4/],
  ['--mix with --topic', ['--mix', '--topic', 'volume'], /give one of them/],
  ['key and sheet in one file', ['--out', '/tmp/x', '--key-out', '/tmp/x'], /same file/],
  ['--ask without a terminal', ['--ask'], /terminal/],
  ['a layout that is not there', ['--layout', '/nowhere.yaml'], /nowhere/],
] as [string, string[], RegExp][]) {
  test(`${why} is refused with status 2 and a line that says what to do`, () => {
    const { status, out, err } = pumpyoke(['drill', ...args]);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(message);
    expect(err).not.toContain('fault of the program');
  });
}

test("problems are made out of the trainer's own lay", () => {
  const run = pumpyoke(['drill', '--layout', example('lay.yaml'), '--count', '2', '--seed', '7', '--json']);
  expect(run).toMatchObject({ status: 0, err: '' });
  expect(JSON.parse(run.out).problems).toHaveLength(2);
});

const forms = new Map<string, string>();

function withAnswers(rows: string[], more: string[] = []): string {
  const name = more.join(' ');
  if (!forms.has(name)) {
    pumpyoke(['drill', ...SHEET, ...more, '--out', at('s.txt'), '--form-out', at('form.csv')]);
    forms.set(name, readFileSync(at('form.csv'), 'utf8'));
  }
  return `${forms.get(name)}${rows.join('\r\n')}\r\n`;
}

const cell = (text: string): string => `"${text.replaceAll('"', '""')}"`;

test('marking: right answers are right, slips are named, blanks and missing rows are survived', () => {
  const { problems } = sheet();
  const right = problems.map(({ answer }) => cell(answer.text));
  const slipped = problems.findIndex(({ slips, answer }) => slips.length > 0 && !answer.word);
  const wrong = right.map((text, index) => (index === slipped ? cell(problems[index].slips[0].text) : text));
  const rows = [`Ann,${right.join(',')}`, `Ben,${wrong.join(',')}`, '', 'Cy,,,', ',,,,,'];
  writeFileSync(at('answers.csv'), `\ufeff${withAnswers(rows)}`);
  const run = pumpyoke(['drill', 'mark', at('answers.csv'), '--json']);
  expect(run).toMatchObject({ status: 0, err: '' });
  const { students, teach_again } = JSON.parse(run.out);
  expect(students.map(({ student, right }: { student: string; right: number }) => [student, right])).toEqual([
    ['Ann', 5],
    ['Ben', 4],
    ['Cy', 0],
  ]);
  expect(students[1].answers[slipped].slip.slip).toBe(problems[slipped].slips[0].slip);
  expect(teach_again.length).toBeGreaterThan(0);
  expect(pumpyoke(['drill', 'mark', at('answers.csv'), '--pass', '70']).status).toBe(1);
});

test('marking: letters of choices are answers', () => {
  const { problems } = sheet('--choices', '4');
  const letters = problems.map(({ choices }) => choices.find(({ right }) => right)?.letter.toLowerCase());
  writeFileSync(at('letters.csv'), withAnswers([`Ann,${letters.join(',')}`], ['--choices', '4']));
  expect(pumpyoke(['drill', 'mark', at('letters.csv'), '--pass', '100']).status).toBe(0);
});

test('marking: one file a student, named after the file', () => {
  const { problems } = sheet();
  const rows = problems.map(({ answer }, index) => `${index + 1};${cell(answer.text)}`);
  const files = ['Dee Dee.csv', 'Eve.csv'].map(at);
  for (const file of files) writeFileSync(file, `problem;answer\n${rows.join('\n')}\n`);
  const run = pumpyoke(['drill', 'mark', ...files, ...SHEET, '--sheet', sheet().sheet, '--format', 'csv']);
  expect(run.status).toBe(0);
  expect(run.out.match(/^Dee Dee,\d,.*,right,/gm)).toHaveLength(5);
  expect(run.out.match(/^Eve,\d,.*,right,/gm)).toHaveLength(5);
});

const plain = 'student,1,2\nAnn,1,2\n';

for (const [why, args, input] of [
  ['another seed', () => ['a.csv', '--seed', '8']],
  ['another rule set', () => ['a.csv', '--rules', 'structural']],
  ['other units', () => ['a.csv', '--units', 'si']],
  ['another level', () => ['a.csv', '--level', '3']],
  ['another code', () => ['-', ...SHEET, '--sheet', '0000-0000'], () => plain],
  [
    'a row of another sheet',
    () => ['-', ...SHEET],
    () => `student,sheet,1,2\nAnn,${sheet().sheet},1,2\nBen,0000-0000,1,2\n`,
  ],
  ['no word of the sheet', () => ['-'], () => plain],
  ['more problems than the sheet has', () => ['-', ...SHEET], () => 'student,1,6\nAnn,1,2\n'],
] as [string, () => string[], (() => string)?][]) {
  test(`marking with ${why} is refused: it could be the wrong key`, () => {
    const [file, ...more] = args();
    if (file !== '-') writeFileSync(at(file), withAnswers(['Ann,1,2,3,4,5']));
    const words = ['drill', 'mark', file === '-' ? file : at(file), ...more];
    const { status, out, err } = pumpyoke(words, { input: input?.() ?? '' });
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(/^error: .*(?:sheet|marked)/);
  });
}

test('marking without a code says that nobody knows whether it is the right sheet', () => {
  const { status, out } = pumpyoke(['drill', 'mark', '-', ...SHEET], { input: 'student,1\nAnn,5\n' });
  expect(status).toBe(0);
  expect(out.replace(/\s+/g, ' ')).toContain('The answers do not say which sheet they belong to');
});
