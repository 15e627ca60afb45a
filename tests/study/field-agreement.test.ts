import { describe, expect, it } from 'vitest';
import { cardText } from '../../src/report/card.js';
import { toJson } from '../../src/report/json.js';
import { cardOf } from '../../src/study/card.js';
import { clockOf } from '../../src/study/clock.js';
import { operateLayout } from '../../src/study/operation.js';
import { layoutOf } from './support.js';

const HOSE = '{inside_diameter: 1.5 in, coefficient: 24}';
const POWERED =
  '{name: p, points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]], rated_speed: 3600 rpm, power: {rated: 40 hp, fuel: gasoline}, efficiency: [[10 gpm, 30 %], [50 gpm, 55 %], [90 gpm, 50 %]]}';

const layout = (more: string, throttle = '80 %', supply = '') =>
  layoutOf(`engine:
  name: engine of the tests
  tank: {capacity: 500 gal}
  pumps: {a: {model: ${POWERED}, wear: 8 %}}
  outlets: {left: []}
staging: a
throttle: ${throttle}
${supply}
lay:
  left:
    - {hose: ${HOSE}, length: 300 ft}
    - {nozzle: {kind: fog, flow: 40 gpm, pressure: 75 psi}, name: far}
${more}`);

/** Gallons an hour: 0.5 lb of gasoline a horsepower and hour, 6.1 lb a gallon. */
const burnt = (horsepower: number) => (horsepower * 0.5) / 6.1;

describe('what flow, clock and the card tell of one lay', () => {
  it('is fuel by one power: throttle and wear are in it, and it is by the hour', async () => {
    const one = layout('');
    const { pumps } = toJson(await operateLayout(one), 'us');
    const { fuel } = toJson(await clockOf(one), 'us');
    expect(pumps[0].power?.unit).toBe('hp');
    expect(fuel[0].burn?.unit).toBe('gal/h');
    expect(fuel[0].burn?.value).toBeCloseTo(burnt(pumps[0].power?.value ?? 0), 6);
  });

  it('is one pressure with every nozzle shut where a governor holds it, and the stuck one beside it', async () => {
    const held = layout('', '{discharge_pressure: 150 psi}');
    const card = await cardOf(held);
    const psi = (card.gauges[0].shut ?? 0) / 6894.757;
    expect(psi).toBeCloseTo(150, 1);
    const { cases, lineControl } = await operateLayout(held, { allCases: true });
    expect(lineControl.overSetting).toBeCloseTo((card.gauges[0].shut ?? 0) - 150 * 6894.757, -2);
    const shut = cases.find(({ code }) => code === 'all_shut')?.highestHose?.pressure ?? 0;
    const stuck = cases.find(({ code }) => code === 'governor_stuck')?.highestHose?.pressure ?? 0;
    expect(stuck).toBeGreaterThan(1.05 * shut);
  });

  it('says when the next tender is in and how long there is no water', async () => {
    const { shuttle } = await clockOf(
      layout(
        'shuttle: {tenders: 1, tank: 500 gal, fill: 5 min, dump: 4 min, distance: 6 mi, first_in: 30 min}\n',
      ),
    );
    expect(shuttle?.gap?.until).toBeCloseTo(30 * 60, 6);
    expect(shuttle?.gap?.from).toBeLessThan(30 * 60);
  });

  it('says of hose without a limit that it is not known, and which nozzles may be open', async () => {
    const card = await cardOf(layout(''));
    const text = cardText(card, 'us', '2026-01-01');
    expect(text).toContain('limit not known');
    expect(text).toMatch(/all 1 nozzle may be open|farthest/);
  });
});
