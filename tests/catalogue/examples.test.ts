import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Kind } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';

const folder = fileURLToPath(new URL('../../data/examples/', import.meta.url));
const KIND_OF_KEY: Record<string, Kind> = {
  hose: 'hose',
  pipe: 'pipe',
  valve: 'valve',
  check_valve: 'check_valve',
  appliance: 'appliance',
  branch: 'branch',
  nozzle: 'nozzle',
  pump: 'pump',
  model: 'pump',
  scheme: 'typing',
};

/** Every id of the catalogue that a document uses, with its kind. */
function idsIn(value: unknown, found: [Kind, string][] = []): [Kind, string][] {
  if (Array.isArray(value)) for (const item of value) idsIn(item, found);
  else if (typeof value === 'object' && value !== null)
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'weights') continue; // Its keys are names of the layout's own.
      if (typeof inner === 'string' && Object.hasOwn(KIND_OF_KEY, key)) found.push([KIND_OF_KEY[key], inner]);
      else if (key === 'fittings') for (const id of Object.keys(inner)) found.push(['fitting', id]);
      else idsIn(inner, found);
    }
  return found;
}

describe('the examples that ship', () => {
  const catalogue = loadCatalogue();
  const files = readdirSync(folder).filter((file) => file.endsWith('.yaml'));

  it('are there', () => {
    expect(files).toContain('demo.yaml');
  });

  for (const file of files) {
    const text = readFileSync(`${folder}${file}`, 'utf8');
    it(`${file} uses only what the catalogue has`, () => {
      const ids = idsIn(parse(text));
      expect(ids).not.toEqual([]);
      for (const [kind, id] of ids) expect(catalogue.has(kind, id), `${kind} ${id}`).toBe(true);
    });

    it(`${file} says that it is invented`, () => {
      expect(text).toMatch(/invent/);
    });
  }
});
