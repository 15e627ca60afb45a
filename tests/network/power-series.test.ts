import { describe, expect, it } from 'vitest';
import { PowerSeries } from '../../src/network/power-series.js';
import { Random } from '../support/random.js';

/** Hazen-Williams less one, a hose that is nearly quadratic, and the exponents of flatter and steeper laws. */
const EXPONENTS = [0.852, 0.75, 1, 1.2, 2];

describe('a power by the series about the last', () => {
  for (const exponent of EXPONENTS) {
    it(`is the power to ${exponent}, wherever the last stood`, () => {
      const random = new Random(852);
      const series = new PowerSeries(exponent);
      let flow = 5e-3;
      for (let turn = 0; turn < 2000; turn += 1) {
        // Mostly nearby, to the edge of the series and past it; now and then far away.
        flow =
          turn % 50 === 0
            ? 10 ** random.between(-6, 0)
            : Math.min(flow * 10 ** random.between(-0.08, 0.08), 1);
        expect(Math.abs(series.raise(flow) / flow ** exponent - 1)).toBeLessThan(1e-12);
      }
    });
  }
});
