import { describe, expect, test } from 'vitest';
import { checkLayout } from '../../src/study/rating.js';
import { changed, checked, type Loose, sound } from '../caution/sound.js';
import { engineOf, FREE_CHECK, layoutFrom, parabolic } from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

/** Pumps and plumbing without loss, so that what runs back can be told by hand. */
const BARE = {
  engine: engineOf(parabolic(400, 75, 250), parabolic(400, 75, 250), {
    plumbing: { discharge: [FREE_CHECK] },
  }),
  staging: 'parallel',
  typing: { custom: { flow: '120 gpm', pressure: '250 psi' } },
};

const typed = (change: (d: Loose) => void = () => {}) =>
  changed((d) => {
    d.typing = { scheme: 'nwcg', class: 'engine-3' };
    d.engine.hose_carried = [
      { hose: 'forestry-1.5', length: '1000 ft' },
      { hose: 'forestry-1', length: '500 ft' },
    ];
    change(d);
  });

describe('one pump out', () => {
  test('the types that are still made are those whose flow the pump left has at their pressure', async () => {
    const { pumpsOut, stagings } = await checked(typed());
    expect(pumpsOut.map(({ out, staging }) => [out, staging])).toEqual([
      ['pump a', 'b'],
      ['pump b', 'a'],
    ]);
    for (const { types, staging, verdict } of pumpsOut) {
      expect(verdict).toBe(stagings.find((one) => one.staging === staging)?.verdict);
      // 120 gpm end its curve: types 4 to 7 ask 50 or 10 gpm at 100 psi, types 1 to 3 ask 150 or more.
      expect(types.map(({ class: name }) => name).sort()).toEqual([
        'engine-4',
        'engine-5',
        'engine-6',
        'engine-7',
      ]);
      for (const { margin } of types) expect(margin).toBeGreaterThanOrEqual(0);
    }
  });

  test('a type that the pump makes and the tank does not is said to be made by the pump alone', async () => {
    const [{ types }] = (await checked(typed())).pumpsOut;
    expect(types.find(({ class: name }) => name === 'engine-4')?.inventory).not.toBe('meets');
  });

  test('a pump that stands behind a check valve at work passes nothing back', async () => {
    const { pumpsOut, stagings } = await checkLayout(layoutFrom(BARE));
    const works = pumpsOut[0].standing.find(
      ({ staging, check }) => staging === 'parallel' && check === 'works',
    );
    expect(works?.backflowShut).toBeCloseTo(0, 8);
    expect(works?.flow).toBeCloseTo(
      stagings.find(({ staging }) => staging === 'b')?.atRequiredPressure?.flow ?? 0,
      6,
    );
  });

  test('no more is told of the other than the end of its curve', async () => {
    const known = parabolic(400, 75, 250, 100);
    const engine = engineOf(known, known, { plumbing: { discharge: [FREE_CHECK] } });
    // 400 - 150 (100 / 75)^2 = 133 psi where the curve ends.
    const typing = { custom: { flow: '80 gpm', pressure: '50 psi' } };
    const { pumpsOut } = await checkLayout(layoutFrom({ ...BARE, engine, typing }));
    const works = pumpsOut[0].standing.find(
      ({ staging, check }) => staging === 'parallel' && check === 'works',
    );
    expect((works?.flow ?? 0) / GPM).toBeCloseTo(100, 2);
  });

  test('with the check valve stuck open what the other pump makes runs back until both losses meet', async () => {
    const { pumpsOut } = await checkLayout(layoutFrom(BARE));
    const stuck = pumpsOut[0].standing.find(({ check }) => check === 'stuck_open');
    const back = (stuck?.backflowShut ?? 0) / GPM;
    // 400 - r q^2 = R q^2 by hand: r = 150 / 75^2, and R is the fall of the curve to its last flow over that flow squared, r too.
    expect(back).toBeCloseTo(75 * Math.sqrt(400 / 300), 1);
    expect((stuck?.shutoff ?? 0) / PSI).toBeCloseTo(200, 1);
    expect(stuck?.flow).toBeUndefined();
  });

  test('in series the pump left draws through the one that stands, and gives less for it', async () => {
    // Fed at 200 psi, so that the inlet of the pump left stays above the air.
    const fed = {
      ...BARE,
      supply: { relay: { pressure: '200 psi' } },
      typing: { custom: { flow: '60 gpm', pressure: '400 psi' } },
    };
    const { pumpsOut, stagings } = await checkLayout(layoutFrom(fed));
    const through = pumpsOut[0].standing.find(({ staging }) => staging === 'series');
    const alone = stagings.find(({ staging }) => staging === 'b')?.atRequiredPressure?.flow ?? 0;
    expect(through?.flow).toBeLessThan(alone);
    // 200 + 400 - 2 r q^2 = 400.
    expect((through?.flow ?? 0) / GPM).toBeCloseTo(75 * Math.sqrt(2 / 3), 1);
  });

  test('what would have to be sucked through it below a vacuum is no flow', async () => {
    const { pumpsOut } = await checkLayout(layoutFrom(BARE));
    const through = pumpsOut[0].standing.find(({ staging }) => staging === 'series');
    expect(through?.reaches).toBe(true);
    expect(through?.flow).toBeUndefined();
    expect(through?.backflow).toBeUndefined();
    expect(through?.refusal).toMatchObject({ code: 'water_parts', pump: 'pump b' });
  });

  test('an engine of one pump has none to lose', async () => {
    const document = sound();
    document.engine.pumps.b = undefined;
    document.staging = 'a';
    document.typing.custom.flow = '60 gpm';
    expect((await checked(document)).pumpsOut).toEqual([]);
  });
});
