import { describe, expect, test } from 'vitest';
import { changed, checked, type Loose, operated, sound } from '../caution/sound.js';
import { GPM, HORSEPOWER, kelvin } from '../support/heat.js';
import { orificeFlow } from '../support/layouts.js';

const PSI = 6894.757293168361;

describe('heat of the pumps', () => {
  test('the water leaves warmer by the power that does not become pressure, over its flow', async () => {
    const answer = await checked(sound());
    const [heat] = answer.heat;
    const [pump] = answer.pumps;
    // 1 hp warms 1 gpm by 42.4 Btu/min over 8.34 lb: 5.09 degF.
    const useful = ((pump.flow / GPM) * (pump.headRise / PSI)) / 1714.3;
    const waste = (pump.power ?? Number.NaN) / HORSEPOWER - useful;
    const rise = (waste * 42.4) / (8.34 * (pump.flow / GPM));
    expect(((heat.leaving ?? 0) - kelvin(60)) * 1.8).toBeCloseTo(rise, 1);
  });

  test('the cooling line is solved with the rest, and its flow is missing at the outlet', async () => {
    const bare = (d: Loose) => {
      d.engine.relief = undefined;
    };
    const without = await checked(
      changed((d) => {
        bare(d);
        d.engine.plumbing.cooling = undefined;
      }),
    );
    const answer = await checked(changed(bare));
    expect(answer.atRequiredFlow?.pressure).toBeLessThan(without.atRequiredFlow?.pressure ?? 0);
    for (const { shutFlow } of answer.heat) {
      // Sharp edge of 1/8 in at the shutoff of 400 psi less what so little flow takes off it: 5.7 gpm.
      expect(shutFlow / GPM).toBeCloseTo(orificeFlow(0.125, 398, (0.62 * 29.9) / 29.84), 1);
    }
    expect(without.heat.map(({ shutFlow }) => shutFlow)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(0, 9),
    ]);
  });

  test('times to 140 degF and to boiling follow from trapped water and power at no flow', async () => {
    const [heat] = (await checked(sound())).heat;
    const power = (heat.powerAtShutoff ?? 0) / HORSEPOWER;
    // From the rows: 40 gpm at 370 psi and 45 %, 80 gpm at 300 psi and 60 %; straight on to no flow.
    const rows = [(40 * 370) / 1714.3 / 0.45, (80 * 300) / 1714.3 / 0.6];
    expect(power).toBeCloseTo(rows[0] - (rows[1] - rows[0]), 1);
    const rate = (42.4 * power) / (8.34 * 0.6);
    expect((heat.untilScald ?? 0) / 60).toBeCloseTo(80 / rate, 2);
    // Water boils at 211.1 degF at 500 ft: 1.8 inHg a degree or so.
    expect((heat.untilBoiling ?? 0) / 60).toBeCloseTo((211.1 - 60) / rate, 2);
    expect((heat.leastFlow ?? 0) / GPM).toBeCloseTo(power / 2.95, 1);
  });

  test('without efficiency the rating of the engine bounds the power, and without either nothing is said', async () => {
    const bound = await checked(
      changed((d) => {
        for (const name of ['a', 'b']) d.engine.pumps[name].model.efficiency = undefined;
      }),
    );
    expect(bound.heat[0].basis).toBe('engine_rating');
    expect((bound.heat[0].powerAtShutoff ?? 0) / HORSEPOWER).toBeCloseTo(60, 6);
    const unknown = await checked(
      changed((d) => {
        for (const name of ['a', 'b']) {
          d.engine.pumps[name].model.efficiency = undefined;
          d.engine.pumps[name].model.power = undefined;
        }
      }),
    );
    expect(unknown.heat[0]).toMatchObject({
      basis: 'not_known',
      untilScald: undefined,
      leastFlow: undefined,
    });
  });

  for (const { at, state, cooling, helps } of [
    { at: 'pump', state: 'open', cooling: 'own', helps: true },
    { at: 'discharge', state: 'open', cooling: 'behind_check', helps: false },
    { at: 'manifold', state: 'open', cooling: 'shared', helps: false },
    { at: 'pump', state: 'shut', cooling: 'shut', helps: false },
  ]) {
    test(`a line at the ${at} that is ${state} ${helps ? 'cools' : 'does not cool'} a pump that is shut out`, async () => {
      const answer = await operated(
        changed((d) => {
          d.throttle = { a: '100 %', b: '60 %' };
          d.engine.plumbing.cooling = { orifice: '1/8 in', at, state };
        }),
      );
      const weak = answer.heat[1];
      expect(weak).toMatchObject({ cooling, coolsShutOut: helps });
      // Solved, not said: the weaker pump moves water only where the line lies before its own check valve.
      if (helps) expect(weak.flow / GPM).toBeGreaterThan(2);
      else expect(weak.flow / GPM).toBeLessThan(0.01);
    });
  }
});
