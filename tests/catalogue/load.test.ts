import { describe, expect, it } from 'vitest';
import { type CatalogueRows, KINDS } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';

const INCH = 0.0254;

describe('the catalogue', () => {
  const catalogue = loadCatalogue();

  it('gives a row as a model in SI units', () => {
    const hose = catalogue.find('hose', 'forestry-1.5');
    expect(hose?.inside_diameter).toBeCloseTo(1.5 * INCH, 12);
    expect(hose?.limits?.service_test).toBeCloseTo(300 * 6894.757293168, 3);
  });

  it('gives the same model twice', () => {
    expect(catalogue.find('pump', 'demo-highlift')).toBe(catalogue.find('pump', 'demo-highlift'));
  });

  it('gives the row as written', () => {
    expect(catalogue.row('hose', 'forestry-1.5')).toMatchObject({ inside_diameter: '1-1/2 in' });
  });

  for (const id of ['no-such-hose', '', '__proto__', 'constructor', 'toString'])
    it(`knows no hose called ${JSON.stringify(id)}`, () => {
      expect(catalogue.find('hose', id)).toBeUndefined();
      expect(catalogue.row('hose', id)).toBeUndefined();
      expect(catalogue.has('hose', id)).toBe(false);
    });

  it('has every id it lists, and no id that a layout could not write plainly', () => {
    for (const kind of KINDS)
      for (const id of catalogue.ids(kind)) {
        expect(catalogue.find(kind, id), `${kind} ${id}`).toBeDefined();
        expect(id).toMatch(/^[a-z][a-z0-9._/-]*$/);
      }
  });

  it('reads a row only when it is asked for, and says which one is wrong', () => {
    const none = Object.fromEntries(KINDS.map((kind) => [kind, {}])) as CatalogueRows;
    const broken = loadCatalogue({ ...none, hose: { bad: { inside_diameter: 3 } } });
    expect(broken.ids('hose')).toEqual(['bad']);
    expect(() => broken.find('hose', 'bad')).toThrow(/the catalogue's hose bad is wrong/);
  });
});
