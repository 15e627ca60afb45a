// ASME B36.19M, stainless steel pipe, inside diameters in mm as a public hydraulics library (fluids) tabulates them.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';

const NOMINAL = ['0.75', '1', '1.25', '1.5', '2', '2.5', '3', '3.5', '4', '5', '6'];
const PRINTED: Record<string, number[]> = {
  '10s': [22.48, 27.86, 36.66, 42.76, 54.76, 66.9, 82.8, 95.5, 108.2, 134.5, 161.5],
  '40s': [20.96, 26.64, 35.08, 40.94, 52.48, 62.68, 77.92, 90.12, 102.26, 128.2, 154.08],
};
const PRINTED_5S: Record<string, number> = { '1.5': 45.0, '2': 57.0, '2.5': 68.78, '3': 84.68, '4': 110.08 };

const catalogue = loadCatalogue();

function boreInMillimetres(id: string): number | undefined {
  const pipe = catalogue.find('pipe', id);
  return pipe && pipe.inside_diameter * 1000;
}

describe('ASME B36.19M stainless pipe', () => {
  for (const [schedule, bores] of Object.entries(PRINTED))
    NOMINAL.forEach((nominal, index) => {
      it(`${nominal} in schedule ${schedule}: bore ${bores[index]} mm`, () => {
        expect(boreInMillimetres(`stainless-${schedule}-${nominal}`)).toBeCloseTo(bores[index], 9);
      });
    });

  for (const [nominal, bore] of Object.entries(PRINTED_5S))
    it(`${nominal} in schedule 5s: bore ${bore} mm`, () => {
      expect(boreInMillimetres(`stainless-5s-${nominal}`)).toBeCloseTo(bore, 9);
    });

  it('each row names the size it is called by, and a thinner schedule is the wider one', () => {
    for (const nominal of NOMINAL) {
      const thin = catalogue.find('pipe', `stainless-10s-${nominal}`);
      const thick = catalogue.find('pipe', `stainless-40s-${nominal}`);
      expect(thin?.nominal).toBeCloseTo(Number(nominal) * 0.0254, 9);
      expect(thick?.nominal).toBeCloseTo(Number(nominal) * 0.0254, 9);
      expect(thin?.inside_diameter).toBeGreaterThan(thick?.inside_diameter ?? Number.NaN);
    }
  });
});
