import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { curveJson } from '../../src/report/bench/json-schema-curve.js';
import { trialJson } from '../../src/report/bench/json-schema-trial.js';
import { example, pumpyoke } from './run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'pumpyoke-bench-'));
afterAll(() => rmSync(folder, { recursive: true }));

const DAY = ['trial', example('demo.yaml'), '--readings', example('test-day.csv')];

test('curve of the example answers, fits a screen, and writes a pump that it compares with itself', () => {
  const pump = join(folder, 'pump.yaml');
  const first = pumpyoke(['curve', example('bench.csv'), '--write', pump]);
  expect(first.status).toBe(0);
  const lines = first.out.split('\n');
  expect(lines.length).toBeLessThanOrEqual(41);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(first.out).toContain('line 21');
  const again = pumpyoke(['curve', example('bench.csv'), '--against', pump]);
  expect(again.status).toBe(0);
  expect(again.out).toMatch(/no\s+loss\s+of\s+pressure\s+is\s+proven/);
});

test('curve and trial print JSON of their schemas and nothing else', () => {
  expect(() =>
    curveJson.parse(JSON.parse(pumpyoke(['curve', example('bench.csv'), '--json']).out)),
  ).not.toThrow();
  expect(() => trialJson.parse(JSON.parse(pumpyoke([...DAY, '--json', '--units', 'si']).out))).not.toThrow();
});

test('trial of the example falls short with status 1, fits a screen, and writes what it found', () => {
  const layout = join(folder, 'calibrated.yaml');
  const sheet = join(folder, 'sheet.csv');
  const { status, out } = pumpyoke([...DAY, '--write', layout, '--sheet', sheet]);
  expect(status).toBe(1);
  const lines = out.split('\n');
  expect(lines.length).toBeLessThanOrEqual(41);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(readFileSync(layout, 'utf8')).toContain('wear: 9.8 %');
  expect(readFileSync(sheet, 'utf8').split('\r\n')[0]).toBe(
    'line,staging,orifice,instrument,unit,read,predicted,tolerance,result',
  );
  expect(pumpyoke(['trial', layout, '--readings', example('test-day.csv')]).out).toContain('nothing wrong');
});

test('wrong readings end with status 2 and name the place, without a stack', () => {
  const input = 'pump, demo-highlift\nflow gpm, discharge psi, speed rpm\n0, 400, 6500\n';
  for (const args of [
    ['curve', '-'],
    ['trial', example('demo.yaml'), '--readings', '-'],
  ]) {
    const { status, out, err } = pumpyoke(args, { input });
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/standard input:\d+:\d+/);
    expect(err).not.toMatch(/ at .*\.[jt]s/);
  }
});

test('what cannot be asked is said in one line', () => {
  for (const args of [
    ['curve', example('bench.csv'), '--format', 'card'],
    ['curve', example('bench.csv'), '--shape', 'cubic'],
    ['trial', example('demo.yaml')],
    [...DAY, '--format', 'csv'],
  ]) {
    const { status, err } = pumpyoke(args);
    expect(status).toBe(2);
    expect(err).toMatch(/^error: /);
  }
});
