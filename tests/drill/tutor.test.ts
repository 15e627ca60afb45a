import { expect, test } from 'vitest';
import { DrillFault } from '../../src/drill/drill-fault.js';
import type { Sheet, SheetRequest } from '../../src/drill/generate.js';
import type { MarkedAnswer, Verdict } from '../../src/drill/marking/marking.js';
import type { Problem } from '../../src/drill/problem.js';
import { Tutor } from '../../src/drill/tutor.js';

/** Problems that have nothing but what the choice of the next one looks at. */
function maker(topics: string[], most = 100) {
  return (request: SheetRequest): Sheet => {
    if (request.count > most) throw new DrillFault('there are not so many');
    const problems = Array.from({ length: request.count }, (_, i) => ({
      topic: topics[i % topics.length],
      level: request.level,
      question: `question ${request.level}.${most < 100 ? '' : request.seed}.${i}`,
    }));
    return { ...request, version: '0', problems: problems as unknown as Problem[] };
  };
}

const standing = { topics: [], seed: 7, rules: {}, units: 'us', choices: 0 } as unknown as SheetRequest;
const answer = (problem: Problem, verdict: Verdict): MarkedAnswer => ({
  student: 'x',
  problem,
  text: '',
  verdict,
});

test('two right answers in a row lead up, one wrong leads down, and there are ends', () => {
  const tutor = new Tutor(standing, 2, maker(['a', 'b']));
  const take = (verdict: Verdict) => tutor.take(answer(tutor.next(), verdict));
  expect([take('right'), take('right'), tutor.level]).toEqual(['same', 'up', 3]);
  expect([take('right'), take('wrong'), tutor.level]).toEqual(['same', 'down', 2]);
  expect([take('right'), take('blank'), tutor.level]).toEqual(['same', 'down', 1]);
  expect([take('wrong'), tutor.level]).toEqual(['same', 1]);
  for (let i = 0; i < 20; i++) take('right');
  expect(tutor.level).toBe(5);
});

test('problems are of the level that is current, and numbered as they are asked', () => {
  const tutor = new Tutor(standing, 4, maker(['a', 'b']));
  for (let number = 1; number < 40; number++) {
    const { level } = tutor;
    const problem = tutor.next();
    expect(problem).toMatchObject({ number, level });
    tutor.take(answer(problem, number % 3 === 0 ? 'wrong' : 'right'));
  }
});

test('a topic that went wrong comes again before one that was right, but not at once', () => {
  const tutor = new Tutor(standing, 1, maker(['a', 'b']));
  const asked = [];
  for (let i = 0; i < 6; i++) {
    const problem = tutor.next();
    asked.push(problem.topic);
    tutor.take(answer(problem, problem.topic === 'a' ? 'wrong' : 'right'));
  }
  expect(asked).toEqual(['a', 'b', 'a', 'a', 'a', 'a']);
});

test('nothing is asked twice while there is something new', () => {
  const tutor = new Tutor(standing, 1, maker(['a', 'b', 'c']));
  const asked = Array.from({ length: 200 }, () => tutor.next().question);
  expect(new Set(asked).size).toBe(200);
});

test('where a lay gives few problems, they are asked again rather than none', () => {
  const tutor = new Tutor(standing, 1, maker(['a'], 5));
  const asked = Array.from({ length: 12 }, () => tutor.next().question);
  expect(new Set(asked.slice(0, 3)).size).toBe(3);
  expect(asked).toHaveLength(12);
});
