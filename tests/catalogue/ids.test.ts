import { describe, expect, it } from 'vitest';
import { closeId, sameId } from '../../src/catalogue/ids.js';
import { KINDS } from '../../src/catalogue/kind.js';
import { loadCatalogue } from '../../src/catalogue/load.js';

const catalogue = loadCatalogue();

describe('ids of the catalogue', () => {
  it('are found by either spelling of a size', () => {
    expect(catalogue.idOf('pipe', 'stainless-10s-2-1/2')).toBe('stainless-10s-2.5');
    expect(catalogue.idOf('hose', 'forestry-1-1/2')).toBe('forestry-1.5');
    expect(catalogue.idOf('hose', 'garden-3/4')).toBe('garden-0.75');
    expect(catalogue.idOf('nozzle', 'tip-0.3125')).toBe('tip-5/16');
    expect(catalogue.idOf('nozzle', 'tip-1.125')).toBe('tip-1-1/8');
    expect(catalogue.idOf('hose', 'forestry-1.75')).toBeUndefined();
    expect(catalogue.idOf('hose', 'hose')).toBeUndefined();
  });

  it('mean one thing each, however their sizes are spelt', () => {
    for (const kind of KINDS)
      for (const id of catalogue.ids(kind)) {
        expect(catalogue.idOf(kind, id)).toBe(id);
        expect(
          sameId(
            id,
            catalogue.ids(kind).filter((other) => other !== id),
          ),
          id,
        ).toBeUndefined();
      }
  });

  it('are never suggested in another size', () => {
    const close = (kind: 'hose' | 'pipe' | 'nozzle', word: string) => closeId(word, catalogue.ids(kind));
    expect(close('pipe', 'stainles-10s-2-1/2')).toBe('stainless-10s-2.5');
    expect(close('pipe', 'stainless-10-2.5')).toBe('stainless-10s-2.5');
    expect(close('hose', 'forestry-1.6')).toBeUndefined();
    expect(close('hose', 'forestry-1.75')).toBeUndefined();
    expect(close('hose', 'forestry-15')).toBe('forestry-1.5');
    expect(close('hose', 'Forestry 1-1/2')).toBe('forestry-1.5');
    expect(close('hose', 'atack1.75')).toBe('attack-1.75');
    expect(close('nozzle', 'tips-5/16')).toBe('tip-5/16');
    expect(close('nozzle', 'tip-1-5/16')).toBeUndefined();
  });
});
