// FEMA 508-4 (July 2005), Engine, Fire (Pumper), as printed; and the table that NWCG had until 2008, which is the same but
// for its crews (national park page, archived 7 May 2009). Neither prints a pressure.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { type TypingClass, typingPoints } from '../../src/catalogue/schema/typing.js';
import { toUnit } from '../../src/quantity/units.js';

type Row = [flow: number, tank: number, hose: [number, number, number], crew: number];

const FEMA: Record<string, Row> = {
  'engine-1': [1000, 400, [1200, 400, 200], 4],
  'engine-2': [500, 400, [1000, 500, 300], 3],
  'engine-3': [120, 500, [0, 1000, 800], 3],
  'engine-4': [70, 750, [0, 300, 300], 2],
  'engine-other': [50, 500, [0, 300, 300], 2],
};
const BEFORE_2008: Record<string, Row> = {
  ...FEMA,
  'engine-4': [70, 750, [0, 300, 300], 3],
  'engine-5': [50, 500, [0, 300, 300], 3],
  'engine-6': [50, 200, [0, 300, 300], 2],
};
delete BEFORE_2008['engine-other'];

function rowOf(engine: TypingClass): Row {
  const [point] = typingPoints(engine);
  const feet = [2.5, 1.5, 1].map((size) => {
    const row = engine.hose?.find(({ nominal }) => Math.abs(toUnit(nominal, 'in') - size) < 1e-9);
    return row ? Math.round(toUnit(row.length, 'ft')) : 0;
  });
  return [
    Number(toUnit(point.flow, 'gpm').toFixed(6)),
    Number(toUnit(engine.tank ?? Number.NaN, 'gal').toFixed(6)),
    feet as [number, number, number],
    engine.crew ?? Number.NaN,
  ];
}

const catalogue = loadCatalogue();
const tables: [string, string, Record<string, Row>][] = [
  ['FEMA 508-4 (July 2005)', 'fema-2005', FEMA],
  ['national park page archived 7 May 2009', 'nwcg-pre-2008', BEFORE_2008],
];

for (const [citation, scheme, rows] of tables)
  describe(citation, () => {
    for (const [id, printed] of Object.entries(rows))
      it(`${id}: ${printed[0]} gpm, ${printed[1]} gal, crew ${printed[3]}`, () => {
        const engine = catalogue.find('typing', scheme)?.classes[id];
        if (!engine) throw new Error('no such class');
        expect(rowOf(engine)).toEqual(printed);
        expect(typingPoints(engine)[0].pressure).toBeUndefined();
      });
  });
