import { describe, expect, it } from 'vitest';
import { KINDS } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { catalogueJson } from '../../src/report/json-schema-catalogue.js';
import { pumpyoke } from './run-built.js';

const catalogue = loadCatalogue();
const json = (...args: string[]) =>
  catalogueJson.parse(JSON.parse(pumpyoke(['catalogue', ...args, '--json']).out));

describe('catalogue', () => {
  it('tells the kinds and how many there are of each', () => {
    const { kinds, entries } = json();
    expect(kinds.map(({ kind, count }) => [kind, count])).toEqual(
      KINDS.map((kind) => [kind, catalogue.ids(kind).length]),
    );
    expect(entries).toEqual([]);
  });

  it.each(KINDS.filter((kind) => kind !== 'typing'))('lists every %s, in text and in JSON', (kind) => {
    const ids = catalogue.ids(kind);
    expect(json(kind).entries.map(({ id }) => id)).toEqual(ids);
    const lines = pumpyoke(['catalogue', kind]).out.split('\n');
    for (const id of ids) expect(lines).toContain(`- ${id}`);
  });

  it('lists the classes of every typing table with what they ask', () => {
    const classes = json('typing').entries.filter(({ scheme }) => scheme === 'nwcg');
    const three = classes.find(({ id }) => id === 'engine-3');
    expect(classes.map(({ id }) => id)).toEqual(Object.keys(catalogue.find('typing', 'nwcg')?.classes ?? {}));
    expect(three?.figures).toContainEqual({
      key: 'flow',
      written: '150 gpm',
      value: { value: 150, unit: 'gpm' },
      source: expect.stringContaining('PMS 200'),
    });
  });

  it('gives figures in the units that are asked for, and as their source prints them', () => {
    const limit = (...more: string[]) =>
      json('hose', 'forestry-1-1/2', ...more).entries[0].figures.find(({ key }) => key === 'limits.burst');
    expect(limit()).toMatchObject({ written: '1000 psi', value: { value: 1000, unit: 'psi' } });
    expect(limit('--units', 'si')).toMatchObject({
      written: '1000 psi',
      value: { value: 6894.75729317, unit: 'kPa' },
    });
  });

  it('gives every figure the source that its row names', () => {
    // A schedule is a name, whatever it looks like.
    for (const kind of KINDS)
      for (const { id, scheme, figures } of json(kind).entries)
        for (const { key, value, source } of figures)
          if (
            key !== 'schedule' &&
            (typeof value === 'number' || (typeof value === 'object' && 'unit' in value))
          )
            expect(source, `${kind} ${scheme ?? ''} ${id} ${key}`).toBeTruthy();
  });

  it('finds rows by words, with their sources', () => {
    const { status, out } = pumpyoke(['catalogue', 'hose', 'forestry', 'unlined']);
    expect(status).toBe(0);
    expect(out.match(/^- .*/gm)).toEqual(['- forestry-1-unlined', '- forestry-1.5-unlined']);
    expect(out).toMatch(/\(source: /);
    expect(pumpyoke(['catalogue', 'gated', 'wye']).out).toMatch(/^- gated-wye$/m);
  });

  it('says what was meant where a word finds nothing', () => {
    expect(pumpyoke(['catalogue', 'hose', 'forestri-1.5'])).toMatchObject({
      status: 2,
      err: 'error: the catalogue has no hose with forestri-1.5: did you mean forestry-1.5?\n',
    });
    expect(pumpyoke(['catalogue', 'hoes']).err).toContain('did you mean hose?');
    expect(pumpyoke(['catalogue', 'hose', '--format', 'card']).status).toBe(2);
  });

  it.each([40, 80])('is no wider than %i columns', (width) => {
    for (const args of [[], ['hose'], ['typing'], ['pump', 'demo'], ['valve', 'ball']]) {
      const { out } = pumpyoke(['catalogue', ...args], { environment: { COLUMNS: String(width) } });
      for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(width);
    }
  });

  it('is Markdown and HTML with the sources of everything', () => {
    expect(pumpyoke(['catalogue', 'valve', '--format', 'markdown']).out).toMatch(/source: Crane TP-410/);
    expect(pumpyoke(['catalogue', 'valve', '--format', 'html']).out).toMatch(
      /^<!DOCTYPE html>[\s\S]*Crane TP-410/i,
    );
  });
});
