import { describe, expect, it } from 'vitest';
import {
  coefficientLoss,
  columnPressure,
  type Document,
  engineOf,
  parabolic,
  solve,
  velocityPressure,
} from '../support/layouts.js';
import { PSI } from '../support/units.js';

const ENGINE = engineOf(parabolic(400, 75, 250));
const TIP = { nozzle: { kind: 'smooth_bore', bore: '0.45 in' }, name: 'tip' };

/** Total psi at the inlet of pump a, and gpm. */
async function inlet(supply: Document, lay: Document[] = [TIP]) {
  const solved = await solve({ engine: ENGINE, supply, lay });
  const { point, pump, gpm } = solved;
  return { ...solved, pressure: point.totalPressure(pump('pump a').inlet) / PSI, flow: gpm('pump a') };
}

describe('draft', () => {
  const suction = [{ hose: { inside_diameter: '2 in', coefficient: 6 }, length: '20 ft' }];

  it('at a standstill the inlet stands below the air by the lift', async () => {
    const { pressure } = await inlet({ draft: { lift: '10 ft', suction } }, [{ cap: true }]);
    expect(pressure).toBeCloseTo(-columnPressure(10), 3);
  });

  it('flowing, it stands lower by what the suction hose loses', async () => {
    const { pressure, flow } = await inlet({ draft: { lift: '10 ft', suction } });
    expect(flow).toBeGreaterThan(50);
    expect(pressure).toBeCloseTo(-columnPressure(10) - coefficientLoss(6, flow, 20), 3);
  });

  it('a gauge there reads the velocity head less besides', async () => {
    const { pressure, flow, point, pump } = await inlet({ draft: { lift: '10 ft', suction } });
    const gauge = point.gaugePressure(pump('pump a').inlet) / PSI;
    expect(gauge).toBeCloseTo(pressure - velocityPressure(flow, 2), 3);
  });

  it('the climb is the lift, whether the suction says so by its rises or not', async () => {
    const climbing = [{ ...suction[0], rise: '10 ft' }];
    const level = await inlet({ draft: { lift: '10 ft', suction } });
    const stated = await inlet({ draft: { lift: '10 ft', suction: climbing } });
    expect(stated.pressure).toBeCloseTo(level.pressure, 9);
  });

  for (const [what, line] of [
    ['hose', { hose: { inside_diameter: '2 in', coefficient: 6 }, length: '20 ft' }],
    ['pipe', { pipe: { inside_diameter: '2 in', hazen_williams: 140 }, length: '20 ft' }],
  ] as const) {
    it(`a strainer loses its K in the bore of the ${what} after it`, async () => {
      const bare = await inlet({ draft: { lift: '10 ft', suction: [line] } });
      const strained = await inlet({ draft: { lift: '10 ft', suction: [line], strainer: { k: 2 } } });
      const loss = 2 * velocityPressure(strained.flow, 2);
      expect(bare.pressure - strained.pressure).toBeGreaterThan(0);
      expect(strained.point.lossOf(strained.point.assembly.elements[0]) / PSI).toBeCloseTo(loss, 3);
    });
  }

  it('a strainer by flow coefficient needs no bore', async () => {
    const { pressure, flow } = await inlet({ draft: { lift: '5 ft', strainer: { flow_coefficient: 100 } } });
    expect(pressure).toBeCloseTo(-columnPressure(5) - (flow / 100) ** 2, 3);
  });
});

describe('hydrant', () => {
  it('falls from static by q^1.85 through the test (NFPA 291, from memory)', async () => {
    const { pressure, flow } = await inlet({
      hydrant: { static: '80 psi', residual: '60 psi', flow: '150 gpm' },
    });
    expect(pressure).toBeCloseTo(80 - 20 * (flow / 150) ** 1.85, 3);
  });

  it('one that loses nothing stands at its static pressure', async () => {
    const { pressure } = await inlet({ hydrant: { static: '80 psi', residual: '80 psi', flow: '150 gpm' } });
    expect(pressure).toBeCloseTo(80, 4);
  });
});

describe('relay', () => {
  it('holds its pressure at the intake whatever flows', async () => {
    const flowing = await inlet({ relay: { pressure: '60 psi' } });
    const still = await inlet({ relay: { pressure: '60 psi' } }, [{ cap: true }]);
    expect(flowing.pressure).toBeCloseTo(60, 4);
    expect(still.pressure).toBeCloseTo(60, 4);
  });

  it('counts at the discharge in full', async () => {
    const { point, pump } = await inlet({ relay: { pressure: '60 psi' } }, [{ cap: true }]);
    expect(point.totalPressure(pump('pump a').discharge) / PSI).toBeCloseTo(460, 3);
  });
});
