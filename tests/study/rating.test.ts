import { describe, expect, it } from 'vitest';
import type { CheckAnswer, StagingAnswer } from '../../src/study/answer.js';
import { checkLayout, NoTyping } from '../../src/study/rating.js';
import {
  coefficientLoss,
  columnPressure,
  type Document,
  engineOf,
  FREE_CHECK,
  layoutFrom,
  parabola,
  parabolic,
  velocityPressure,
} from '../support/layouts.js';
import { GPM, PSI } from '../support/units.js';

const A = parabolic(400, 75, 250);
const costs = (psi: number): Document => ({ appliance: { loss: `${psi} psi` } });

/** gpm at which the parabola of pump A makes a pressure, psi. */
const flowOfA = (psi: number) => 75 * Math.sqrt((400 - psi) / 150);

async function check(flow: number, pressure: number, document: Document = {}): Promise<CheckAnswer> {
  const custom = { flow: `${flow} gpm`, pressure: `${pressure} psi` };
  return checkLayout(layoutFrom({ engine: engineOf(A), typing: { custom }, ...document }));
}

function staging(answer: CheckAnswer, name: StagingAnswer['staging']): StagingAnswer {
  const found = answer.stagings.find((one) => one.staging === name);
  if (!found) throw new Error(`${name} was not judged`);
  return found;
}

/** gpm at which the curves of a staging end, and the pump that ends it. */
function endOf({ limit }: StagingAnswer): { pump: unknown; gpm: number } {
  const { pump, flow } = limit?.values ?? {};
  if (typeof flow !== 'object') throw new Error('no limit is named');
  return { pump, gpm: flow.value / GPM };
}

describe('one pump without plumbing', () => {
  it('makes what its curve says at the required flow, and the flow of the curve at the required pressure', async () => {
    const answer = await check(60, 200);
    expect(answer.verdict).toBe('meets');
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304, 3);
    expect((answer.atRequiredFlow?.margin as number) / PSI).toBeCloseTo(104, 3);
    expect((answer.atRequiredPressure?.flow as number) / GPM).toBeCloseTo(flowOfA(200), 2);
    expect((answer.atRequiredPressure?.margin as number) / GPM).toBeCloseTo(flowOfA(200) - 60, 2);
    expect((answer.stagings[0].shutoff as number) / PSI).toBeCloseTo(400, 3);
  });

  it('falls short by what is missing', async () => {
    const answer = await check(100, 200);
    expect(answer.verdict).toBe('falls_short');
    const pressure = parabola(400, 75, 250, 100);
    expect((answer.atRequiredFlow?.margin as number) / PSI).toBeCloseTo(pressure - 200, 3);
    expect((answer.atRequiredPressure?.margin as number) / GPM).toBeCloseTo(flowOfA(200) - 100, 2);
  });

  for (const [asked, verdict] of [
    [303.99, 'meets'],
    [304.01, 'falls_short'],
  ] as const) {
    it(`${verdict} where 304 psi are made and ${asked} asked`, async () => {
      expect((await check(60, asked)).verdict).toBe(verdict);
    });
  }

  it('that cannot reach the pressure at any flow has no flow there', async () => {
    const answer = await check(60, 450);
    expect(answer.verdict).toBe('falls_short');
    expect(answer.atRequiredPressure).toBeUndefined();
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304, 3);
  });

  it('is judged alone, and only so', async () => {
    expect((await check(60, 200)).stagings.map((one) => one.staging)).toEqual(['a']);
  });

  it('is not judged where no typing is named', async () => {
    await expect(checkLayout(layoutFrom({ engine: engineOf(A) }))).rejects.toThrow(NoTyping);
  });
});

describe('a pump whose curve ends', () => {
  const short = engineOf(parabolic(400, 75, 250, 100));

  it('before the required flow: no pressure is given there, and the limit is named', async () => {
    const answer = await check(150, 200, { engine: short });
    expect(answer.verdict).toBe('falls_short');
    expect(answer.atRequiredFlow).toBeUndefined();
    const [alone] = answer.stagings;
    expect(alone.reachable).toBe(false);
    expect(endOf(alone)).toEqual({ pump: 'pump a', gpm: expect.closeTo(100, 2) });
    expect((answer.atRequiredPressure?.flow as number) / GPM).toBeCloseTo(flowOfA(200), 2);
  });

  it('above the required pressure: the flow there goes no further than the curve, and the limit is named', async () => {
    const answer = await check(90, 100, { engine: short });
    expect(answer.verdict).toBe('meets');
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(parabola(400, 75, 250, 90), 3);
    expect((answer.atRequiredPressure?.flow as number) / GPM).toBeCloseTo(100, 2);
    expect(endOf(answer.stagings[0]).pump).toBe('pump a');
  });

  it('at its throttle ends earlier', async () => {
    const answer = await check(150, 50, { engine: short, throttle: '70 %' });
    expect(endOf(answer.stagings[0]).gpm).toBeCloseTo(70, 2);
  });

  it('of two unlike ones in parallel the one that ends first is named', async () => {
    const engine = engineOf(A, parabolic(400, 75, 250, 80), { plumbing: { discharge: [FREE_CHECK] } });
    const both = staging(await check(200, 100, { engine }), 'parallel');
    expect(endOf(both)).toEqual({ pump: 'pump b', gpm: expect.closeTo(160, 2) });
  });
});

describe('two pumps without plumbing', () => {
  const engine = engineOf(A, A, { plumbing: { discharge: [FREE_CHECK] } });

  it('every staging stands beside the others', async () => {
    const answer = await check(90, 200, { engine });
    expect(answer.stagings.map((one) => one.staging)).toEqual([
      'parallel',
      'series',
      'series_reversed',
      'a',
      'b',
    ]);
    const psi = (name: StagingAnswer['staging']) =>
      (staging(answer, name).atRequiredFlow?.pressure as number) / PSI;
    expect(psi('parallel')).toBeCloseTo(parabola(400, 75, 250, 45), 3);
    expect(psi('series')).toBeCloseTo(2 * parabola(400, 75, 250, 90), 3);
    expect(psi('series_reversed')).toBeCloseTo(2 * parabola(400, 75, 250, 90), 3);
    expect(psi('a')).toBeCloseTo(parabola(400, 75, 250, 90), 3);
    expect(psi('b')).toBeCloseTo(parabola(400, 75, 250, 90), 3);
    expect((staging(answer, 'series').shutoff as number) / PSI).toBeCloseTo(800, 3);
  });

  it('in parallel pass twice the flow of one at the same pressure', async () => {
    const answer = await check(150, 200, { engine });
    expect((answer.atRequiredPressure?.flow as number) / GPM).toBeCloseTo(2 * flowOfA(200), 2);
  });

  it("the layout's own staging decides", async () => {
    const parallel = await check(60, 500, { engine });
    const series = await check(60, 500, { engine, staging: 'series' });
    expect(parallel.verdict).toBe('falls_short');
    expect(series.verdict).toBe('meets');
    expect(staging(parallel, 'series').verdict).toBe('meets');
  });

  it('share the flow evenly in parallel, and both move all of it in series', async () => {
    const answer = await check(90, 200, { engine });
    expect(staging(answer, 'parallel').shares.map(({ share }) => share)).toEqual([
      expect.closeTo(0.5, 6),
      expect.closeTo(0.5, 6),
    ]);
    expect(staging(answer, 'series').shares.map(({ share }) => share)).toEqual([
      expect.closeTo(1, 6),
      expect.closeTo(1, 6),
    ]);
  });

  it('of which one has its discharge shut: the others are judged all the same', async () => {
    const valve = { valve: { k: 0.2, inside_diameter: '2 in' }, open: '0 %' };
    const shut = engineOf(A, A, { plumbing: { discharge: { a: [FREE_CHECK], b: [valve, FREE_CHECK] } } });
    const answer = await check(60, 200, { engine: shut });
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304, 3);
    const b = staging(answer, 'b');
    expect(b.verdict).toBe('falls_short');
    expect(b.reachable).toBe(false);
    expect(b.limit).toBeDefined();
    expect(staging(answer, 'a').verdict).toBe('meets');
  });
});

describe('rating points', () => {
  const points = [
    { name: 'far', flow: '100 gpm', pressure: '100 psi' },
    { name: 'middle', flow: '70 gpm', pressure: '270 psi' },
    { name: 'near', flow: '30 gpm', pressure: '350 psi' },
  ];

  it('the one with the least margin, as a part of its pressure, governs', async () => {
    const answer = await checkLayout(layoutFrom({ engine: engineOf(A), typing: { custom: { points } } }));
    // Made: 133.3, 269.3 and 376 psi.
    expect(answer.verdict).toBe('falls_short');
    expect(answer.requirement.flow / GPM).toBeCloseTo(70, 6);
    expect((answer.atRequiredFlow?.margin as number) / PSI).toBeCloseTo(parabola(400, 75, 250, 70) - 270, 3);
    expect(answer.requirement.points.map(({ name }) => name)).toEqual(['far', 'middle', 'near']);
  });

  it('one that no curve reaches governs before any that is met', async () => {
    const far = [...points.slice(0, 1), { name: 'beyond', flow: '140 gpm', pressure: '10 psi' }];
    const answer = await checkLayout(
      layoutFrom({ engine: engineOf(A), typing: { custom: { points: far } } }),
    );
    expect(answer.verdict).toBe('falls_short');
    expect(answer.requirement.flow / GPM).toBeCloseTo(140, 6);
    expect(answer.atRequiredFlow).toBeUndefined();
  });

  for (const [name, supply, net] of [
    ['a relay of 60 psi', { relay: { pressure: '60 psi' } }, 0],
    ['a lift of 10 ft', { draft: { lift: '10 ft' } }, 0],
  ] as const) {
    it(`net pressure from ${name} is what the pump itself adds`, async () => {
      const custom = { flow: '60 gpm', pressure: '200 psi', net: true };
      const answer = await checkLayout(layoutFrom({ engine: engineOf(A), supply, typing: { custom } }));
      expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304 + net, 3);
    });
  }

  it('gauge pressure from a relay counts the relay, and from draft the lift', async () => {
    const relay = await check(60, 200, { supply: { relay: { pressure: '60 psi' } } });
    expect((relay.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(364, 3);
    const draft = await check(60, 200, { supply: { draft: { lift: '10 ft' } } });
    expect((draft.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304 - columnPressure(10), 3);
  });

  it('net pressure in series is over the first pump: what the second is fed with is no intake', async () => {
    const custom = { flow: '60 gpm', pressure: '200 psi', net: true };
    const supply = { relay: { pressure: '60 psi' } };
    const document = { engine: engineOf(A, A), staging: 'series', supply, typing: { custom } };
    const answer = await checkLayout(layoutFrom(document));
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(608, 2);
  });
});

describe('where it is judged', () => {
  it('the best outlet decides, as the orifice hangs on one at a time', async () => {
    const outlets = { left: [costs(10)], right: [costs(30)], rear: [costs(20)] };
    const answer = await check(60, 200, { engine: engineOf(A, undefined, { outlets }) });
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304 - 10, 3);
    expect(answer.judgedAt).toBe('outlet left, the best of 3');
  });

  it('pumps that work apart are judged by the better one', async () => {
    const outlets = { left: { pump: 'a' }, right: { pump: 'b' } };
    const engine = engineOf(parabolic(300, 75, 250), A, { outlets });
    const answer = await check(60, 200, { engine, staging: 'separate' });
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(304, 3);
    expect(answer.stagings[0].staging).toBe('separate');
    expect(answer.judgedAt).toContain('right');
  });

  it('a gauge at an outlet of a known bore reads the velocity head less', async () => {
    const pipe = { pipe: { inside_diameter: '1.5 in', hazen_williams: 140 }, length: '0.001 ft' };
    const answer = await check(100, 100, {
      engine: engineOf(A, undefined, { plumbing: { manifold: [pipe] } }),
    });
    const pressure = (answer.atRequiredFlow?.pressure as number) / PSI;
    expect(pressure).toBeCloseTo(parabola(400, 75, 250, 100) - velocityPressure(100, 1.5), 2);
  });
});

describe('where the pressure goes from a hydrant', () => {
  it('the main is among the losses, which with the pressure at the outlet make up static and pumps', async () => {
    const supply = { hydrant: { static: '80 psi', residual: '60 psi', flow: '150 gpm' } };
    const answer = await check(100, 100, { engine: engineOf(A), supply });
    const main = answer.losses.find(({ kind }) => kind === 'hydrant main');
    expect((main?.loss as number) / PSI).toBeCloseTo(20 * (100 / 150) ** 1.85, 4);
    const lost = answer.losses.reduce((sum, { loss }) => sum + loss, 0) / PSI;
    const made = 80 + parabola(400, 75, 250, 100);
    expect((answer.atRequiredFlow?.pressure as number) / PSI + lost).toBeCloseTo(made, 2);
  });
});

describe('where the verdict is read', () => {
  const says = (answer: { assumptions: { template: string }[] }) =>
    answer.assumptions.some(({ template }) => template.startsWith('No bore is known'));

  it('on total pressure, the answer says so; behind a pipe it is what a gauge reads', async () => {
    expect(says(await check(100, 100, { engine: engineOf(A) }))).toBe(true);
    const pipe = { pipe: { inside_diameter: '1.5 in', roughness: '0.00002 in' }, length: '1 in' };
    const piped = engineOf(A, A, { plumbing: { manifold: [pipe], discharge: [FREE_CHECK] } });
    expect(says(await check(100, 100, { engine: piped, staging: 'parallel' }))).toBe(false);
  });

  it('what a standing pump passes back rests on a rule with no source', async () => {
    const engine = engineOf(A, A, { plumbing: { discharge: [FREE_CHECK] } });
    const { assumptions } = await check(100, 100, { engine, staging: 'parallel' });
    const said = assumptions.find(({ template }) => template.startsWith('A pump that stands'));
    expect(said?.source).toBe('common practice, no source');
  });
});

describe('a lay that ends in the test orifice', () => {
  const orifice = { nozzle: { kind: 'sharp_orifice', bore: '0.716 in', tee_bore: '1.5 in' } };
  const hose = { hose: { inside_diameter: '1.5 in', coefficient: 24 }, length: '50 ft' };
  const engine = engineOf(parabolic(400, 150, 300, 200));

  it('50 ft of 1-1/2 in hose at 150 gpm costs 27 psi: C 24 x 1.5^2 x 0.5', async () => {
    const bare = await check(150, 250, { engine, lay: [orifice] });
    const hosed = await check(150, 250, { engine, lay: [hose, orifice] });
    const cost =
      ((bare.atRequiredFlow?.pressure as number) - (hosed.atRequiredFlow?.pressure as number)) / PSI;
    expect(cost).toBeCloseTo(27, 3);
    expect(cost).toBeCloseTo(coefficientLoss(24, 150, 50), 3);
    expect(bare.judgedAt).toContain('tee');
  });

  it('is judged on the static pressure in the tee: 5.0 psi below total at 150 gpm in 1.5 in', async () => {
    const bare = await check(150, 250, { engine, lay: [orifice] });
    expect(300 - (bare.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(velocityPressure(150, 1.5), 2);
    expect(velocityPressure(150, 1.5)).toBeCloseTo(5.0, 1);
  });

  it('a lay to an ordinary nozzle is not the test: the outlet is judged', async () => {
    const lay = [hose, { nozzle: { kind: 'smooth_bore', bore: '1/2 in' } }];
    const answer = await check(150, 250, { engine, lay });
    expect((answer.atRequiredFlow?.pressure as number) / PSI).toBeCloseTo(300, 3);
  });
});

describe('where the pressure goes', () => {
  it('losses and height add up to what the pump makes less what the outlet has', async () => {
    const plumbing = {
      intake: [costs(3)],
      discharge: [{ pipe: 'stainless-10s-2', length: '5 ft', rise: '2 ft', fittings: { elbow_90: 2 } }],
      manifold: [costs(7)],
    };
    const answer = await check(90, 100, { engine: engineOf(A, undefined, { plumbing }) });
    const lost = answer.losses.reduce((sum, { loss }) => sum + loss, 0) / PSI;
    const end = answer.atRequiredFlow?.pressure as number;
    const velocity = velocityPressure(90, 2.157);
    expect(parabola(400, 75, 250, 90) - lost - velocity).toBeCloseTo(end / PSI, 1);
    const sizes = answer.losses.map(({ loss }) => loss);
    expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  });

  it('a check valve held shut is no loss', async () => {
    const engine = engineOf(A, parabolic(200, 75, 100), { plumbing: { discharge: [FREE_CHECK] } });
    const answer = await check(30, 100, { engine });
    expect(answer.losses).toEqual([]);
  });
});

describe('the solver report', () => {
  it('says how well the answer holds together', async () => {
    const { solver } = await check(60, 200);
    expect(solver.iterations).toBeGreaterThan(0);
    expect(solver.flowResidual).toBeLessThan(1e-7);
    expect(solver.energyResidual).toBeLessThan(0.1);
  });
});
