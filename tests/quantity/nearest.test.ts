import { describe, expect, it } from 'vitest';
import { editDistance, nearest } from '../../src/quantity/nearest.js';

describe('the nearest word', () => {
  const WORDS = ['length', 'rise', 'lines', 'name', 'hose', 'a', 'b'];

  it('is found through a slip, a swap, a missing or a doubled letter, and another case', () => {
    expect(nearest('lenght', WORDS)).toBe('length');
    expect(nearest('lngth', WORDS)).toBe('length');
    expect(nearest('hosse', WORDS)).toBe('hose');
    expect(nearest('LENGTH', WORDS)).toBe('length');
    expect(nearest('line', WORDS)).toBe('lines');
  });

  it('is not made up where nothing is near', () => {
    expect(nearest('throttle', WORDS)).toBeUndefined();
    expect(nearest('c', WORDS)).toBeUndefined();
    expect(nearest('', WORDS)).toBeUndefined();
    expect(nearest('x'.repeat(100_000), WORDS)).toBeUndefined();
  });

  it('is told by letters and figures first, and by the marks between them last', () => {
    const HOSE = [
      'forestry-1',
      'forestry-1.5',
      'attack-1.75',
      'attack-1.5',
      'tip-3/8',
      'tip-3/16',
      'suction-2.5',
    ];
    expect(nearest('forestry-15', HOSE)).toBe('forestry-1.5');
    expect(nearest('forestry 1.5', HOSE)).toBe('forestry-1.5');
    expect(nearest('forestry_1', HOSE)).toBe('forestry-1');
    expect(nearest('Forestry-1,5', HOSE)).toBe('forestry-1.5');
    expect(nearest('forestry-1.6', HOSE)).toBe('forestry-1.5');
    expect(nearest('atack1.75', HOSE)).toBe('attack-1.75');
    expect(nearest('tip 3-8', HOSE)).toBe('tip-3/8');
    expect(nearest('suction2.5', HOSE)).toBe('suction-2.5');
    expect(nearest('---', HOSE)).toBeUndefined();
  });

  it('counts a swap of neighbours as one slip', () => {
    expect(editDistance('lenght', 'length')).toBe(1);
    expect(editDistance('', 'abc')).toBe(3);
    expect(editDistance('abc', 'abc')).toBe(0);
    expect(editDistance('kitten', 'sitting')).toBe(3);
  });
});
