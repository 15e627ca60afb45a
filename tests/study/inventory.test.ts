import { describe, expect, it } from 'vitest';
import type { InventoryItem } from '../../src/study/answer.js';
import { checkLayout } from '../../src/study/rating.js';
import { type Document, engineOf, layoutFrom, parabolic } from '../support/layouts.js';

const PUMP = parabolic(400, 75, 250, 120, { weight: '165 lb' });
const CUSTOM = {
  flow: '60 gpm',
  pressure: '200 psi',
  tank: '500 gal',
  crew: 3,
  gross_weight_maximum: '26,000 lb',
  hose: [
    { nominal: '1-1/2 in', length: '1,000 ft' },
    { nominal: '1 in', length: '500 ft' },
  ],
};
const CARRIED = {
  tank: { capacity: '500 gal' },
  crew: 3,
  gross_weight_rating: '26,000 lb',
  hose_carried: [
    { hose: 'forestry-1.5', length: '600 ft' },
    { hose: 'attack-1.5', length: '400 ft' },
    { hose: 'forestry-1', length: '500 ft' },
  ],
};
/** kg in a pound. */
const POUND = 0.45359237;

async function check(engine: Document, custom: Document = CUSTOM) {
  return checkLayout(layoutFrom({ engine: engineOf(PUMP, undefined, engine), typing: { custom } }));
}

function item(inventory: readonly InventoryItem[], word: string): InventoryItem {
  const found = inventory.find((one) => one.item.includes(word));
  if (!found) throw new Error(`no ${word} among ${inventory.map((one) => one.item).join(', ')}`);
  return found;
}

describe('what is carried', () => {
  it('exactly equal counts as met, line by line', async () => {
    const { inventory, verdict } = await check(CARRIED);
    for (const word of ['tank', '1-1/2 in', '1 in', 'crew', 'gross weight rating'])
      expect(item(inventory, word).verdict, word).toBe('meets');
    expect(verdict).toBe('meets');
  });

  for (const [required, carried] of [
    ['500 gal', '1892.705892 L'],
    ['1892.705892 L', '500 gal'],
    ['150 gal', '567.8117676 L'],
    ['400 gal', '1.5141647136 m3'],
  ]) {
    it(`${carried} is ${required}, whatever the rounding between them`, async () => {
      const { inventory } = await check({ tank: { capacity: carried } }, { ...CUSTOM, tank: required });
      expect(item(inventory, 'tank').verdict).toBe('meets');
    });
  }

  for (const [word, less] of [
    ['tank', { tank: { capacity: '499.9 gal' } }],
    ['1-1/2 in', { hose_carried: [{ hose: 'forestry-1.5', length: '999 ft' }] }],
    ['1 in', { hose_carried: [{ hose: 'forestry-1.5', length: '1,500 ft' }] }],
    ['crew', { crew: 2 }],
    ['gross weight rating', { gross_weight_rating: '26,001 lb' }],
  ] as const) {
    it(`a little wrong in ${word} falls short, though the pump makes its rating`, async () => {
      const answer = await check({ ...CARRIED, ...less });
      expect(item(answer.inventory, word).verdict).toBe('falls_short');
      expect(answer.pumpVerdict).toBe('meets');
      expect(answer.verdict).toBe('falls_short');
    });
  }

  for (const [word, more] of [
    ['tank', { tank: { capacity: '501 gal' } }],
    ['crew', { crew: 4 }],
    ['gross weight rating', { gross_weight_rating: '25,999 lb' }],
  ] as const) {
    it(`a little more on the right side of ${word} meets`, async () => {
      const { inventory } = await check({ ...CARRIED, ...more });
      expect(item(inventory, word).verdict).toBe('meets');
    });
  }

  it('what the layout is silent on is not stated, and fails nothing', async () => {
    const { inventory, verdict } = await check({});
    for (const word of ['1-1/2 in', '1 in', 'crew', 'gross weight rating'])
      expect(item(inventory, word).verdict, word).toBe('not_stated');
    expect(verdict).toBe('meets');
  });

  it('hose is counted by its nominal size, whatever its make', async () => {
    const { inventory } = await check(CARRIED);
    const hose = item(inventory, '1-1/2 in');
    expect((hose.carried?.value as number) / 0.3048).toBeCloseTo(1000, 6);
  });

  it('hose of its own counts by its bore', async () => {
    const own = { hose: { inside_diameter: '1.5 in', coefficient: 24 }, length: '1,000 ft' };
    const { inventory } = await check({ ...CARRIED, hose_carried: [own] });
    expect(item(inventory, '1-1/2 in').verdict).toBe('meets');
    expect(item(inventory, '1 in').verdict).toBe('falls_short');
  });

  it('what no sum can decide is listed, and decides nothing', async () => {
    const not_checked = [{ item: 'foam', requirement: 'carries a foam proportioner' }];
    const { inventory, verdict } = await check(CARRIED, { ...CUSTOM, not_checked });
    expect(item(inventory, 'foam').verdict).toBe('not_checked');
    expect(verdict).toBe('meets');
  });
});

describe('a weight class that has a foot', () => {
  /** National park page on engine types, archived 7 May 2009: over 26,000 lb; 16,000 to 26,000 lb; 9,000 to 16,000 lb. */
  for (const [name, rating, verdicts] of [
    ['engine-4', '26,001 lb', ['meets']],
    ['engine-4', '26,000 lb', ['falls_short']],
    ['engine-5', '16,000 lb', ['meets', 'meets']],
    ['engine-5', '15,999 lb', ['meets', 'falls_short']],
    ['engine-5', '26,001 lb', ['falls_short', 'meets']],
    ['engine-6', '9,000 lb', ['meets', 'meets']],
    ['engine-6', '8,999 lb', ['meets', 'falls_short']],
    // Pre-2008 engine table (from memory): 6,500 to 10,000 lb.
    ['engine-7', '6,499 lb', ['meets', 'falls_short']],
    ['engine-7', undefined, ['not_stated', 'not_stated']],
  ] as const) {
    it(`${name} before 2008 at ${rating ?? 'no stated rating'}`, async () => {
      const engine = engineOf(PUMP, undefined, { ...CARRIED, gross_weight_rating: rating });
      const typing = { scheme: 'nwcg-pre-2008', class: name, pressure: '100 psi' };
      const { inventory } = await checkLayout(layoutFrom({ engine, typing }));
      const lines = inventory.filter(({ item: what }) => what.startsWith('gross weight rating'));
      expect(lines.map(({ verdict }) => verdict)).toEqual(verdicts);
    });
  }
});

describe('the loaded weight', () => {
  const weights = { chassis: '11,900 lb', body: '3,400 lb', equipment: '2,600 lb', crew: '750 lb' };
  const stated = 11_900 + 3_400 + 2_600 + 750;
  /** 8.34 lb a gallon of water (NWCG Water Handling Equipment Guide): 500 gal are 4,170 lb. */
  const water = 8.34 * 500;

  const pounds = async (engine: Document) => {
    const { inventory } = await check(engine);
    return (item(inventory, 'loaded weight').carried?.value as number) / POUND;
  };

  it('is the weights stated, the water, the pumps and the hose', async () => {
    const own = {
      hose: { inside_diameter: '1.5 in', coefficient: 24, weight: { mass: '20 lb', per: '100 ft' } },
      length: '1,000 ft',
    };
    const found = await pounds({ ...CARRIED, hose_carried: [own], weights });
    // The 8.34 is rounded: 0.07 % of the water, 3 lb.
    expect(Math.abs(found - (stated + water + 165 + 200))).toBeLessThan(4);
  });

  it('counts both pumps', async () => {
    const engine = engineOf(PUMP, PUMP, { ...CARRIED, hose_carried: [], weights });
    const { inventory } = await checkLayout(layoutFrom({ engine, typing: { custom: CUSTOM } }));
    const found = (item(inventory, 'loaded weight').carried?.value as number) / POUND;
    expect(Math.abs(found - (stated + water + 330))).toBeLessThan(4);
  });

  it('takes what a weight of that name states in place of its own sum', async () => {
    const named = { ...weights, water: '4,100 lb', pumps: '300 lb', hose: '250 lb' };
    expect(await pounds({ ...CARRIED, weights: named })).toBeCloseTo(stated + 4_100 + 300 + 250, 3);
  });

  it('a pump that is named by itself is not counted twice, and the other is counted', async () => {
    const engine = engineOf(PUMP, PUMP, {
      ...CARRIED,
      hose_carried: [],
      weights: { ...weights, 'pump a': '170 lb' },
    });
    const { inventory } = await checkLayout(layoutFrom({ engine, typing: { custom: CUSTOM } }));
    const found = (item(inventory, 'loaded weight').carried?.value as number) / POUND;
    expect(Math.abs(found - (stated + water + 170 + 165))).toBeLessThan(4);
  });

  it('an empty water tank, a pump deck and a hose bed are no water, pump or hose', async () => {
    const own = {
      hose: { inside_diameter: '1.5 in', coefficient: 24, weight: { mass: '20 lb', per: '100 ft' } },
      length: '1,000 ft',
    };
    const named = { ...weights, 'water tank, empty': '600 lb', 'pump deck': '200 lb', 'hose bed': '100 lb' };
    const found = await pounds({ ...CARRIED, hose_carried: [own], weights: named });
    expect(Math.abs(found - (stated + 900 + water + 165 + 200))).toBeLessThan(4);
  });

  it('above the rating falls short', async () => {
    const heavy = await check({
      ...CARRIED,
      hose_carried: CARRIED.hose_carried,
      weights: { all: '21,900 lb' },
    });
    expect(item(heavy.inventory, 'loaded weight').verdict).toBe('falls_short');
    expect(heavy.verdict).toBe('falls_short');
    // Three people, whom no weight names, are counted at 250 lb each; no row of the catalogue weighs the 1 in hose.
    const light = await check({ ...CARRIED, weights: { all: '20,300 lb', hose: '200 lb' } });
    expect(item(light.inventory, 'loaded weight').verdict).toBe('meets');
  });

  it('names what has no weight and judges no such sum as met', async () => {
    const bare = parabolic(400, 75, 250, 120);
    const unweighed = {
      hose: { name: 'odd hose', inside_diameter: '1.5 in', coefficient: 24 },
      length: '1 ft',
    };
    const engine = engineOf(PUMP, bare, {
      tank: { capacity: '500 gal' },
      gross_weight_rating: '26,000 lb',
      hose_carried: [unweighed],
      weights: { all: '20,000 lb' },
    });
    const { inventory, ledger, axles, verdict } = await checkLayout(
      layoutFrom({ engine, typing: { custom: { flow: '60 gpm', pressure: '200 psi' } } }),
      { ledger: 'all' },
    );
    const line = item(inventory, 'loaded weight');
    expect(line.leftOut).toEqual(['pump b', 'odd hose', 'crew, of which none is stated']);
    expect(line.verdict).toBe('not_stated');
    expect(line.note?.template).toContain('at most');
    expect(axles?.leftOut).toEqual(line.leftOut);
    expect(ledger.lines.find(({ code }) => code === 'over_gross_rating')?.leftOut).toEqual(line.leftOut);
    expect(verdict).toBe('meets');
  });

  it('over its rating falls short all the same, whatever is left out', async () => {
    const { inventory } = await check({ gross_weight_rating: '26,000 lb', weights: { all: '26,001 lb' } });
    expect(item(inventory, 'loaded weight')).toMatchObject({ verdict: 'falls_short' });
    expect(item(inventory, 'loaded weight').leftOut?.length).toBeGreaterThan(0);
  });

  it('a weight of nothing says that another one holds it', async () => {
    const all = {
      'the truck as weighed': '20,000 lb',
      pumps: '0 lb',
      hose: '0 lb',
      crew: '0 lb',
      water: '0 lb',
    };
    const { inventory } = await check({ gross_weight_rating: '26,000 lb', weights: all });
    const line = item(inventory, 'loaded weight');
    expect(line.leftOut).toBeUndefined();
    expect(line.verdict).toBe('meets');
    expect((line.carried?.value as number) / POUND).toBeCloseTo(20_000, 6);
  });

  it('without weights is not stated', async () => {
    const { inventory } = await check(CARRIED);
    expect(item(inventory, 'loaded weight').verdict).toBe('not_stated');
  });

  it('of warm water is less by its density', async () => {
    const engine = engineOf(PUMP, undefined, { ...CARRIED, weights });
    const at = async (water_temperature: string) => {
      const document = { engine, site: { water_temperature }, typing: { custom: CUSTOM } };
      const { inventory } = await checkLayout(layoutFrom(document));
      return (item(inventory, 'loaded weight').carried?.value as number) / POUND;
    };
    // 999.0 and 983.2 kg/m3 at 60 and 140 degF, steam tables (from memory).
    const difference = (await at('60 degF')) - (await at('140 degF'));
    expect(difference).toBeCloseTo((500 * 3.785411784 * (0.999 - 0.9832)) / POUND, 0);
  });
});
