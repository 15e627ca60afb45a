import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { FOOT, GALLON_PER_MINUTE, HORSEPOWER } from '../../src/physics/customary.js';
import { headAt } from '../../src/physics/pump-curve/curve.js';
import { MonotoneCurve } from '../../src/physics/pump-curve/monotone.js';
import type { CheckAnswer, Sweep } from '../../src/study/answer.js';
import { checkLayout } from '../../src/study/rating.js';

/** An engine of our own invention with nothing between pump and outlet, so that its pumps can be told by hand. */
const BARE = `
site: {elevation: 6000 ft, air_temperature: 59 degF}
engine:
  tank: {capacity: 500 gal, outlet_height: 0 ft}
  pumps:
    a:
      model: &pump
        rated_speed: 6500 rpm
        points: [[0 gpm, 415 psi], [30 gpm, 385 psi], [60 gpm, 318 psi], [85 gpm, 228 psi], [105 gpm, 110 psi]]
        power: {rated: 22 hp, aspiration: natural, fuel: gasoline}
        efficiency: [[30 gpm, 38 %], [60 gpm, 55 %], [85 gpm, 56 %]]
    b: {model: *pump}
staging: a
typing: {custom: {flow: 70 gpm, pressure: 200 psi}}
`;

const layoutOf = (text: string) => readLayoutText(text, 'layout.yaml').layout;
const check = (text: string, across: Sweep[] = []) => checkLayout(layoutOf(text), { across });

test('the text is YAML as a reader would write it', () => {
  expect(parse(BARE).staging).toBe('a');
});

/** The pump's curve in gpm and psi. */
const CURVE = new MonotoneCurve(
  [
    [0, 415],
    [30, 385],
    [60, 318],
    [85, 228],
    [105, 110],
  ].map(([q, psi]) => ({ flow: q, head: psi })),
);

/** Head by the monotone curve is the program's; what is independent here is the balance of power. */
function balancedByHalving(answer: CheckAnswer, atFull: CheckAnswer, available: number): number {
  const [pump] = answer.pumps;
  let low = 0;
  let high = 1;
  // gpm psi / 1714 over an efficiency that runs straight between its rows, with the pressure of the program's own curve.
  const demand = (q: number) => {
    const at = Math.min(q, 85);
    const efficiency = at < 60 ? 0.38 + (0.17 * (at - 30)) / 30 : 0.55 + (0.01 * (at - 60)) / 25;
    return (at * headAt(CURVE, at)) / 1714.286 / efficiency;
  };
  const flow = pump.flow / GALLON_PER_MINUTE;
  for (let i = 0; i < 100; i++) {
    const s = (low + high) / 2;
    if (s ** 3 * demand(flow / s) > available) high = s;
    else low = s;
  }
  expect(atFull.pumps[0].limitedBy).toBe('governor');
  return low;
}

describe('power and speed', () => {
  test('a pump at 6,000 ft runs at the speed at which its power is what the 3 % rule leaves', async () => {
    const answer = await check(BARE);
    const atSea = await check(BARE.replace('6000 ft', '0 ft'));
    const [pump] = answer.pumps;
    expect(pump.limitedBy).toBe('power');
    expect((pump.powerAvailable ?? 0) / HORSEPOWER).toBeCloseTo(22 * 0.835, 6);
    expect(pump.power).toBeCloseTo(pump.powerAvailable ?? 0, 3);
    // 0.1 % for the density of water, which the rows by hand leave out.
    expect(pump.ofRatedSpeed).toBeCloseTo(balancedByHalving(answer, atSea, 22 * 0.835), 3);
    expect(pump.speed).toBeCloseTo(6500 * pump.ofRatedSpeed, 6);
  });

  test('the limit is the governor where power is left, and the speed then the rated one', async () => {
    const [pump] = (await check(BARE.replace('6000 ft', '0 ft'))).pumps;
    expect(pump.limitedBy).toBe('governor');
    expect(pump.ofRatedSpeed).toBe(1);
    expect(pump.power).toBeLessThan(pump.powerAvailable ?? 0);
  });

  test('a turbocharged engine loses nothing to altitude by the agricultural rule', async () => {
    const answer = await check(BARE.replace('aspiration: natural', 'aspiration: turbocharged'));
    expect(answer.pumps[0].limitedBy).toBe('governor');
    expect(answer.pumps[0].powerAvailable).toBe(answer.pumps[0].powerRated);
  });

  test('the rule is chosen by name: SAE J1349 leaves 0.835 of it at 77 degF and 4,800 ft or so, none leaves all', async () => {
    const sae = await check(
      BARE.replace('air_temperature: 59 degF', 'air_temperature: 77 degF, derating: sae_j1349'),
    );
    expect((sae.pumps[0].powerAvailable ?? 0) / HORSEPOWER).toBeCloseTo(22 * 0.794, 1);
    const none = await check(BARE.replace('air_temperature: 59 degF', 'derating: none'));
    expect(none.pumps[0].powerAvailable).toBe(none.pumps[0].powerRated);
  });

  test('flat torque leaves less than constant power', async () => {
    const constant = await check(BARE);
    const flat = await check(BARE.replace('rated: 22 hp', 'rated: 22 hp, lugging: flat_torque'));
    expect(flat.pumps[0].ofRatedSpeed).toBeLessThan(constant.pumps[0].ofRatedSpeed);
    expect(flat.atRequiredFlow?.pressure).toBeLessThan(constant.atRequiredFlow?.pressure ?? 0);
  });
});

describe('going from place to place', () => {
  const places = Array.from({ length: 21 }, (_, i) => i * 1000 * FOOT);

  test('higher is never better, and the highest place is where the verdict turns', async () => {
    const answer = await check(BARE.replace('6000 ft', '0 ft'), [{ of: 'elevation', values: places }]);
    const rows = answer.across[0].rows;
    for (let i = 1; i < rows.length; i++) {
      expect(rows[i].pressure ?? -1).toBeLessThanOrEqual((rows[i - 1].pressure ?? -1) + 1);
    }
    const top = answer.highestPlace?.upTo ?? Number.NaN;
    expect(answer.highestPlace?.stands).toBe('up_to');
    const around = await check(BARE, [{ of: 'elevation', values: [top, top + 60 * FOOT] }]);
    expect(around.across[0].rows.map(({ verdict }) => verdict)).toEqual(['meets', 'falls_short']);
  });

  test("the row of the layout's own place says what the check itself says", async () => {
    const answer = await check(BARE, [{ of: 'elevation', values: [6000 * FOOT] }]);
    const [row] = answer.across[0].rows;
    expect(row.pressure).toBeCloseTo(answer.atRequiredFlow?.pressure ?? 0, 0);
    expect(row.verdict).toBe(answer.pumpVerdict);
  });

  test('crossed with a day and wear, each row is that of a layout that states them', async () => {
    const given = [
      { of: 'air_temperature' as const, value: 310 },
      { of: 'wear' as const, value: 0.05 },
    ];
    const { across } = await check(BARE, [{ of: 'elevation', values: [0, 6000 * FOOT], given }]);
    expect(across[0].given).toEqual(given);
    const layout = layoutOf(BARE);
    const { a, b } = layout.engine.pumps;
    const stated = await checkLayout({
      ...layout,
      site: { ...layout.site, air_temperature: 310 },
      engine: {
        ...layout.engine,
        pumps: { a: { ...a, wear: 0.05 }, ...(b && { b: { ...b, wear: 0.05 } }) },
      },
    });
    const [, row] = across[0].rows;
    expect(row.pressure).toBeCloseTo(stated.atRequiredFlow?.pressure ?? 0, 0);
    expect(row.verdict).toBe(stated.pumpVerdict);
    const plain = (await check(BARE, [{ of: 'elevation', values: [6000 * FOOT] }])).across[0];
    expect(plain.given).toEqual([]);
    expect(row.pressure).toBeLessThan(plain.rows[0].pressure ?? 0);
  });

  test('wear is never better, nor is hot air, nor a tank drawn down', async () => {
    const answer = await check(BARE, [
      { of: 'wear', values: [0, 0.02, 0.05, 0.1, 0.2] },
      { of: 'air_temperature', values: [280, 300, 310, 320] },
      { of: 'tank_level', values: [1, 0.6, 0.2, 0] },
    ]);
    for (const { rows } of answer.across) {
      for (let i = 1; i < rows.length; i++) {
        expect(rows[i].pressure ?? 0).toBeLessThanOrEqual((rows[i - 1].pressure ?? 0) + 1e-3);
      }
    }
  });
});

describe('a pump without power data', () => {
  /** An orifice alone takes pressure by the square of flow, as the bracket's two assumptions have it. */
  const unknown = (elevation: string) =>
    BARE.replace(/\n {8}power:.*\n.*efficiency:.*\n/, '\n')
      .replace('6000 ft', elevation)
      .replace('[105 gpm, 110 psi]]', '[105 gpm, 110 psi]]\n        tested_at: {elevation: 0 ft}');

  test('is bracketed: nothing lost, constant power, flat torque, each at the speed of its root', async () => {
    const answer = await check(unknown('5500 ft'));
    expect(answer.pumps[0].limitedBy).toBe('not_known');
    const { powerBracket } = answer;
    expect(powerBracket?.pumps).toEqual([
      { name: 'pump a', ratio: expect.closeTo(0.85, 9), aspiration: 'natural' },
    ]);
    const [constant, flat] = powerBracket?.cases ?? [];
    expect(flat.pressure).toBeLessThan(constant.pressure ?? 0);
    expect(constant.pressure).toBeLessThan(answer.atRequiredFlow?.pressure ?? 0);
  });

  /** Height to which 200 psi at 70 gpm stands, by halving on the pump's curve: P = s^2 f(Q/s), power left s^n, 3 % in 1,000 ft. */
  function heightByHalving(n: number): number {
    let low = 0.5;
    let high = 1;
    for (let i = 0; i < 60; i++) {
      const s = (low + high) / 2;
      if (s * s * headAt(CURVE, 70 / s) > 200) high = s;
      else low = s;
    }
    return 500 + (1 - low ** n) / 3e-5;
  }

  test('is bracketed in how high it stands too: the least of it is the answer, and no height where power is to spare', async () => {
    const { highestPlace } = await check(unknown('0 ft'));
    const cases = highestPlace?.cases ?? [];
    expect(cases.map(({ engine }) => engine)).toEqual(['power_to_spare', 'constant_power', 'flat_torque']);
    const [spare, constant, flat] = cases;
    expect(spare).toEqual({ engine: 'power_to_spare', stands: 'everywhere', upTo: 6000 });
    // Places are found to 50 ft.
    expect(Math.abs((constant.upTo ?? 0) / FOOT - heightByHalving(3))).toBeLessThan(60);
    expect(Math.abs((flat.upTo ?? 0) / FOOT - heightByHalving(2))).toBeLessThan(60);
    expect(highestPlace).toMatchObject({ stands: 'up_to', upTo: flat.upTo });
  });

  test('stands lower than where it is laid out when the bracket falls short there', async () => {
    const answer = await check(unknown('6000 ft').replace('200 psi', '240 psi'));
    expect(answer.pumpVerdict).toBe('meets');
    expect(answer.powerBracket?.cases.map(({ verdict }) => verdict)).toContain('falls_short');
    expect(answer.highestPlace?.stands).toBe('up_to');
    expect(answer.highestPlace?.upTo).toBeLessThan(6000 * FOOT);
  });

  test('is not bracketed in how high it stands by a rule that takes nothing, nor where its power is told', async () => {
    const none = await check(unknown('0 ft').replace('air_temperature', 'derating: none, air_temperature'));
    expect(none.highestPlace).toEqual({ stands: 'everywhere', upTo: 6000 });
    expect((await check(BARE)).highestPlace?.cases).toBeUndefined();
  });

  test('is bracketed on a hot day too, where the spark engine at its limit has 97.5 % of its power left', async () => {
    // On the curve at 70 gpm: 287 psi; with 0.975 of the power 280 at constant power, 277 at flat torque.
    const atSpeed = (n: number) => 0.975 ** (2 / n) * headAt(CURVE, 70 / 0.975 ** (1 / n));
    expect([atSpeed(3), atSpeed(2)].map(Math.round)).toEqual([280, 277]);
    const casesOf = async (psi: number) => {
      const { hotDay } = await check(unknown('0 ft').replace('200 psi', `${psi} psi`));
      return [
        hotDay?.verdict,
        ...(hotDay?.cases?.map(({ engine, verdict }) => `${engine} ${verdict}`) ?? []),
      ];
    };
    expect(await casesOf(284)).toEqual([
      'falls_short',
      'power_to_spare meets',
      'constant_power falls_short',
      'flat_torque falls_short',
    ]);
    expect(await casesOf(279)).toEqual([
      'falls_short',
      'power_to_spare meets',
      'constant_power meets',
      'flat_torque falls_short',
    ]);
    expect((await casesOf(275))[0]).toBe('meets');
    const told = await check(BARE.replace('6000 ft', '0 ft'));
    expect(told.hotDay?.cases).toBeUndefined();
  });

  test('loses nothing where it was tested, and is not bracketed there', async () => {
    expect((await check(unknown('0 ft'))).powerBracket).toBeUndefined();
  });

  test('0.85 of the power turns 250 psi at 150 gpm into 213 to 224 psi at 138 to 142 gpm, by hand', async () => {
    const { carriedSpeed } = await import('../../src/physics/pump-curve/held-speed.js');
    const constant = carriedSpeed(0.85, 'constant_power');
    const flat = carriedSpeed(0.85, 'flat_torque');
    expect(Math.round(250 * flat ** 2)).toBe(213);
    expect(Math.round(250 * constant ** 2)).toBe(224);
    expect(Math.round(150 * flat)).toBe(138);
    expect(Math.round(150 * constant)).toBe(142);
    // Read backwards: what the gauge has to show where the pump is tested, for 250 psi to be left up there.
    expect(Math.round(250 / constant ** 2)).toBe(279);
    expect(Math.round(250 / flat ** 2)).toBe(294);
    expect(Math.round(250 / carriedSpeed(0.79, 'constant_power') ** 2)).toBe(293);
    expect(Math.round(250 / carriedSpeed(0.79, 'flat_torque') ** 2)).toBe(316);
  });
});
