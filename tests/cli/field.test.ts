import { describe, expect, test } from 'vitest';
import { flowJson, reachJson, requireJson } from '../../src/report/json-schema.js';
import { example, pumpyoke } from './run-built.js';

const lay = example('lay.yaml');
const flowing = (args: string[]) =>
  flowJson.parse(JSON.parse(pumpyoke(['flow', lay, '--json', ...args]).out));

describe('flow', () => {
  test('opens and shuts nozzles by name without a word in the file', () => {
    const { nozzles } = flowing(['--shut', 'all', '--open', 'lateral 2,far nozzle']);
    expect(nozzles.map(({ name, state }) => [name, state])).toEqual([
      ['nozzle 1', 'shut'],
      ['nozzle 2', 'open'],
      ['nozzle 3', 'shut'],
      ['far nozzle', 'open'],
    ]);
    for (const { state, flow } of nozzles) expect(flow.value > 0).toBe(state === 'open');
  });

  test('says an unknown name with the nearest one, status 2', () => {
    const { status, err, out } = pumpyoke(['flow', lay, '--open', 'latteral 2']);
    expect(status).toBe(2);
    expect(err).toContain('did you mean lateral 2?');
    expect(out).toBe('');
  });

  test('holds a discharge pressure that is asked for', () => {
    const { pumps } = flowing(['--throttle', '150 psi']);
    const highest = Math.max(...pumps.map(({ discharge_pressure }) => discharge_pressure?.value ?? 0));
    expect(highest).toBeCloseTo(150, 2);
  });

  test('takes a part of governed speed, and refuses what is neither', () => {
    expect(flowing(['--throttle', '50 %']).pumps[0].speed?.value).toBeCloseTo(3250, 6);
    const { status, err } = pumpyoke(['flow', lay, '--throttle', 'fast']);
    expect(status).toBe(2);
    expect(err).toContain('"80 %" or "220 psi"');
  });

  test('tells cases that break nothing only when all are asked for', () => {
    const codes = (args: string[]) => flowing(['--throttle', '40 %', ...args]).cases.map(({ code }) => code);
    expect(codes(['--all-cases'])).toEqual(['all_shut', 'far_line_burst', 'one_pump_out', 'one_pump_out']);
    expect(codes([]).length).toBeLessThan(4);
  });
});

describe('require', () => {
  test('prints its shape, and its status says whether it can without danger', () => {
    const { status, out } = pumpyoke(['require', lay, '--json']);
    const answer = requireJson.parse(JSON.parse(out));
    const stops = answer.cautions.some(({ level }) => level === 'stop');
    expect(status).toBe(answer.verdict === 'meets' && !stops ? 0 : 1);
    expect(answer.rules.map(({ rules }) => rules)).toEqual(['wildland', 'structural', 'engineering']);
  });

  test('asks only for the nozzles that are open', () => {
    const { out } = pumpyoke(['require', lay, '--json', '--shut', 'lateral 1']);
    expect(requireJson.parse(JSON.parse(out)).needs.map(({ name }) => name)).toEqual([
      'nozzle 2',
      'nozzle 3',
      'far nozzle',
    ]);
  });

  test('of a lay with nothing open says what is wrong, status 2', () => {
    const { status, err } = pumpyoke(['require', lay, '--shut', 'all']);
    expect(status).toBe(2);
    expect(err).toContain('no open nozzle');
  });
});

describe('reach', () => {
  test('has a row a slope and a cell a number of laterals, in every staging', () => {
    const { out } = pumpyoke(['reach', lay, '--json', '--slopes', 'level,20 %,-10 %', '--laterals', '0,3']);
    const { stagings } = reachJson.parse(JSON.parse(out));
    expect(stagings).toHaveLength(5);
    for (const { rows } of stagings) {
      expect(rows.map(({ grade }) => grade.value)).toEqual([0, 20, -10]);
      for (const { cells } of rows) expect(cells.map(({ laterals }) => laterals)).toEqual([0, 3]);
    }
  });

  test('takes hose and nozzle of the catalogue, and says the nearest id', () => {
    const { out } = pumpyoke([
      'reach',
      example('demo.yaml'),
      '--json',
      '--hose',
      'forestry-1.5',
      '--nozzle',
      'fog-20',
    ]);
    expect(reachJson.parse(JSON.parse(out)).lateral).toBeNull();
    const { status, err } = pumpyoke(['reach', lay, '--hose', 'forestri-1.5']);
    expect(status).toBe(2);
    expect(err).toContain('did you mean forestry-1.5?');
    expect(pumpyoke(['reach', example('demo.yaml')]).status).toBe(2);
  });

  test('is told at a part of governed speed, not at a pressure that is held', () => {
    expect(pumpyoke(['reach', lay, '--throttle', '150 psi']).status).toBe(2);
    const { out } = pumpyoke(['reach', lay, '--throttle', '60 %', '--json', '--laterals', '0']);
    expect(reachJson.parse(JSON.parse(out)).throttle.value).toBeCloseTo(60, 9);
  });

  test('wants a slope with its unit and a whole number of laterals', () => {
    expect(pumpyoke(['reach', lay, '--slopes', '20']).err).toContain('did you mean 20 %?');
    expect(pumpyoke(['reach', lay, '--laterals', '1.5']).status).toBe(2);
  });
});

for (const command of ['flow', 'require', 'reach']) {
  test(`${command} fits a telephone of 40 columns and a terminal of 80`, () => {
    for (const columns of [40, 80]) {
      const { out } = pumpyoke([command, lay], { environment: { COLUMNS: String(columns) } });
      expect(out.split('\n').filter((line) => line.length > columns)).toEqual([]);
      expect(out).toMatch(/^(FLOWS|CAN|CANNOT|REACHES) /);
    }
  });
}
