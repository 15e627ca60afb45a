import { expect, test } from 'vitest';
import { operateLayout } from '../../src/study/operation.js';
import { engine, FAR_FOG, FOOT, GPM, lay, layoutOf, PSI } from './support.js';

const with_ = (supply: string, far = FAR_FOG) =>
  layoutOf(`${engine()}supply: ${supply}\n${lay([{ feet: 100 }], far)}`);
const codes = async (supply: string, far?: string) =>
  (await operateLayout(with_(supply, far))).cautions.map(({ code }) => code);

test('a hydrant stands where its flow test says at the flow of the test, by the power 1.85', async () => {
  const { supply } = await operateLayout(
    with_('{hydrant: {static: 80 psi, residual: 60 psi, flow: 500 gpm}}'),
  );
  expect(supply.kind).toBe('hydrant');
  const gpm = supply.flow / GPM;
  expect(supply.intake / PSI).toBeCloseTo(80 - 20 * (gpm / 500) ** 1.85, 4);
  // (60 / 20)^0.54 x 500, the exponent being 1 / 1.85.
  expect((supply.hydrant?.atFloor ?? 0) / GPM).toBeCloseTo(500 * 3 ** (1 / 1.85), 4);
});

test('the main that feeds a hydrant is a part of the line, with what it loses', async () => {
  const { lines, supply } = await operateLayout(
    with_('{hydrant: {static: 80 psi, residual: 60 psi, flow: 500 gpm}}'),
  );
  const [main] = lines;
  expect(main.name).toBe('hydrant main');
  expect(main.loss / PSI).toBeCloseTo(20 * (supply.flow / GPM / 500) ** 1.85, 4);
});

test('a hydrant that is drawn below 20 psi is warned of, one above is not', async () => {
  const thirsty = '{nozzle: {kind: fog, flow: 100 gpm, pressure: 50 psi}, name: far}';
  expect(await codes('{hydrant: {static: 60 psi, residual: 20 psi, flow: 80 gpm}}', thirsty)).toContain(
    'intake_below_floor',
  );
  expect(await codes('{hydrant: {static: 80 psi, residual: 60 psi, flow: 500 gpm}}')).not.toContain(
    'intake_below_floor',
  );
});

test('a relay is held to the floor of 20 psi, and its intake relief to 10 psi over what comes', async () => {
  const { supply, cautions } = await operateLayout(with_('{relay: {pressure: 60 psi}}'));
  expect(supply.floor?.pressure).toBeCloseTo(20 * PSI, 6);
  expect((supply.relay?.reliefAt ?? 0) / PSI).toBeCloseTo(70, 9);
  expect(cautions.map(({ code }) => code)).not.toContain('intake_below_floor');
  expect(await codes('{relay: {pressure: 15 psi}}')).toContain('intake_below_floor');
  expect(await codes('{relay: {pressure: 60 psi, relief: 70 psi}}')).not.toContain('relay_relief_high');
  expect(await codes('{relay: {pressure: 60 psi, relief: 90 psi}}')).toContain('relay_relief_high');
  expect(await codes('{relay: {pressure: 60 psi, relief: 60 psi}}')).toContain('relay_relief_low');
});

test('what a relay brings is on top of what the pump adds', async () => {
  const at = async (pressure: number) => {
    const { pumps } = await operateLayout(with_(`{relay: {pressure: ${pressure} psi}}`));
    return pumps[0].inletPressure / PSI;
  };
  expect(await at(60)).toBeCloseTo(60, 6);
  expect(await at(30)).toBeCloseTo(30, 6);
});

test('a draft is told with its lift and what a pump in good order attains there', async () => {
  const { supply } = await operateLayout(
    with_('{draft: {lift: 10 ft, suction: [{hose: suction-2.5, length: 20 ft}]}}'),
  );
  // NWCG Firefighter Math 3.5 has 33.9 ft and 22.5 ft from 14.7 psi; two thirds of 33.9 are 22.6.
  expect((supply.draft?.theoreticalLift ?? 0) / FOOT).toBeCloseTo(33.9, 1);
  expect((supply.draft?.attainableLift ?? 0) / FOOT).toBeCloseTo(22.6, 1);
  expect(supply.intake).toBeLessThan(0);
});

test('a lift over the attainable one is warned of, more of them as the site is higher', async () => {
  const draft = (lift: number) =>
    `{draft: {lift: ${lift} ft, suction: [{hose: suction-2.5, length: 30 ft}]}}`;
  expect(await codes(draft(24))).toContain('lift_over_attainable');
  expect(await codes(draft(20))).not.toContain('lift_over_attainable');
  const high = layoutOf(
    `${engine()}site: {elevation: 7000 ft}\nsupply: ${draft(20)}\n${lay([{ feet: 100 }], FAR_FOG)}`,
  );
  expect((await operateLayout(high)).cautions.map(({ code }) => code)).toContain('lift_over_attainable');
});

test('a pump without the net positive suction head that it needs is stopped', async () => {
  const needs =
    '{name: twin, points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]], npsh_required: [[0 gpm, 20 ft], [100 gpm, 20 ft]]}';
  const draft = (lift: number) =>
    layoutOf(
      `${engine('', needs)}supply: {draft: {lift: ${lift} ft, suction: [{hose: suction-2.5, length: 30 ft}]}}\n${lay([{ feet: 100 }], FAR_FOG)}`,
    );
  const short = (await operateLayout(draft(18))).cautions.find(({ code }) => code === 'suction_short');
  expect(short?.level).toBe('stop');
  expect((short?.limit?.value ?? 0) / FOOT).toBeCloseTo(20, 6);
  expect((await operateLayout(draft(5))).cautions.some(({ code }) => code === 'suction_short')).toBe(false);
});

const booster = (before: string, feet: number) =>
  layoutOf(`${engine()}lay:
  left:
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: ${feet} ft}
    ${before}
    - {pump: demo-highlift, name: booster}
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 300 ft}
    - {nozzle: {kind: fog, flow: 60 gpm, pressure: 100 psi}, name: far}
`);

test('a booster in a closed relay is held to the floor, one that draws from an open tank is not', async () => {
  const closed = await operateLayout(booster('', 2000));
  expect(closed.cautions.find(({ code }) => code === 'intake_below_floor')?.at).toBe('booster');
  expect(
    (await operateLayout(booster('', 300))).cautions.some(({ code }) => code === 'intake_below_floor'),
  ).toBe(false);
  const open = await operateLayout(booster('- {tank: 1000 gal, name: pumpkin}', 3500));
  expect(open.cautions.some(({ code }) => code === 'intake_below_floor')).toBe(false);
});

test('an open tank is told with what runs in and what is drawn: the tank parts the two pumps', async () => {
  const { portableTanks, pumps, nozzles } = await operateLayout(
    booster('- {tank: 1000 gal, name: pumpkin}', 600),
  );
  expect(portableTanks).toHaveLength(1);
  const [tank] = portableTanks;
  const own = pumps.filter(({ name }) => name !== 'booster').reduce((sum, { flow }) => sum + flow, 0);
  expect(tank.inflow / GPM).toBeCloseTo(own / GPM, 3);
  expect(tank.outflow / GPM).toBeCloseTo(nozzles[0].flow / GPM, 3);
});
