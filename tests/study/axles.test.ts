import { describe, expect, test } from 'vitest';
import { figuresIn } from '../../src/report/figures.js';
import { axlesSection } from '../../src/report/sections/axles.js';
import { changed, checked, sound } from '../caution/sound.js';

const LB = 0.45359237;

describe('weight and axles', () => {
  test('loads by moments about the front axle, tank full, half and empty, crew aboard and not', async () => {
    const { axles } = await checked(sound());
    const water = 500 * 8.337;
    for (const one of axles?.cases ?? []) {
      const crew = one.crew ? 750 : 0;
      const parts = [
        [12_000, 6],
        [crew, 2],
        [one.tank * water, 10],
        [400, 14],
      ];
      const gross = parts.reduce((sum, [weight]) => sum + weight, 0);
      const rear = parts.reduce((sum, [weight, arm]) => sum + weight * arm, 0) / 16;
      expect(one.gross / LB).toBeCloseTo(gross, 0);
      expect((one.rear ?? 0) / LB).toBeCloseTo(rear, 0);
      expect((one.front ?? 0) / LB).toBeCloseTo(gross - rear, 0);
      expect(one.leftOfMiddle).toBeCloseTo(0, 9);
    }
    expect(axles?.cases.map(({ tank, crew }) => [tank, crew])).toEqual([
      [1, true],
      [0.5, true],
      [0, true],
      [1, false],
      [0.5, false],
      [0, false],
    ]);
  });

  test('water weighs 8.34 lb a gallon, 500 gal 4,170 lb (general pump texts)', async () => {
    const { axles } = await checked(sound());
    const [full, , empty] = axles?.cases ?? [];
    expect((full.gross - empty.gross) / LB / 500).toBeCloseTo(8.34, 2);
  });

  test('side balance is where the weight is, left of the middle', async () => {
    const { axles } = await checked(
      changed((d) => {
        d.engine.weights.chassis.left_of_middle = '0 in';
        d.engine.pumps.a.left_of_middle = '30 in';
      }),
    );
    const [full] = axles?.cases ?? [];
    expect((full.leftOfMiddle ?? 0) / 0.0254).toBeCloseTo((200 * 30) / (full.gross / LB), 3);
  });

  test('a crew that no weight names counts 250 lb a seat (NFPA in-service weight items)', async () => {
    const { axles } = await checked(
      changed((d) => {
        d.engine.weights.crew = undefined;
      }),
    );
    const aboard = axles?.cases[0].gross ?? 0;
    expect((aboard - (axles?.cases[3].gross ?? 0)) / LB).toBeCloseTo(3 * 250, 6);
    expect(axles?.unplaced).toEqual(['crew']);
    expect(axles?.cases[0].rear).toBeUndefined();
  });

  const rulesWith = async (weights: Record<string, string>) => {
    const { axles } = await checked(
      changed((d) => {
        d.engine.weights = weights;
      }),
    );
    const [full, , , without] = axles?.cases ?? [];
    return {
      crew: (full.gross - without.gross) / LB,
      rule: axles?.rules.map(({ template }) => template).find((text) => text.startsWith('Crew')),
    };
  };

  test('the rule for counting people is named as it was followed, whatever else has crew in its name', async () => {
    const cab = await rulesWith({ chassis: '12000 lb', 'crew cab': '400 lb' });
    expect(cab.crew).toBeCloseTo(3 * 250, 6);
    expect(cab.rule).toBe('Crew at {seat} a seat');
    const stated = await rulesWith({ chassis: '12000 lb', Crew: '700 lb' });
    expect(stated.crew).toBeCloseTo(700, 6);
    expect(stated.rule).toBe('Crew as the layout states its weight');
  });

  test('without a stated weight nothing is known', async () => {
    const answer = await checked(
      changed((d) => {
        d.engine.weights = undefined;
      }),
    );
    expect(answer.axles).toBeUndefined();
  });

  test('what has no place of its own in a layout is said to get one by a weight of its name', async () => {
    const answer = await checked(
      changed((d) => {
        d.engine.weights.crew = undefined;
        d.engine.weights.chest = '40 lb';
      }),
    );
    const [, , ...texts] = axlesSection(answer.axles, figuresIn('us'));
    expect(JSON.stringify(texts)).toContain('cannot be told without the place of chest and crew');
    expect(JSON.stringify(texts)).toContain(
      'Give crew a place by a weight of that name with behind_front_axle.',
    );
    expect(JSON.stringify(texts)).not.toContain('Give chest');
  });

  test('the pair is weighed against one larger pump in what the file has figures for', async () => {
    const { pairCost } = await checked(
      changed((d) => {
        d.engine.one_larger_pump = { name: 'the big one', weight: '450 lb', burn: '3.5 gal/h', price: 9000 };
        d.engine.pumps.a.model.price = 5000;
      }),
    );
    expect(pairCost?.against).toBe('the big one');
    expect(pairCost?.rows.map(({ of }) => of)).toEqual(['weight', 'fuel']);
    expect((pairCost?.rows[0].pair ?? 0) / LB).toBeCloseTo(400, 6);
  });
});
