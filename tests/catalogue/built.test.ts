import { expect, it } from 'vitest';
import { checkedRows } from '../../src/build/catalogue.js';
import { KINDS } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';

// The built program reads models out of JSON; an infinity, a date or a key with no value would change on that way.
it('a row is the same model from the built catalogue as from its data file', () => {
  const { rows, models } = checkedRows('data');
  const shipped = JSON.parse(JSON.stringify(models));
  const catalogue = loadCatalogue(rows);
  for (const kind of KINDS)
    for (const id of catalogue.ids(kind))
      expect(shipped[kind][id], `${kind} ${id}`).toStrictEqual(catalogue.find(kind, id));
  expect(catalogue.ids('hose').length).toBeGreaterThan(20);
});
