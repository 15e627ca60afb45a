import { describe, expect, test } from 'vitest';
import type { CheckAnswer } from '../../src/study/answer.js';
import { servicesOf } from '../../src/study/life.js';
import { changed, checked, type Loose, read, sound } from '../caution/sound.js';

/** What a full check says of the pair's life. */
function lifeOf({ life }: CheckAnswer) {
  if (life === undefined) throw new Error('a full check tells of the life of the pair');
  return life;
}

const HOUR = 3600;

function withService(document: Loose): Loose {
  document.engine.pumps.a.hours = '212 h';
  document.engine.pumps.b.hours = '187 h';
  document.engine.pumps.a.model.service = {
    oil: { every: '50 h' },
    test: { months: 12 },
    belt: { every: '300 h', months: 24 },
  };
  document.engine.pumps.a.serviced = {
    oil: { at: '150 h' },
    test: { on: '2026-02-28' },
    belt: { on: '2024-08-31' },
  };
  return document;
}

describe('hours and services', () => {
  test('the pump with fewer hours leads until they are even', async () => {
    const { lead } = lifeOf(await checked(withService(sound())));
    expect(lead).toEqual({ name: 'pump b', behind: 25 * HOUR });
    expect(lifeOf(await checked(sound())).lead).toBeUndefined();
  });

  test('services fall due by hours since the last, or new, and by the calendar', () => {
    const { a } = read(withService(sound())).engine.pumps;
    expect(servicesOf(a)).toEqual([
      { service: 'oil', at: 200 * HOUR, left: expect.closeTo(-12 * HOUR, 3), on: undefined },
      { service: 'test', at: undefined, left: undefined, on: '2027-02-28' },
      { service: 'belt', at: 300 * HOUR, left: expect.closeTo(88 * HOUR, 3), on: '2026-08-31' },
    ]);
  });

  test('a month that lacks the day takes its last', () => {
    const document = withService(sound());
    document.engine.pumps.a.serviced.test.on = '2024-02-29';
    expect(servicesOf(read(document).engine.pumps.a)[1].on).toBe('2025-02-28');
  });

  test('parts in common are those that both name; pumps of one model share all', async () => {
    const parts = await checked(
      changed((d) => {
        d.engine.pumps.a.model.parts = ['seal kit', 'impeller 6', 'belt'];
        d.engine.pumps.b.model.parts = ['belt', 'seal kit', 'impeller 5'];
      }),
    );
    expect(parts.life).toMatchObject({ sameModel: false, partsInCommon: ['seal kit', 'belt'] });
    const alike = await checked(
      changed((d) => {
        d.engine.pumps.a.model = 'demo-highlift';
        d.engine.pumps.b.model = 'demo-highlift';
      }),
    );
    expect(lifeOf(alike).sameModel).toBe(true);
    // A mapping written once and named twice, or written twice alike.
    expect(lifeOf(await checked(sound())).sameModel).toBe(true);
  });
});

describe('wear', () => {
  const worn = (a: number, b: number) =>
    changed((d) => {
      d.engine.pumps.a.wear = `${a * 100} %`;
      d.engine.pumps.b.wear = `${b * 100} %`;
    });

  test('the wear that the rating bears is where the verdict turns, for both and for each alone', async () => {
    const life = lifeOf(await checked(worn(0.02, 0)));
    const both = life.bothBear ?? Number.NaN;
    expect((await checked(worn(both, both))).pumpVerdict).toBe('meets');
    expect((await checked(worn(both + 0.002, both + 0.002))).pumpVerdict).toBe('falls_short');
    const a = life.pumps[0].bears ?? Number.NaN;
    expect(a).toBeGreaterThan(both);
    expect((await checked(worn(a, 0))).pumpVerdict).toBe('meets');
    expect((await checked(worn(a + 0.002, 0))).pumpVerdict).toBe('falls_short');
  });

  test('what wear costs is the margin of unworn pumps less the margin as they are', async () => {
    const answer = await checked(worn(0.05, 0.05));
    const fresh = await checked(sound());
    expect(lifeOf(answer).unworn?.margin).toBeCloseTo(fresh.atRequiredFlow?.margin ?? 0, 0);
    expect(lifeOf(answer).unworn?.cost).toBeCloseTo(
      (fresh.atRequiredFlow?.margin ?? 0) - (answer.atRequiredFlow?.margin ?? 0),
      0,
    );
  });

  test('an engine that falls short has no wear left to bear', async () => {
    const { life } = await checked(
      changed((d) => {
        d.typing.custom.pressure = '390 psi';
      }),
    );
    expect(life).toMatchObject({ short: true, bothBear: undefined });
  });
});
