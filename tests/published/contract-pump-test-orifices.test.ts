// USDA Forest Service water-handling solicitation template, draft 20 Mar 2009: orifices and grades of types 3 and 4.
// Northern Rockies inspection job aid, 2010: orifices of types 3 to 7. Method: NWCG PMS 447-1 (2003), Appendix C,
// d = sqrt(Q / (29.9 x 0.62 sqrt(P))). The orifices make the typing's own flow at its pressure within 0.3 %.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { typingPoints } from '../../src/catalogue/schema/typing.js';
import { toUnit } from '../../src/quantity/units.js';

const BORES: Record<string, number> = {
  'engine-3': 0.716,
  'engine-4': 0.52,
  'engine-5': 0.52,
  'engine-6': 0.52,
  'engine-7': 3 / 16,
};
const GRADES: Record<string, [string, number][]> = {
  'engine-3': [
    ['excellent', 375],
    ['good', 312.5],
    ['acceptable', 250],
  ],
  'engine-4': [
    ['excellent', 150],
    ['good', 125],
    ['acceptable', 100],
  ],
};
/** The coefficients stand on this; 29.84 x 0.6212 is the method's 29.9 x 0.62. */
const IDEAL_CONSTANT = 29.84;
const AGREEMENT = 0.003;

const classes = loadCatalogue().find('typing', 'nwcg')?.classes ?? {};

describe('USDA Forest Service solicitation template, draft 20 Mar 2009, and Northern Rockies job aid, 2010', () => {
  for (const [id, bore] of Object.entries(BORES)) {
    const engine = classes[id];
    const orifice = engine.test_orifice;
    if (!orifice) throw new Error(`${id} has no test orifice`);

    it(`${id}: a bore of ${bore} in`, () => {
      expect(toUnit(orifice.bore, 'in')).toBeCloseTo(bore, 9);
    });

    it(`${id}: the orifice passes the flow of the typing at its pressure`, () => {
      const [point] = typingPoints(engine);
      const inches = toUnit(orifice.bore, 'in');
      const psi = toUnit(orifice.passes, 'psi');
      const gpm = IDEAL_CONSTANT * orifice.discharge_coefficient * inches ** 2 * Math.sqrt(psi);
      expect(orifice.passes).toBe(point.pressure);
      expect(Math.abs(gpm / toUnit(point.flow, 'gpm') - 1)).toBeLessThanOrEqual(AGREEMENT);
    });

    it(`${id}: ${GRADES[id] ? 'grades as printed, the last of them the pass mark' : 'no grade, none having been seen'}`, () => {
      const grades = orifice.grades?.map(({ grade, from }) => [
        grade,
        Number(toUnit(from, 'psi').toFixed(6)),
      ]);
      expect(grades).toEqual(GRADES[id]);
      if (orifice.grades) expect(orifice.grades.at(-1)?.from).toBe(orifice.passes);
    });
  }

  it('names the bore of type 7 as a nozzle, for a sharp edge would pass 6.5 gpm only', () => {
    const orifice = classes['engine-7'].test_orifice;
    expect(orifice?.kind).toBe('smooth_bore');
    expect(29.9 * 0.62 * (3 / 16) ** 2 * Math.sqrt(100)).toBeCloseTo(6.5, 1);
  });
});
