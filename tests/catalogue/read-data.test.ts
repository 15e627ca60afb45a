import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readDataFolder } from '../../src/catalogue/read-data.js';

describe('reading the data folder', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'rows-'));
    mkdirSync(join(folder, 'hose'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text);

  it('joins the file of a kind and the files of its folder, and leaves all else alone', () => {
    write('hose.yaml', 'one: {coefficient: 1}\n');
    write('hose/more.yaml', 'two: {coefficient: 2}\n');
    write('hose/notes.txt', 'three: {coefficient: 3}\n');
    write('other.yaml', 'four: {coefficient: 4}\n');
    const rows = readDataFolder(folder);
    expect(rows.hose).toEqual({ one: { coefficient: 1 }, two: { coefficient: 2 } });
    expect(rows.pipe).toEqual({});
  });

  it('refuses an id that comes twice', () => {
    write('hose.yaml', 'one: {coefficient: 1}\n');
    write('hose/more.yaml', 'one: {coefficient: 2}\n');
    expect(() => readDataFolder(folder)).toThrow(/hose one is in another file too/);
  });

  it('refuses a file that is no mapping', () => {
    write('hose.yaml', '- one\n');
    expect(() => readDataFolder(folder)).toThrow(/is not a mapping/);
  });
});
