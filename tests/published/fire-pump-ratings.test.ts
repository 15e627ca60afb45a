// Class A rating points: Fire Engineering, tandem and dual pumping (a 1,000 gpm pumper: 1000, 700 and 500 gpm at 150, 200 and
// 250 psi), and the points computed from 100, 70 and 50 %. Guarantee points: German fire-service pages on pump designations,
// FPN 10-2000 (EN 1028-1) and FP 16/8 (DIN 14420). Exact, as printed.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { typingPoints } from '../../src/catalogue/schema/typing.js';
import { toUnit, type UnitName } from '../../src/quantity/units.js';

const catalogue = loadCatalogue();

function pointsOf(
  scheme: string,
  id: string,
  flow: UnitName,
  pressure: UnitName,
  lift: UnitName,
): number[][] {
  const pump = catalogue.find('typing', scheme)?.classes[id];
  if (!pump) throw new Error('no such class');
  return typingPoints(pump).map((point) =>
    [
      toUnit(point.flow, flow),
      toUnit(point.pressure ?? Number.NaN, pressure),
      toUnit(point.lift ?? Number.NaN, lift),
    ].map((value) => Number(value.toFixed(6))),
  );
}

describe('Class A rating points', () => {
  const printed: [rating: number, seventy: number, fifty: number][] = [
    [250, 175, 125],
    [500, 350, 250],
    [750, 525, 375],
    [1000, 700, 500],
    [1250, 875, 625],
    [1500, 1050, 750],
  ];
  for (const [rating, seventy, fifty] of printed)
    it(`a ${rating} gpm pump: ${rating}, ${seventy} and ${fifty} gpm at 150, 200 and 250 psi net from 10 ft`, () => {
      expect(pointsOf('rating', `pump-${rating}`, 'gpm', 'psi', 'ft')).toEqual([
        [rating, 150, 10],
        [seventy, 200, 10],
        [fifty, 250, 10],
      ]);
    });

  it('a 2,000 gpm pump: 1,400 and 1,000 gpm at 70 and 50 %', () => {
    expect(pointsOf('rating', 'pump-2000', 'gpm', 'psi', 'ft').map(([flow]) => flow)).toEqual([
      2000, 1400, 1000,
    ]);
  });

  it('every rating is net, at 100, 70 and 50 %', () => {
    const classes = Object.entries(catalogue.find('typing', 'rating')?.classes ?? {});
    expect(classes).toHaveLength(14);
    for (const [id, pump] of classes) {
      const rating = Number(id.replace('pump-', ''));
      expect(typingPoints(pump).every(({ net }) => net)).toBe(true);
      const shares = pointsOf('rating', id, 'gpm', 'psi', 'ft').map(([flow]) => flow / rating);
      [1, 0.7, 0.5].forEach((share, index) => {
        expect(shares[index], id).toBeCloseTo(share, 9);
      });
    }
  });
});

describe('German fire-service pages on pump designations', () => {
  it('FPN 10-2000 (EN 1028-1): 2,000 L/min at 10 bar from 3 m; 1,000 at 10 from 7.5 m; 1,000 at 12 from 3 m', () => {
    expect(pointsOf('en-1028', 'fpn-10-2000', 'L/min', 'bar', 'm')).toEqual([
      [2000, 10, 3],
      [1000, 10, 7.5],
      [1000, 12, 3],
    ]);
  });

  it('FP 16/8 (DIN 14420): 1,600 L/min at 8 bar from 3 m; 800 at 12 from 3 m; 800 at 8 from 7.5 m', () => {
    expect(pointsOf('din-14420', 'fp-16-8', 'L/min', 'bar', 'm')).toEqual([
      [1600, 8, 3],
      [800, 12, 3],
      [800, 8, 7.5],
    ]);
  });

  it('every FPN class is named by its bar and L/min, and asks 0.5 of the flow and 1.2 of the pressure', () => {
    const ids = Object.keys(catalogue.find('typing', 'en-1028')?.classes ?? {});
    expect(ids).toHaveLength(10);
    for (const id of ids) {
      const [, bar, flow] = id.split('-').map(Number);
      expect(pointsOf('en-1028', id, 'L/min', 'bar', 'm'), id).toEqual([
        [flow, bar, 3],
        [flow / 2, bar, 7.5],
        [flow / 2, Number((1.2 * bar).toFixed(6)), 3],
      ]);
    }
  });
});
