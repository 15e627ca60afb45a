import { expect, test } from 'vitest';
import { answerFile, decoded } from '../../../src/cli/commands/drill-answer-file.js';

const command = "pumpyoke drill --topic a,b --level 2 --count 3 --seed 7 --rules 'my rules.yaml' --units us";

for (const [name, first] of Object.entries({
  'commas and quotes': `sheet,9F3A-1C2B,"${command}"`,
  semicolons: `sheet;9F3A-1C2B;${command};;`,
  tabs: `sheet\t9F3A-1C2B\t${command}`,
  'a byte-order mark': `\ufeffsheet,9F3A-1C2B,"${command}",,`,
  'a colon and other case': `"Sheet: 9F3A-1C2B",,"${command}"`,
  'blank rows before it': `\r\n,,\r\nSHEET,9F3A-1C2B,"${command}"`,
})) {
  for (const end of ['\n', '\r\n', '\r']) {
    test(`the row about the sheet is read with ${name} and ${JSON.stringify(end)}`, () => {
      const answers = `student,1,2,3${end}Ann,"72,5",,3/8${end}`;
      expect(answerFile('/tmp/Ann B.csv', `${first}${end}${answers}`)).toEqual({
        name: '/tmp/Ann B.csv',
        student: 'Ann B',
        csv: answers,
        code: '9F3A-1C2B',
        command,
      });
    });
  }
}

test('a file without that row keeps all of its rows', () => {
  const text = 'student,1,2\nSheet Metal Sam,3,4\n';
  expect(answerFile('x.csv', text)).toEqual({ name: 'x.csv', student: 'x', csv: text });
});

test('a code alone will do', () => {
  expect(answerFile('x.csv', 'sheet,9F3A-1C2B\nstudent,1\n')).toMatchObject({
    code: '9F3A-1C2B',
    csv: 'student,1\n',
  });
});

test('an empty file is one without answers', () => {
  expect(answerFile('x.csv', '')).toEqual({ name: 'x.csv', student: 'x', csv: '' });
});

test('what spreadsheets call Unicode and what they wrote before it is understood', () => {
  const text = 'student,1\nÄnne,½\n';
  const utf16 = Buffer.from(`\ufeff${text}`, 'utf16le');
  expect(decoded(utf16).replace('\ufeff', '')).toBe(text);
  expect(decoded(Buffer.from(utf16).swap16()).replace('\ufeff', '')).toBe(text);
  expect(decoded(Buffer.from(`\ufeff${text}`)).replace('\ufeff', '')).toBe(text);
  expect(decoded(Buffer.from(text, 'latin1'))).toBe(text);
});
