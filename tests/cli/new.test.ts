import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import * as z from 'zod';
import { STARTS, schemaFrom } from '../../src/cli/commands/new.js';
import { layoutJsonSchema } from '../../src/layout/json-schema.js';
import { pumpyoke } from './run-built.js';

const folder = mkdtempSync(join(tmpdir(), 'new-'));
afterAll(() => rmSync(folder, { recursive: true }));

const editor = z.fromJSONSchema(layoutJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);

/** The commands that each is written for, as its first lines say. */
const ANSWERED_BY: Record<keyof typeof STARTS, string[]> = {
  rig: ['check', 'flow'],
  pump: ['check', 'flow'],
  lay: ['flow', 'require', 'clock'],
  progressive: ['advance', 'flow', 'require', 'clock'],
  relay: ['flow', 'advance', 'clock'],
};

describe.each(Object.keys(STARTS) as (keyof typeof STARTS)[])('new %s', (kind) => {
  const { status, out, err } = pumpyoke(['new', kind]);

  it('writes a layout with its schema, said to be invented', () => {
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const [modeline] = out.split('\n');
    const address = /^# yaml-language-server: \$schema=(\S+)$/.exec(modeline)?.[1] ?? '';
    expect(existsSync(fileURLToPath(new URL(address, pathToFileURL(`${process.cwd()}/`))))).toBe(true);
    expect(out).toContain('EVERY FIGURE IN IT IS INVENTED');
    expect(out).toMatch(/^title: .*\(invented\)$/m);
    expect(out.match(/#/g)?.length).toBeGreaterThan(8);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(130);
  });

  it('fits the schema that it names', () => {
    expect(editor.safeParse(parse(out)).error).toBeUndefined();
  });

  it.each(ANSWERED_BY[kind])('runs at once: %s says yes', (command) => {
    const ran = pumpyoke([command, '-'], { input: out });
    expect({ status: ran.status, err: ran.err }).toEqual({ status: 0, err: '' });
  });
});

describe('new', () => {
  it('writes a rig unless told otherwise, to a file that was not there', () => {
    const file = join(folder, 'truck.yaml');
    expect(pumpyoke(['new', '--out', file])).toMatchObject({ status: 0, err: `Wrote ${file}\n` });
    expect(pumpyoke(['check', file]).status).toBe(0);
    writeFileSync(file, 'my own');
    const again = pumpyoke(['new', '--out', file]);
    expect(again.status).toBe(2);
    expect(again.err).toContain('is there already');
    expect(readFileSync(file, 'utf8')).toBe('my own');
  });

  it('has a start for every file of its folder, and no other', () => {
    const files = readdirSync(new URL('../../data/new/', import.meta.url));
    expect(files.sort()).toEqual(
      Object.keys(STARTS)
        .map((kind) => `${kind}.yaml`)
        .sort(),
    );
  });

  it('tells what there is where a kind is not known', () => {
    const { status, err } = pumpyoke(['new', 'truck']);
    expect(status).toBe(2);
    expect(err).toContain('rig, lay, progressive, relay, pump');
    expect(pumpyoke(['new', 'rig', '--json']).status).toBe(2);
  });

  it('names the schema by a path that goes with the layout, or by its address', () => {
    expect(schemaFrom('/home/me', '/home/me/node_modules/pumpyoke/schema/layout.json')).toBe(
      './node_modules/pumpyoke/schema/layout.json',
    );
    expect(schemaFrom('/home/me/my lays', '/usr/lib/my tools/layout.json')).toBe(
      'file:///usr/lib/my%20tools/layout.json',
    );
  });
});

describe('schema', () => {
  it.each(['layout', 'engine'])('prints that of the %s, which ships as a file', (name) => {
    const { status, out } = pumpyoke(['schema', name]);
    expect(status).toBe(0);
    expect(out).toBe(readFileSync(new URL(`../../schema/${name}.json`, import.meta.url), 'utf8'));
  });

  it('is the one that the library makes', () => {
    expect(JSON.parse(pumpyoke(['schema']).out)).toEqual(JSON.parse(JSON.stringify(layoutJsonSchema())));
  });
});
