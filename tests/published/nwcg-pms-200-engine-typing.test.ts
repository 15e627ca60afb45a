// NWCG Standards for Wildland Fire Resource Typing, PMS 200, Equipment page, Engine Typing Standard, as printed.
// Exact: the table prints whole gallons, gpm, psi, feet and pounds.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { typingPoints } from '../../src/catalogue/schema/typing.js';
import { toUnit } from '../../src/quantity/units.js';

interface Printed {
  tank: number;
  flow: number;
  pressure: number;
  /** Feet of 2-1/2, 1-1/2 and 1 in hose; 0 where the table prints n/a. */
  hose: [number, number, number];
  gross?: number;
  crew: number;
  notChecked: string[];
}

const ENGINES: Printed[] = [
  {
    tank: 300,
    flow: 1000,
    pressure: 150,
    hose: [1200, 500, 0],
    crew: 4,
    notChecked: ['ladders', 'master stream'],
  },
  { tank: 300, flow: 500, pressure: 150, hose: [1000, 500, 0], crew: 3, notChecked: ['ladders'] },
  {
    tank: 500,
    flow: 150,
    pressure: 250,
    hose: [0, 1000, 500],
    crew: 3,
    notChecked: ['pump and roll', 'foam', 'draft'],
  },
  {
    tank: 750,
    flow: 50,
    pressure: 100,
    hose: [0, 300, 300],
    crew: 2,
    notChecked: ['pump and roll', 'draft'],
  },
  {
    tank: 400,
    flow: 50,
    pressure: 100,
    hose: [0, 300, 300],
    gross: 26000,
    crew: 2,
    notChecked: ['pump and roll', 'draft'],
  },
  {
    tank: 150,
    flow: 50,
    pressure: 100,
    hose: [0, 300, 300],
    gross: 19500,
    crew: 2,
    notChecked: ['pump and roll', 'draft'],
  },
  {
    tank: 50,
    flow: 10,
    pressure: 100,
    hose: [0, 0, 200],
    gross: 14000,
    crew: 2,
    notChecked: ['pump and roll'],
  },
];

const table = loadCatalogue().find('typing', 'nwcg');

describe('NWCG PMS 200, Engine Typing Standard', () => {
  ENGINES.forEach((printed, index) => {
    const type = index + 1;
    const engine = table?.classes[`engine-${type}`];
    it(`type ${type}: ${printed.flow} gpm at ${printed.pressure} psi, ${printed.tank} gal, crew ${printed.crew}`, () => {
      if (!engine) throw new Error('no such class');
      const [point] = typingPoints(engine);
      expect(toUnit(point.flow, 'gpm')).toBeCloseTo(printed.flow, 6);
      expect(toUnit(point.pressure ?? Number.NaN, 'psi')).toBeCloseTo(printed.pressure, 6);
      expect(toUnit(engine.tank ?? Number.NaN, 'gal')).toBeCloseTo(printed.tank, 6);
      expect(engine.crew).toBe(printed.crew);
    });

    it(`type ${type}: hose and gross weight rating`, () => {
      const feet = [2.5, 1.5, 1].map((size) => {
        const row = engine?.hose?.find(({ nominal }) => Math.abs(toUnit(nominal, 'in') - size) < 1e-9);
        return row ? Math.round(toUnit(row.length, 'ft')) : 0;
      });
      expect(feet).toEqual(printed.hose);
      const gross = engine?.gross_weight_maximum;
      expect(gross === undefined ? undefined : Math.round(toUnit(gross, 'lb'))).toBe(printed.gross);
    });

    it(`type ${type}: what no sum can decide is listed`, () => {
      const items = engine?.not_checked?.map(({ item }) => item) ?? [];
      expect(items.filter((item) => !['road safety', 'qualifications'].includes(item))).toEqual(
        printed.notChecked,
      );
    });
  });
});
