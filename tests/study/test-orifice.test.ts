import { describe, expect, it } from 'vitest';
import type { TestOrifice } from '../../src/study/answer.js';
import { checkLayout } from '../../src/study/rating.js';
import {
  type Document,
  engineOf,
  layoutFrom,
  parabola,
  parabolic,
  velocityPressure,
} from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

const TYPE_3 = { scheme: 'nwcg', class: 'engine-3' };
const TYPE_4 = { scheme: 'nwcg', class: 'engine-4' };

async function reading(
  typing: Document,
  document: Document,
): Promise<TestOrifice & Required<Pick<TestOrifice, 'reading' | 'flow' | 'margin'>>> {
  const { testOrifice } = await checkLayout(layoutFrom({ typing, ...document }));
  const { reading: read, flow, margin } = testOrifice ?? {};
  if (!testOrifice || read === undefined || flow === undefined || margin === undefined)
    throw new Error('no reading was predicted');
  return { ...testOrifice, reading: read, flow, margin };
}

/** A pump that makes just the pressure in the tee, psi, through an orifice by the agency's 29.9 x 0.62 in a tee of 1-1/2 in. */
function engineReading(psi: number, bore: number): Document {
  const flow = 29.9 * 0.62 * bore ** 2 * Math.sqrt(psi);
  const total = psi + velocityPressure(flow, 1.5);
  return engineOf(parabolic(total + 40, flow, total, 1.5 * flow));
}

describe('the reading at the test orifice', () => {
  it('obeys Q = 29.9 x 0.62 d^2 sqrt(P) (NWCG PMS 447-1, Appendix C)', async () => {
    const { reading: pressure, flow } = await reading(TYPE_3, {
      engine: engineOf(parabolic(450, 150, 300, 220)),
    });
    const expected = 29.9 * 0.62 * 0.716 ** 2 * Math.sqrt(pressure / PSI);
    expect(Math.abs(flow / GPM / expected - 1)).toBeLessThan(1e-4);
  });

  it('is static: the pump makes the velocity head in the tee besides', async () => {
    const { reading: pressure, flow } = await reading(TYPE_3, {
      engine: engineOf(parabolic(450, 150, 300, 220)),
    });
    const made = parabola(450, 150, 300, flow / GPM);
    expect(made - pressure / PSI).toBeCloseTo(velocityPressure(flow / GPM, 1.5), 2);
  });

  it('is lower by the hose before it, where the lay ends in the orifice', async () => {
    const engine = engineOf(parabolic(450, 150, 300, 220));
    const hose = { hose: { inside_diameter: '1.5 in', coefficient: 24 }, length: '50 ft' };
    const end = { nozzle: { kind: 'sharp_orifice', bore: '0.716 in', tee_bore: '1.5 in' } };
    const bare = await reading(TYPE_3, { engine });
    const hosed = await reading(TYPE_3, { engine, lay: [hose, end] });
    const flow = hosed.flow / GPM;
    const made = parabola(450, 150, 300, flow);
    const lost = 24 * (flow / 100) ** 2 * 0.5 + velocityPressure(flow, 1.5);
    expect(hosed.reading / PSI).toBeCloseTo(made - lost, 2);
    expect(hosed.reading).toBeLessThan(bare.reading);
  });

  it('of a type 7 engine is that of a nozzle: 10 gpm at 100 psi through 3/16 in', async () => {
    const typing = { scheme: 'nwcg', class: 'engine-7' };
    const { flow, reading: pressure } = await reading(typing, { engine: engineOf(parabolic(130, 10, 100)) });
    expect(flow / GPM).toBeCloseTo(10, 1);
    expect(pressure / PSI).toBeCloseTo(100, 0);
  });

  it('is not predicted where the agency names no orifice', async () => {
    const typing = { scheme: 'nwcg', class: 'engine-1' };
    const { testOrifice } = await checkLayout(
      layoutFrom({ typing, engine: engineOf(parabolic(300, 1000, 200)) }),
    );
    expect(testOrifice).toBeUndefined();
  });

  it('below the pass mark fails an engine that makes its flow at the outlet', async () => {
    // 252 psi at the outlet, of which 5.0 are velocity head in the tee.
    const document = { engine: engineOf(parabolic(300, 150, 252, 220)), typing: TYPE_3 };
    const answer = await checkLayout(layoutFrom(document));
    expect((answer.atRequiredFlow?.margin as number) / PSI).toBeCloseTo(2, 2);
    expect((answer.testOrifice?.margin as number) / PSI).toBeLessThan(0);
    expect(answer.pumpVerdict).toBe('falls_short');
  });

  it('past the end of a curve is not told, and no pass', async () => {
    const document = { engine: engineOf(parabolic(400, 75, 250, 100)), typing: TYPE_3 };
    const { cautions, testOrifice, verdict } = await checkLayout(layoutFrom(document));
    expect(testOrifice).toMatchObject({ reading: undefined, flow: undefined, grade: undefined });
    expect(testOrifice?.refusal?.code).toBe('past_curve');
    expect(verdict).toBe('falls_short');
    const past = cautions.find(({ code }) => code === 'pump_off_curve');
    expect(past).toMatchObject({ at: 'pump a' });
    expect((past?.limit?.value as number) / GPM).toBeCloseTo(100, 3);
  });
});

describe('grades (water-handling solicitation template, draft of 20 Mar 2009)', () => {
  for (const [typing, bore, from, grade, below] of [
    [TYPE_3, 0.716, 250, 'acceptable', 'below'],
    [TYPE_3, 0.716, 312.5, 'good', 'acceptable'],
    [TYPE_3, 0.716, 375, 'excellent', 'good'],
    [TYPE_4, 0.52, 100, 'acceptable', 'below'],
    [TYPE_4, 0.52, 125, 'good', 'acceptable'],
    [TYPE_4, 0.52, 150, 'excellent', 'good'],
  ] as const) {
    it(`${typing.class}: ${grade} from ${from} psi, ${below} under it`, async () => {
      const over = await reading(typing, { engine: engineReading(from + 0.1, bore) });
      expect(over.reading / PSI).toBeCloseTo(from + 0.1, 1);
      expect(over.grade).toBe(grade);
      const under = await reading(typing, { engine: engineReading(from - 0.1, bore) });
      expect(under.reading / PSI).toBeCloseTo(from - 0.1, 1);
      expect(under.grade).toBe(below);
    });
  }

  it('where the agency names none it is pass or below', async () => {
    const typing = { scheme: 'nwcg', class: 'engine-6' };
    expect((await reading(typing, { engine: engineReading(100.1, 0.52) })).grade).toBe('pass');
    expect((await reading(typing, { engine: engineReading(99.9, 0.52) })).grade).toBe('below');
  });
});
