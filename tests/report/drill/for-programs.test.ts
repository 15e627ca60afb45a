import { expect, test } from 'vitest';
import { csvOf } from '../../../src/report/csv.js';
import { markingCsv } from '../../../src/report/drill/marking-csv.js';
import { markingDocument } from '../../../src/report/drill/marking-document.js';
import { markingJson } from '../../../src/report/drill/marking-json.js';
import { answerForm, sheetCsv } from '../../../src/report/drill/sheet-csv.js';
import { sheetJson } from '../../../src/report/drill/sheet-json.js';
import { textOf } from '../../../src/report/text.js';
import { marked, printed, singleLine } from './sheets.js';

/** A reader of RFC 4180 that shares nothing with the writer. */
function rowsOf(csv: string): string[][] {
  const rows: string[][] = [[]];
  const pattern = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/gy;
  for (let match = pattern.exec(csv); match && pattern.lastIndex <= csv.length; match = pattern.exec(csv)) {
    rows[rows.length - 1].push(match[1]?.replaceAll('""', '"') ?? match[2]);
    if (match[3] === '') break;
    if (match[3] === '\r\n') rows.push([]);
  }
  return rows.filter((row) => row.length > 1 || row[0] !== '');
}

test('JSON has of each problem the topic, level, question, answer, tolerance and steps', () => {
  const { problems, sheet } = sheetJson(printed());
  expect(sheet).toBe('9F3A-1C2B');
  expect(problems[0]).toMatchObject({
    topic: 'single-line-up',
    level: 2,
    answer: { value: 145.92, unit: 'psi', text: '146 psi' },
    tolerance: { value: 7.3, unit: 'psi' },
    solver: { answer: { value: 143.3, unit: 'psi' } },
  });
  expect(problems[0]).toHaveProperty('steps.0.formula', singleLine().steps[0].formula);
  expect(problems[1]).toMatchObject({ answer: { word: 'series' }, tolerance: null });
});

test('JSON of a sheet whose key goes elsewhere holds no answer', () => {
  const text = JSON.stringify(sheetJson(printed(), false));
  expect(text).toContain('What must the pump discharge pressure be?');
  expect(text).not.toMatch(/145\.92|146 psi|"right"|"steps"|"slips"|"tolerance"|"answer"/);
});

test('a number that is none never reaches JSON', () => {
  const problem = singleLine();
  const broken = { ...problem, answer: { ...problem.answer, value: Number.NaN } } as typeof problem;
  expect(() => sheetJson(printed([broken]))).toThrow(/problems\[0\]\.answer/);
});

test('CSV has one problem a row under one heading a column', () => {
  const rows = rowsOf(sheetCsv(printed()));
  expect(rows).toHaveLength(4);
  expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  const cell = (row: number, title: string) => rows[row][rows[0].indexOf(title)];
  expect(cell(1, 'answer')).toBe('145.92');
  expect(cell(1, 'tolerance')).toBe('7.3');
  expect(cell(2, 'choice_b')).toBe('series');
  expect(cell(2, 'answer_letter')).toBe('B');
  expect(cell(3, 'question')).toContain('& "more" of');
});

test('CSV of a sheet whose key goes elsewhere holds no answer', () => {
  expect(sheetCsv(printed(), false)).not.toMatch(/145\.92|answer|slips|steps/);
});

test('no cell is worked out as a formula by a spreadsheet, and numbers stay numbers', () => {
  expect(csvOf([['=1+1', '+cmd', '@x', '-3.5', '-x', -2]])).toBe("'=1+1,'+cmd,'@x,-3.5,'-x,-2\r\n");
});

test('the form for answers says in its first row which sheet it is for', () => {
  const [first, second, ...rest] = rowsOf(answerForm(printed()));
  expect(first).toEqual(['sheet', '9F3A-1C2B', printed().command]);
  expect(second).toEqual(['student', '1', '2', '3']);
  expect(rest).toEqual([]);
});

const marking = (pass?: number) => ({
  marking: marked(),
  code: '9F3A-1C2B',
  command: printed().command,
  ...(pass !== undefined && { pass }),
});

test('marks name each wrong answer, the slip behind it, and what to teach again', () => {
  const text = textOf(markingDocument(marking())).replace(/\s+/g, ' ');
  expect(text).toMatch(/^1 student: 1 of 2 answers right Marked by the key of sheet 9F3A-1C2B/);
  expect(text).toContain('wrong: 106 psi; the key says 146 psi Elevation was taken off instead of added');
  expect(text).toContain('elevation is added where the nozzle is above the pump');
  expect(text).toContain('To look at - Row 5 holds too many cells.');
});

test('who passes is said in words', () => {
  expect(textOf(markingDocument(marking(50)))).toContain('(50 %), passed');
  expect(textOf(markingDocument(marking(51)))).toContain('(50 %), NOT PASSED');
});

test('marks as JSON and CSV carry verdicts, slips and what to teach again', () => {
  const json = markingJson(marking(70));
  expect(json.students[0]).toMatchObject({ right: 1, of: 2, percent: 50, passed: false });
  expect(json.students[0].answers[0]).toMatchObject({
    verdict: 'wrong',
    read: { value: 106, unit: 'psi' },
    slip: { slip: 'elevation_sign' },
  });
  const rows = rowsOf(markingCsv(marking()));
  expect(rows).toHaveLength(3);
  expect(rows[1][rows[0].indexOf('slip')]).toBe('elevation_sign');
});
