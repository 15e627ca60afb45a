import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { answerJson, checkJson, flowJson } from '../../src/report/json-schema.js';
import { example, pumpyoke, quadraticLayout } from './run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-'));
afterAll(() => rmSync(folder, { recursive: true }));

const demo = example('demo.yaml');
const lastLine = (text: string): string | undefined => text.trimEnd().split('\n').at(-1);

test('a layout that meets its typing ends with 0, the verdict first and the deferral last', () => {
  const { status, out, err } = pumpyoke(['check', demo]);
  expect(status).toBe(0);
  expect(err).toBe('');
  expect(out).toMatch(/^MEETS /);
  expect(lastLine(out)).toMatch(/agency.*makers' limits.*acceptance test/);
});

test('a layout that falls short ends with 1', () => {
  const { status, out } = pumpyoke(['check', example('short.yaml')]);
  expect(status).toBe(1);
  expect(out).toMatch(/^FALLS SHORT of /);
});

for (const units of ['us', 'si']) {
  test(`--json prints one object of the written shape and nothing else, in ${units}`, () => {
    const { out, err } = pumpyoke(['check', demo, '--json', '--units', units]);
    expect(err).toBe('');
    const answer = JSON.parse(out);
    expect(checkJson.parse(answer)).toEqual(answer);
    expect(answer.requirement.pressure.unit).toBe(units === 'us' ? 'psi' : 'kPa');
  });
}

test('flow answers in the written shape, and what leaves is what the nozzles give', () => {
  const { status, out } = pumpyoke(['flow', example('lay.yaml'), '--json']);
  const answer = flowJson.parse(JSON.parse(out));
  const stopped = answer.cautions.some(({ level }) => level === 'stop');
  expect(status).toBe(stopped ? 1 : 0);
  const sum = answer.nozzles.reduce((total, { flow }) => total + flow.value, 0);
  expect(answer.total_flow?.value).toBeCloseTo(sum, 6);
  expect(sum).toBeGreaterThan(1);
});

test('US and SI say the same', () => {
  const in_ = (units: string) => JSON.parse(pumpyoke(['check', demo, '--json', '--units', units]).out);
  const us = in_('us').at_required_flow.pressure;
  const si = in_('si').at_required_flow.pressure;
  expect(us.value * 6.894757293168361).toBeCloseTo(si.value, 6);
});

test('the options that every command has may stand before its name', () => {
  expect(pumpyoke(['--json', 'check', demo]).out).toBe(pumpyoke(['check', demo, '--json']).out);
});

test('a layout may come through standard input', () => {
  const text = readFileSync(demo, 'utf8').replace(/^engine:.*$/m, `engine: ${example('demo-engine.yaml')}`);
  const { status, out, err } = pumpyoke(['check', '-', '--quiet'], { input: text });
  expect(err).toBe('');
  expect(status).toBe(0);
  expect(out).toMatch(/^MEETS /);
});

test('--quiet keeps the verdict and who decides', () => {
  const { out } = pumpyoke(['check', demo, '--quiet']);
  expect(out).toMatch(/^MEETS /);
  expect(out.split('\n').length).toBeLessThan(12);
  expect(lastLine(out)).toMatch(/acceptance test/);
});

const LOOKS: [string, RegExp][] = [
  ['report.html', /^<!doctype html>/],
  ['report.md', /^# MEETS /],
  ['report.json', /^\{\n {2}"format": 1,/],
  ['report.txt', /^MEETS /],
];

for (const [name, start] of LOOKS) {
  test(`--out ${name} has the look that its ending says, nothing on standard output, and no colour`, () => {
    const file = join(folder, name);
    const { status, out, err } = pumpyoke(['check', demo, '--out', file], {
      environment: { FORCE_COLOR: '1' },
    });
    expect(status).toBe(0);
    expect(out).toBe('');
    expect(err).toBe(`Wrote ${file}\n`);
    expect(readFileSync(file, 'utf8')).toMatch(start);
    expect(readFileSync(file, 'utf8')).not.toContain('\u001b');
  });
}

test('--format stands above the ending of the file', () => {
  const file = join(folder, 'page.txt');
  pumpyoke(['check', demo, '--out', file, '--format', 'html', '--quiet']);
  expect(readFileSync(file, 'utf8')).toMatch(/^<!doctype html>/);
});

test('a file that cannot be written is a mistake of the command line', () => {
  const { status, err } = pumpyoke(['check', demo, '--out', join(folder, 'no', 'report.html')]);
  expect(status).toBe(2);
  expect(err).toMatch(/^error: cannot write .*: its folder does not exist\n$/);
});

test('a wrong layout ends with 2, every problem with its place, and nothing on standard output', () => {
  const file = join(folder, 'wrong.yaml');
  const text = readFileSync(demo, 'utf8').replace(/^engine:.*$/m, `engine: ${example('demo-engine.yaml')}`);
  writeFileSync(
    file,
    text.replace('elevation: 1,200 ft', 'elevation: 1200').replace('parallel ', 'paralel '),
  );
  const { status, out, err } = pumpyoke(['check', file, '--json']);
  expect(status).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(/^2 problems in the layout; nothing was computed\./);
  expect(err.match(/wrong\.yaml:\d+:\d+/g)).toHaveLength(2);
  expect(err).toMatch(/\| +\^+/);
  expect(err).not.toMatch(/^ +at /m);
});

test('a layout that asks for no typing cannot be checked, and says so in one line', () => {
  const file = join(folder, 'untyped.yaml');
  const text = readFileSync(demo, 'utf8').replace(/^engine:.*$/m, `engine: ${example('demo-engine.yaml')}`);
  writeFileSync(file, text.replace(/^typing:.*$/m, ''));
  const { status, err } = pumpyoke(['check', file]);
  expect(status).toBe(2);
  expect(err).toMatch(/^error: .*typing.*\n$/);
});

test('a curve that wants least squares is fitted by the part that is loaded only then', () => {
  const file = join(folder, 'quadratic.yaml');
  writeFileSync(file, quadraticLayout());
  const { status, err, out } = pumpyoke(['check', file, '--json']);
  expect(err).toBe('');
  expect([0, 1]).toContain(status);
  expect(answerJson.parse(JSON.parse(out)).question).toBe('check');
});
