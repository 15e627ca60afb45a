import { expect, test } from 'vitest';
import { LayoutProblems } from '../../src/layout/problem.js';
import { noSteadyAnswerText } from '../../src/report/no-steady-answer.js';
import { problemsText } from '../../src/report/problems.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';

const excerpt = `    - hose: forestry-1.5   # ${'long talk '.repeat(3)} length: 300`;

const wrong = new LayoutProblems([
  {
    file: 'engine-614.yaml',
    path: ['lay', 0, 'length'],
    line: 12,
    column: excerpt.indexOf('300') + 1,
    excerpt,
    markerOffset: excerpt.indexOf('300'),
    markerLength: 3,
    message: '300 has no unit: did you mean 300 ft?',
    expected: 'a length, for instance 300 ft',
  },
  { file: 'pump.yaml', path: [], message: 'no such file' },
]);

for (const width of [40, 80]) {
  test(`every problem says where, what, the text with a marker under it, and what to write, at ${width} columns`, () => {
    const lines = problemsText(wrong, { width }).split('\n');
    expect(lines[0]).toBe('2 problems in the layout; nothing was computed.'.slice(0, lines[0].length));
    expect(lines).toContain(`engine-614.yaml:12:${excerpt.indexOf('300') + 1}`);
    const marker = lines.findIndex((line) => line.includes('^^^'));
    const at = lines[marker].indexOf('^^^');
    expect(lines[marker - 1].slice(at, at + 3)).toBe('300');
    expect(lines.join(' ').replace(/\s+/g, ' ')).toContain('Expected: a length, for instance 300 ft.');
    expect(lines).toContain('pump.yaml');
    expect(lines).toContain('  no such file.');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
  });
}

test('a search that stopped early says that there may be more', () => {
  const many = new LayoutProblems(wrong.problems, true);
  expect(problemsText(many, {})).toMatch(/^More than 2 problems in the layout/);
});

test('no steady answer names the part, what to do, and what the solver saw', () => {
  const failure = new NoSteadyAnswer({
    where: ['check valve of pump a', 'check valve of pump b'],
    message: 'both check valves are shut, so nothing fixes the pressure at the manifold',
    action: 'turn one of them round',
    detail: '40 iterations',
  });
  const text = noSteadyAnswerText(failure, { width: 40 });
  expect(text.replace(/\s+/g, ' ')).toBe(
    'NO STEADY ANSWER: both check valves are shut, so nothing fixes the pressure at the manifold. ' +
      'Where: check valve of pump a; check valve of pump b. Do: turn one of them round. The solver: 40 iterations. ',
  );
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(40);
});

test('equal problems are told once, with every place', () => {
  const same = (line: number, file = 'lay.yaml') => ({
    file,
    path: ['lay', line],
    line,
    column: 3,
    message: '300 has no unit',
  });
  const ten = new LayoutProblems([
    ...Array.from({ length: 9 }, (_, index) => same(index + 1)),
    same(4, 'engine.yaml'),
  ]);
  const text = problemsText(ten, { width: 200 });
  expect(text.match(/300 has no unit/g)).toHaveLength(1);
  expect(text).toContain(
    'The same at 9 other places: 2:3, 3:3, 4:3, 5:3, 6:3, 7:3, 8:3, 9:3, engine.yaml:4:3.',
  );
  expect(text).toMatch(/^10 problems in the layout/);
});
