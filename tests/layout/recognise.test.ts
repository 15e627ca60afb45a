import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { LayoutProblems } from '../../src/layout/problem.js';
import { readLayout, readLayoutText } from '../../src/layout/read-layout.js';
import { catalogue, problemsOf } from './support.js';

const data = (path: string) => readFileSync(new URL(`../../data/${path}`, import.meta.url), 'utf8');

const GIVEN: [what: string, text: string, says: RegExp][] = [
  ["an engine's file", data('examples/demo-engine.yaml'), /this is an engine, .*engine: \S+, staging/],
  ['a pump', 'points: [[0 gpm, 400 psi], [50 gpm, 350 psi]]\nrated_speed: 6,500 rpm', /this is a pump, /],
  ['the pumps of the catalogue', data('pump.yaml'), /this is pumps by their names/],
  ['the hose of the catalogue', data('hose.yaml'), /this is hoses or pipes by their names/],
  ['the nozzles of the catalogue', data('nozzle.yaml'), /this is nozzles by their names/],
  ['a hose', 'inside_diameter: 1.5 in\ncoefficient: 24', /this is a hose or a pipe, /],
  ['a nozzle', 'kind: smooth_bore\nbore: 3/8 in', /this is a nozzle, /],
  [
    'a list of steps',
    '- hose: trunk\n  length: 100 ft\n- nozzle: fog',
    /this is a list of steps, .*under lay:/,
  ],
  [
    'the rules of a drill',
    data('rules/wildland.yaml'),
    /this is a set of rules of the drill, .*drill --rules/,
  ],
  ['a form of answers', 'sheet 9F3A-1C2B,pumpyoke drill\nname,1,2', /this is a form of answers .*drill mark/],
  ['an answer', '{"format": 1, "question": "flow", "title": "x", "engine": "y"}', /this is an answer that/],
];

for (const [what, text, says] of GIVEN)
  test(`${what} given as a layout is one problem, that says what it is and where it goes`, () => {
    const problems = problemsOf(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(says);
    expect(problems[0]).toContain('a layout is wanted');
  });

test('a layout, right or wrong, is taken for one', () => {
  expect(readLayoutText(data('examples/demo.yaml'), 'data/examples/demo.yaml').layout.title).toContain(
    'Quillback',
  );
  expect(problemsOf('title: x')[0]).toContain('engine is missing');
  expect(problemsOf('lay: []\nstaging: parallel')[0]).toContain('engine is missing');
});

test('a layout given as an engine is one problem as well', () => {
  const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-'));
  writeFileSync(join(folder, 'lay.yaml'), 'engine: lay2.yaml\nlay: []');
  writeFileSync(join(folder, 'lay2.yaml'), 'engine: engine.yaml\nlay: []');
  const read = () => readLayout(join(folder, 'lay.yaml'), { catalogue });
  expect(read).toThrow(LayoutProblems);
  expect(read).toThrow(/lay2.yaml: this is a layout, and an engine is wanted/);
});
