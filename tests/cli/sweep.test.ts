import { describe, expect, test } from 'vitest';
import { readSweep, readSweeps } from '../../src/cli/sweep.js';
import { UsageFault } from '../../src/cli/usage-fault.js';

const FOOT = 0.3048;

describe('--across', () => {
  for (const text of [
    '0 ft, 5,000 ft, 8,000 ft',
    '0 ft,5000 ft,8000 ft',
    'elevation 0 ft, 5000 ft , 8,000 ft',
  ]) {
    test(`${text}: three places`, () => {
      const { of, values } = readSweep(text);
      expect(of).toBe('elevation');
      expect(values.map((value) => value / FOOT)).toEqual([
        expect.closeTo(0, 9),
        expect.closeTo(5000, 9),
        expect.closeTo(8000, 9),
      ]);
    });
  }

  test('a temperature without a word is of the air, with one it may be of the water', () => {
    expect(readSweep('59 degF, 104 degF')).toEqual({
      of: 'air_temperature',
      values: [expect.closeTo(288.15, 9), expect.closeTo(313.15, 9)],
    });
    expect(readSweep('water 20 degC').of).toBe('water_temperature');
  });

  test('wear and tank level take their word', () => {
    expect(readSweep('wear 0 %, 5 %')).toEqual({ of: 'wear', values: [0, expect.closeTo(0.05, 12)] });
    expect(readSweep('tank 100 %, 20 %').of).toBe('tank_level');
  });

  test('lists set off by semicolons are crossed, the first along each table', () => {
    const tables = readSweeps('0 ft, 8,000 ft; 59 degF, 104 degF; wear 0 %, 5 %');
    expect(tables.map(({ given }) => given?.map(({ of, value }) => `${of} ${value.toFixed(2)}`))).toEqual([
      ['air_temperature 288.15', 'wear 0.00'],
      ['air_temperature 288.15', 'wear 0.05'],
      ['air_temperature 313.15', 'wear 0.00'],
      ['air_temperature 313.15', 'wear 0.05'],
    ]);
    for (const { of, values } of tables) {
      expect(of).toBe('elevation');
      expect(values).toHaveLength(2);
    }
    expect(readSweeps('0 ft, 5,000 ft')).toEqual([readSweep('0 ft, 5,000 ft')]);
  });

  for (const [text, why] of [
    ['0 ft, 100 ft; 200 ft', /crossed with itself/],
    ['0 ft; ', /no value/],
    [
      `${Array.from({ length: 11 }, (_, i) => `${i} ft`).join(', ')}; ${'59 degF, '.repeat(10)}`,
      /110 values/,
    ],
  ] as const) {
    test(`${text.slice(0, 30)} is not crossed`, () => {
      expect(() => readSweeps(text)).toThrow(UsageFault);
      expect(() => readSweeps(text)).toThrow(why);
    });
  }

  for (const [text, why] of [
    ['5 %', /of what/],
    ['wear 5 ft', /percentage/],
    ['0, 5000', /no unit/],
    ['', /no value/],
    ['wear', /nothing to go across|no value|does not start/],
    ['hose 3 ft', /hose is nothing to go across/],
    ['9000 m', /out of bounds/],
    ['wear 95 %', /out of bounds/],
    ['tank 120 %', /out of bounds/],
  ] as const) {
    test(`${text || 'nothing'} is refused with what to write`, () => {
      expect(() => readSweep(text)).toThrow(UsageFault);
      expect(() => readSweep(text)).toThrow(why);
    });
  }
});
