import { describe, expect, test } from 'vitest';
import { poseKey } from '../../src/drill/pose.js';
import { loadRuleSet } from '../../src/drill/rules/load.js';
import { SLIPS } from '../../src/drill/slips.js';
import { onePumpOut } from '../../src/drill/topics/one-pump-out.js';
import { progressiveLay } from '../../src/drill/topics/progressive-lay.js';
import { siamese } from '../../src/drill/topics/siamese.js';
import { singleLine } from '../../src/drill/topics/single-line.js';
import { lineUphill } from '../../src/drill/topics/sloping-line.js';
import { tenderShuttle } from '../../src/drill/topics/tender-shuttle.js';
import { weakPump } from '../../src/drill/topics/weak-pump.js';
import { wyeEqual } from '../../src/drill/topics/wye.js';

const engineering = await loadRuleSet('engineering');
const wildland = await loadRuleSet('wildland');

const by = (slips: readonly { slip: string; answer: number }[], slip: string) =>
  slips.filter((each) => each.slip === slip).map(({ answer }) => answer);

describe('a slip is the sum redone with it', () => {
  test('progressive lay: 1,000 ft of 1-1/2 in, five laterals of 20 gpm: 106 psi in the trunk, 240 with all flow to the end', () => {
    const lay = {
      trunk: '1.5',
      spacing: 200,
      lateral: '1',
      lateralLength: 100,
      laterals: 5,
      flow: 20,
      height: 0,
    } as const;
    const { value, slips } = poseKey(progressiveLay, lay, engineering);
    expect([1, 2, 3, 4, 5].map((i) => Math.round(value(`T${i}`) * 10) / 10)).toEqual([
      48, 30.7, 17.3, 7.7, 1.9,
    ]);
    expect(Math.round(value('FL1'))).toBe(106);
    const [whole] = by(slips, 'all-flow-to-end');
    expect(whole - value('PDP')).toBeCloseTo(240 - value('FL1'), 9);
  });

  test('tender shuttle: 1,200 gal, 5 mi each way, 6 min of handling: 44 gpm, 71 where the trip is taken one way', () => {
    const facts = { tank: 1200, fill: 4, dump: 2, distance: 5, tenders: 1 };
    const { answer, slips } = poseKey(tenderShuttle, facts, wildland);
    expect(Math.round(answer)).toBe(44);
    expect(Math.round(by(slips, 'one-way-for-round-trip')[0])).toBe(71);
  });

  test('elevation: 0.5 psi a foot up; reversed, dropped, the length taken for the height, upside down', () => {
    const line = { hose: '1.5', length: 400, flow: 50, height: 60 } as const;
    const { answer, slips } = poseKey(lineUphill, line, wildland);
    expect(answer).toBeCloseTo(100 + 24 + 30, 9);
    expect(by(slips, 'elevation-reversed')).toEqual([expect.closeTo(94, 9)]);
    expect(by(slips, 'elevation-dropped')).toEqual([expect.closeTo(124, 9)]);
    expect(by(slips, 'slope-as-height')).toEqual([expect.closeTo(324, 9)]);
    expect(by(slips, 'feet-and-psi-inverted')).toEqual([expect.closeTo(244, 9)]);
  });

  test('friction: flow not squared, length over 10, another size’s coefficient', () => {
    const { answer, slips } = poseKey(singleLine, { hose: '1.5' as const, length: 300, flow: 50 }, wildland);
    expect(answer).toBeCloseTo(118, 9);
    expect(by(slips, 'flow-not-squared')).toEqual([expect.closeTo(136, 9)]);
    expect(by(slips, 'length-not-per-hundred')).toEqual([expect.closeTo(1900, 9)]);
    expect(by(slips, 'flow-not-per-hundred')).toEqual([expect.closeTo(180_100, 6)]);
    expect(by(slips, 'point-misplaced')).toEqual([expect.closeTo(280, 9)]);
    // 1 in has 150, 1-3/4 in 15.5.
    expect(by(slips, 'wrong-coefficient')).toEqual([expect.closeTo(212.5, 9), expect.closeTo(111.625, 9)]);
  });

  test('wye and siamese: one leg in the feeder, legs added, full flow in each line', () => {
    const wye = { feeder: '2.5', feederLength: 200, leg: '1.5', legLength: 100, flow: 100, legs: 2 } as const;
    const legs = poseKey(wyeEqual, wye, engineering);
    expect(legs.answer).toBeCloseTo(100 + 16 + 24, 9);
    expect(by(legs.slips, 'one-leg-in-feeder')).toEqual([expect.closeTo(100 + 4 + 24, 9)]);
    expect(by(legs.slips, 'legs-added')).toEqual([expect.closeTo(100 + 16 + 48, 9)]);
    const joined = poseKey(siamese, { hose: '2.5', length: 300, flow: 400 }, engineering);
    expect(joined.answer).toBeCloseTo(80 + 24, 9);
    expect(by(joined.slips, 'full-flow-each-line')).toEqual([expect.closeTo(80 + 96, 9)]);
  });

  test('a pump that is shut out: counting it all the same is the slip', () => {
    const [a, b] = [
      { shutoff: 400, fall: 100 },
      { shutoff: 320, fall: 100 },
    ];
    const facts = { pumps: [a, b], load: { held: 336 }, ask: 'total' } as const;
    const { answer, slips, draft } = poseKey(weakPump, facts, wildland);
    expect(answer).toBeCloseTo(80, 9);
    expect(by(slips, 'shut-out-overlooked')[0]).toBeCloseTo(160, 9);
    const check = draft.crossCheck?.((symbol) => (symbol === 'Q' ? answer : Number.NaN));
    expect(check?.solver.value).toBeCloseTo(80, 3);
  });

  test('one pump out of two in parallel drives more than half of what both did through an orifice', () => {
    // Each 75 gpm at 250 psi, shutoff 400: both together 150 gpm at 250 psi through the orifice.
    const pump = { shutoff: 400, fall: 150 / 0.75 ** 2 };
    const facts = { pump, staging: 'parallel', orifice: 250 / 1.5 ** 2, ask: 'flow' } as const;
    const { answer } = poseKey(onePumpOut, facts, wildland);
    expect(Math.round(answer)).toBe(103);
  });
});

test('every slip says in a sentence what went wrong', () => {
  for (const [slip, why] of Object.entries(SLIPS)) {
    expect(slip).toMatch(/^[a-z-]+$/);
    expect(why).toMatch(/^[A-Z].{20,}\.$/);
  }
});
