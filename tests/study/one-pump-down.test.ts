import { describe, expect, it } from 'vitest';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, engineOf, FREE_CHECK, layoutFrom, parabolic } from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

/*
 * Two tables computed by hand for builders, on curves that fall with the square of the flow and plumbing without loss;
 * printed to whole gpm, psi and per cent. The orifices are taken there on total pressure, 150 gpm at 250 psi and 50 at 100.
 */

function orifice(bore: string, passes: string): Document {
  return { kind: 'sharp_orifice', bore, discharge_coefficient: 0.62, passes };
}

const TYPE_3 = { flow: '150 gpm', pressure: '250 psi', test_orifice: orifice('0.716 in', '250 psi') };
const TYPE_4 = { flow: '50 gpm', pressure: '100 psi', test_orifice: orifice('0.520 in', '100 psi') };

const PARALLEL_PUMP = parabolic(400, 75, 250);
const SERIES_PUMP = parabolic(200, 150, 125);

describe('an engine sized to exactly 150 gpm at 250 psi, with one pump down', () => {
  for (const [arrangement, pump, custom, gpm, psi, passes] of [
    ['parallel, each 75 gpm at 250 psi, shutoff 400', PARALLEL_PUMP, TYPE_3, 103, 118, false],
    ['parallel, each 75 gpm at 250 psi, shutoff 400', PARALLEL_PUMP, TYPE_4, 77, 240, true],
    ['series, each 150 gpm at 125 psi, shutoff 200', SERIES_PUMP, TYPE_3, 118, 154, false],
    ['series, each 150 gpm at 125 psi, shutoff 200', SERIES_PUMP, TYPE_4, 68, 185, true],
  ] as const) {
    it(`${arrangement}: one alone makes ${gpm} gpm at ${psi} psi on ${custom.test_orifice.bore}`, async () => {
      const document = { engine: engineOf(pump, pump), staging: 'a', typing: { custom } };
      const { testOrifice } = await checkLayout(layoutFrom(document));
      expect(Math.abs((testOrifice?.flow as number) / GPM - gpm)).toBeLessThanOrEqual(0.55);
      expect(Math.abs((testOrifice?.reading as number) / PSI - psi)).toBeLessThanOrEqual(0.55);
      expect(testOrifice?.grade).toBe(passes ? 'pass' : 'below');
    });
  }

  it('with both pumps makes 250 psi at 150 gpm, in parallel and in series', async () => {
    const custom = { flow: '150 gpm', pressure: '250 psi' };
    for (const [staging, pump] of [
      ['parallel', PARALLEL_PUMP],
      ['series', SERIES_PUMP],
    ]) {
      const document = { engine: engineOf(pump, pump), staging, typing: { custom } };
      const { atRequiredFlow } = await checkLayout(layoutFrom(document));
      expect((atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(250, 3);
    }
  });
});

describe('pump A of 400 psi shutoff and B 8 % weaker (368 psi), same slope: the share of B by header pressure', () => {
  const strong = parabolic(400, 75, 250);
  const weak = parabolic(368, 75, 218);
  for (const [header, share] of [
    [150, 48],
    [250, 47],
    [330, 42],
    [365, 23],
    [368, 0],
    [390, 0],
  ] as const) {
    it(`${share} % at ${header} psi`, async () => {
      const flow = (shutoff: number) => 75 * Math.sqrt(Math.max(0, shutoff - header) / 150);
      const total = flow(400) + flow(368);
      const custom = { flow: `${total} gpm`, pressure: `${header} psi` };
      const engine = engineOf(strong, weak, { plumbing: { discharge: [FREE_CHECK] } });
      const answer = await checkLayout(layoutFrom({ engine, typing: { custom } }));
      const [both] = answer.stagings;
      expect((both.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(header, 2);
      expect(Math.round(100 * both.shares[1].share)).toBe(share);
      expect(both.shares[0].share + both.shares[1].share).toBeCloseTo(1, 6);
    });
  }
});
