import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { auditRows } from '../../src/catalogue/audit.js';
import { type CatalogueRows, KINDS } from '../../src/catalogue/kind.js';
import { readDataFolder } from '../../src/catalogue/read-data.js';

const data = fileURLToPath(new URL('../../data/', import.meta.url));

function rowsOf(some: Partial<CatalogueRows>): CatalogueRows {
  return { ...(Object.fromEntries(KINDS.map((kind) => [kind, {}])) as CatalogueRows), ...some };
}

const good = { inside_diameter: '1-1/2 in', coefficient: 24, source: 'from memory' };

describe('the audit of the rows', () => {
  it('finds no fault in what ships, and every kind has rows', () => {
    const rows = readDataFolder(data);
    expect(auditRows(rows)).toEqual([]);
    for (const kind of KINDS) expect(Object.keys(rows[kind]), kind).not.toEqual([]);
  });

  it('finds no fault in a good row', () => {
    expect(auditRows(rowsOf({ hose: { good } }))).toEqual([]);
  });

  const planted: [string, unknown, RegExp][] = [
    ['a value without a unit', { ...good, inside_diameter: 1.5 }, /inside_diameter is 1.5, without a unit/],
    ['a row without a source', { ...good, source: undefined }, /coefficient has no source/],
    ['an empty source', { ...good, source: '' }, /coefficient has no source/],
    [
      'a value left out of the sources',
      { ...good, source: { coefficient: 'x' } },
      /inside_diameter has no source/,
    ],
    [
      'an empty source of one value',
      { ...good, source: { coefficient: ' ', inside_diameter: 'x' } },
      /source of coefficient is empty/,
    ],
    [
      'a source of a key that is not there',
      { ...good, source: { coefficient: 'x', inside_diameter: 'x', weight: 'x' } },
      /source names weight, which is not there/,
    ],
    ['a key that the schema does not know', { ...good, colour: 'red' }, /Unrecognized key: "colour"/],
    [
      'a value within a value',
      { ...good, limits: { burst: '900 psi' }, source: { coefficient: 'x', inside_diameter: 'x' } },
      /limits.burst has no source/,
    ],
  ];
  for (const [name, row, fault] of planted)
    it(`finds ${name}`, () => {
      expect(auditRows(rowsOf({ hose: { planted: row } })).join('\n')).toMatch(fault);
    });

  it('looks into the classes of a typing and their test orifices', () => {
    const orifice = {
      bore: '0.716 in',
      discharge_coefficient: 0.62,
      passes: '250 psi',
      source: { bore: 'x' },
    };
    const engine = { flow: '150 gpm', pressure: '250 psi', test_orifice: orifice, source: { flow: 'x' } };
    const table = { title: 't', agency: 'a', edition: 'e', date: 'd', source: 'x', classes: { engine } };
    const faults = auditRows(rowsOf({ typing: { table } }));
    expect(faults).toEqual([
      'typing table engine: pressure has no source',
      'typing table engine test_orifice: discharge_coefficient has no source',
      'typing table engine test_orifice: passes has no source',
    ]);
  });

  it('lets a source of a mapping stand for all that is in it', () => {
    const limits = { service_test: '300 psi', burst: '900 psi' };
    const source = { coefficient: 'x', inside_diameter: 'x', limits: 'x' };
    expect(auditRows(rowsOf({ hose: { good: { ...good, limits, source } } }))).toEqual([]);
  });

  it('finds no name of our own bookkeeping among the sources that ship', () => {
    const text = JSON.stringify(readDataFolder(data));
    expect(text).not.toMatch(/"S\d{1,2}"|\bS\d{2}\b|\/work|typing-and-tests|hydraulics\.md|https?:/);
  });
});
