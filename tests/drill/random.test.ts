import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Draw, hash } from '../../src/drill/random.js';

describe('draws', () => {
  test('are the same on every machine', () => {
    const draw = new Draw('single-line.3.wildland.us.1');
    expect([draw.whole(0, 999_999), draw.whole(0, 999_999), draw.whole(0, 999_999)]).toEqual([
      432_461, 450_264, 527_252,
    ]);
    expect(hash('')).toBe(2_872_998_923);
    expect(hash('pump')).toBe(3_046_253_945);
  });

  test('spread evenly and stay within their limits', () => {
    const draw = new Draw('spread');
    const counts = new Array<number>(6).fill(0);
    for (let i = 0; i < 6000; i++) counts[draw.whole(1, 6) - 1]++;
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });

  test('steps include both ends', () => {
    const draw = new Draw('steps');
    const seen = new Set(Array.from({ length: 300 }, () => draw.stepped(10, 30, 5)));
    expect([...seen].sort((a, b) => a - b)).toEqual([10, 15, 20, 25, 30]);
  });

  test('shuffling keeps every item and leaves the list as it was', () => {
    const items = [1, 2, 3, 4, 5, 6, 7];
    expect(new Draw('x').shuffled(items).sort()).toEqual(items);
    expect(items).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(() => new Draw('x').pick([])).toThrow(RangeError);
  });
});

test('nothing in the drill asks the machine for chance, time or locale', () => {
  const files = (folder: string): string[] =>
    readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
      entry.isDirectory() ? files(join(folder, entry.name)) : [join(folder, entry.name)],
    );
  const asks =
    /Math\.random|\bDate\b|toLocale|Intl\.|localeCompare|performance\.|process\.(?:pid|hrtime|env)/;
  expect(files('src/drill').filter((file) => asks.test(readFileSync(file, 'utf8')))).toEqual([]);
});
