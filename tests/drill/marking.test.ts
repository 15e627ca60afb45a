import { beforeAll, describe, expect, test } from 'vitest';
import { makeSheet } from '../../src/drill/generate.js';
import { readCsv } from '../../src/drill/marking/csv.js';
import { markAnswer, markClass, readAnswers } from '../../src/drill/marking/marking.js';
import type { NumberAnswer, Problem } from '../../src/drill/problem.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';

const base = {
  topics: ['single-line', 'water-minutes', 'gauge-faults'],
  level: 2,
  count: 6,
  seed: 5,
  units: 'us',
  choices: 4,
} as const;
let problems: readonly Problem[];
let line: Problem;
let faults: Problem;

beforeAll(async () => {
  const rules = await loadRuleSet('wildland');
  problems = makeSheet({ ...base, rules }).problems;
  [line, , faults] = problems;
});

/** The line's problem with an answer of 72 psi, within 5 psi. */
const seventyTwo = (): Problem => ({
  ...line,
  choices: [],
  answer: { kind: 'number', value: 72, unit: 'psi', text: '72 psi', tolerance: 3, toleranceText: '± 3 psi' },
  slips: [{ slip: 'elevation-dropped', why: 'It was left out.', value: 50, text: '50 psi' }],
});

const valued = (value: number, unit: NumberAnswer['unit'], tolerance: number): Problem => ({
  ...seventyTwo(),
  answer: { kind: 'number', value, unit, text: `${value} ${unit}`, tolerance, toleranceText: '' },
});

describe('an answer', () => {
  for (const text of [
    '72',
    '72 psi',
    '72psi',
    '72 PSI',
    ' 72.0 psi. ',
    'PDP = 72 psi',
    '~72',
    'about 72 psi',
    '496 kPa',
    '4.96 bar',
    '73,5',
    '73,5 psi',
    '71 1/2',
    '72\u00a0psi',
    '+72',
    '74.9',
  ])
    test(`${text} is right for 72 psi within 3`, () =>
      expect(markAnswer(seventyTwo(), 'A', text)).toMatchObject({ verdict: 'right' }));

  for (const text of ['', '   ', '-', '?', 'n/a', '—', '\ufeff'])
    test(`${JSON.stringify(text)} is blank`, () =>
      expect(markAnswer(seventyTwo(), 'A', text).verdict).toBe('blank'));

  for (const text of ['72 gpm', 'lots', '72 or 80', '72 / 0', 'psi'])
    test(`${text} cannot be read as a pressure`, () => {
      const { verdict, note } = markAnswer(seventyTwo(), 'A', text);
      expect(verdict).toBe('unreadable');
      expect(note).toMatch(/.{5,}/);
    });

  test('just outside of the tolerance is wrong, just inside right', () => {
    expect(markAnswer(seventyTwo(), 'A', '75').verdict).toBe('right');
    expect(markAnswer(seventyTwo(), 'A', '75.01').verdict).toBe('wrong');
    expect(markAnswer(seventyTwo(), 'A', '-72').verdict).toBe('wrong');
  });

  test('that a slip gives is known by it, near it too, in other units too', () => {
    for (const text of ['50', '50 psi', '50.5', '345 kPa'])
      expect(markAnswer(seventyTwo(), 'A', text)).toMatchObject({
        verdict: 'wrong',
        slip: { slip: 'elevation-dropped', why: 'It was left out.' },
      });
    expect(markAnswer(seventyTwo(), 'A', '58').slip).toBeUndefined();
  });

  test('in fractions, with thousands or in words of other units', () => {
    expect(markAnswer(valued(0.5, 'min', 0.05), 'A', '1/2').verdict).toBe('right');
    expect(markAnswer(valued(0.5, 'min', 0.05), 'A', '30 s').verdict).toBe('right');
    expect(markAnswer(valued(1.5, 'in', 0.05), 'A', '1-1/2 in').verdict).toBe('right');
    expect(markAnswer(valued(1200, 'L/min', 20), 'A', '1,200').verdict).toBe('right');
    expect(markAnswer(valued(1200, 'L/min', 20), 'A', '1 200 L/min').verdict).toBe('right');
    expect(markAnswer(valued(1200, 'L/min', 20), 'A', '1.200').verdict).toBe('right');
    expect(markAnswer(valued(1200, 'L/min', 20), 'A', '1.200,5').verdict).toBe('right');
    expect(markAnswer(valued(1200, 'L/min', 20), 'A', '317 gpm').verdict).toBe('right');
    expect(markAnswer(valued(12, 'inHg', 0.5), 'A', '12 in Hg').verdict).toBe('right');
    expect(markAnswer(valued(12, 'inHg', 0.5), 'A', '5.9 psi').verdict).toBe('right');
    expect(markAnswer(valued(60, 'lbf', 2), 'A', '60 lb').verdict).toBe('right');
    expect(markAnswer(valued(500, 'kPa', 20), 'A', '500kPa').verdict).toBe('right');
    expect(markAnswer(valued(500, 'kPa', 20), 'A', '5 bar').verdict).toBe('right');
  });

  test('by a choice’s letter', () => {
    for (const { letter, right, slip } of line.choices)
      for (const text of [letter, letter.toLowerCase(), `${letter})`, `(${letter}).`.replace('.', '')]) {
        const marked = markAnswer(line, 'A', text);
        expect(marked.verdict).toBe(right ? 'right' : 'wrong');
        expect(marked.slip?.slip).toBe(right ? undefined : slip);
      }
  });

  test('in words, whole or in part, where only one option is meant', () => {
    if (faults.answer.kind !== 'word') throw new Error('a word is asked');
    const { word, options } = faults.answer;
    expect(markAnswer(faults, 'A', word.toUpperCase()).verdict).toBe('right');
    expect(markAnswer(faults, 'A', 'something else').verdict).toBe('unreadable');
    const short = { 'no fault in the pump': 'no fault', 'starved suction': 'suction' };
    for (const [option, text] of Object.entries(short))
      expect(markAnswer(faults, 'A', text).verdict).toBe(option === word ? 'right' : 'wrong');
    expect(markAnswer(faults, 'A', 'impeller').verdict).toBe('unreadable');
    const wrong = options.find((option) => option !== word) as string;
    expect(markAnswer(faults, 'A', wrong).slip?.slip).toMatch(/./);
  });

  test('that the key prints is right for every problem of a sheet, and every slip is known', async () => {
    const rules = await loadRuleSet('structural');
    for (const units of ['us', 'si'] as const) {
      const sheet = makeSheet({ ...base, topics: [], count: 52, level: 4, units, rules });
      for (const problem of sheet.problems) {
        const printed = problem.answer.kind === 'word' ? problem.answer.word : problem.answer.text;
        expect(markAnswer(problem, 'A', printed), problem.id).toMatchObject({ verdict: 'right' });
        for (const { text } of problem.slips) {
          const marked = markAnswer(problem, 'A', text);
          expect(marked.verdict, `${problem.id} ${text}`).toBe('wrong');
          expect(marked.slip, `${problem.id} ${text}`).toBeDefined();
        }
      }
    }
  });
});

describe('a CSV', () => {
  test('of commas, semicolons or tabs, with quotes, a byte-order mark, any line ends and blank lines', () => {
    const rows = [
      ['student', '1', '2'],
      ['Ash, B.', '72,5', 'say "x"'],
    ];
    expect(readCsv('\ufeffstudent,1,2\r\n\r\n"Ash, B.","72,5","say ""x"""\r\n')).toEqual(rows);
    expect(readCsv('student;1;2\nAsh, B.;72,5;"say ""x"""')).toEqual(rows);
    expect(readCsv('sep=;\nstudent;1;2\nAsh, B.;72,5;"say ""x"""\n;;\n')).toEqual(rows);
    expect(readCsv('student\t1\t2\rAsh, B.\t72,5\t"say ""x"""')).toEqual(rows);
    expect(readCsv('')).toEqual([]);
    expect(readCsv('a,"b\nc"\n')).toEqual([['a', 'b\nc']]);
  });

  test('of one student a row', () => {
    const answers = readAnswers('\ufeffStudent;1;Q2;q 3\nAsh;72,5;;B\nBirch;70', 'file');
    expect(answers).toEqual([
      { student: 'Ash', problem: '1', text: '72,5' },
      { student: 'Ash', problem: 'Q2', text: '' },
      { student: 'Ash', problem: 'q 3', text: 'B' },
      { student: 'Birch', problem: '1', text: '70' },
      { student: 'Birch', problem: 'Q2', text: '' },
      { student: 'Birch', problem: 'q 3', text: '' },
    ]);
  });

  test('of one answer a row, the student being the file’s', () => {
    expect(readAnswers('problem,answer\n1,72 psi\n3,\n', 'Ash')).toEqual([
      { student: 'Ash', problem: '1', text: '72 psi' },
      { student: 'Ash', problem: '3', text: '' },
    ]);
  });

  test('whose decimal commas were taken for separators is spoken of', () => {
    const notes: string[] = [];
    readAnswers('student,1,2\nAsh,72,5,80\n', 'file', notes);
    expect(notes).toEqual([
      expect.stringMatching(/Ash: row 2 has more cells than the header.*decimal comma/),
    ]);
    readAnswers('', 'empty', notes);
    expect(notes[1]).toMatch(/empty: the file is empty/);
  });
});

describe('a class', () => {
  const key = (problem: Problem) =>
    problem.answer.kind === 'word' ? problem.answer.word : problem.answer.text;

  test('is marked by student and by topic, with what to teach again, worst first', () => {
    const slip = problems.map(({ slips }) => slips[0]);
    const answers = [
      ...problems.map((problem) => ({ student: 'Ash', problem: `${problem.number}`, text: key(problem) })),
      ...problems.map((problem, i) => ({ student: 'Birch', problem: problem.id, text: slip[i].text })),
      { student: 'Cedar', problem: 'Q1', text: key(line) },
      { student: 'Cedar', problem: '99', text: '5' },
    ];
    const marking = markClass(problems, answers);
    const [ash, birch, cedar] = marking.students;
    expect([ash, birch, cedar].map(({ right, of }) => [right, of])).toEqual([
      [6, 6],
      [0, 6],
      [1, 6],
    ]);
    expect(ash.teachAgain).toEqual([]);
    expect(birch.teachAgain).toHaveLength(3);
    expect(birch.answers.map((answer) => answer.slip?.slip)).toEqual(slip.map((each) => each.slip));
    expect(cedar.answers.filter(({ verdict }) => verdict === 'blank')).toHaveLength(5);
    expect(marking.notes).toEqual(['Cedar: no problem of this sheet is called 99']);
    const lines = marking.topics.find(({ topic }) => topic === 'single-line');
    expect(lines).toMatchObject({ right: 3, wrong: 2, blank: 1 });
    expect(lines?.slips.reduce((sum, each) => sum + each.count, 0)).toBe(2);
    const shares = marking.topics.map(({ right, wrong, blank }) => right / (right + wrong + blank));
    expect(marking.teachAgain).toHaveLength(shares.filter((share) => share < 0.7).length);
    expect(marking.teachAgain.every((sentence) => /\d of \d+ right/.test(sentence))).toBe(true);
  });

  test('counts the last of two answers to one problem, and says so', () => {
    const twice = [
      { student: 'Ash', problem: '1', text: '1' },
      { student: 'Ash', problem: 'q1', text: key(line) },
    ];
    const { students, notes } = markClass(problems, twice);
    expect(students[0].right).toBe(1);
    expect(notes).toEqual(['Ash: problem 1 is answered twice; the last answer counts']);
  });
});
