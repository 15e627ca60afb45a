import { expect, test } from 'vitest';
import type { Layout } from '../../src/layout/layout.js';
import { operateLayout } from '../../src/study/operation.js';
import { NothingRequired, requireOf } from '../../src/study/require.js';
import { largestServed } from '../../src/study/servable.js';
import { engine, FAR_FOG, FOOT, GPM, lay, layoutOf, PSI } from './support.js';

const THREE = [1, 2, 3].map(() => ({ feet: 200, rise: 30, lateral: { feet: 100, gpm: 20 } }));
const layout = layoutOf(engine() + lay([...THREE, { feet: 200, rise: 30 }], FAR_FOG));
const at = (speed: number, staging = layout.staging): Layout => ({
  ...layout,
  staging,
  throttle: { by: 'speed', a: speed, b: speed },
});

test('the throttle found serves every nozzle, and a thousandth less does not', async () => {
  const { stagings } = await requireOf(layout);
  const able = stagings.filter(({ verdict }) => verdict === 'meets');
  expect(able.length).toBeGreaterThan(0);
  for (const { staging, throttle } of able) {
    const least = async (speed: number) =>
      Math.min(...(await operateLayout(at(speed, staging))).nozzles.map(({ pressure }) => pressure / PSI));
    expect(await least(throttle)).toBeGreaterThanOrEqual(100 - 1e-6);
    expect(await least(throttle * 0.999)).toBeLessThan(100);
  }
});

test('a staging that cannot is short by what flow shows at full throttle', async () => {
  const steep = layoutOf(engine() + lay([{ feet: 700, rise: 650 }, ...THREE], FAR_FOG));
  const answer = await requireOf(steep);
  const short = answer.stagings.filter(({ verdict }) => verdict === 'falls_short');
  expect(short.length).toBeGreaterThan(0);
  for (const { staging, worst } of short) {
    const { nozzles } = await operateLayout({ ...steep, staging });
    const lowest = nozzles.reduce((kept, one) => (one.pressure < kept.pressure ? one : kept));
    expect(worst.name).toBe(lowest.name);
    expect(worst.margin / PSI).toBeCloseTo(lowest.pressure / PSI - 100, 6);
  }
});

test('what the lay takes does not hang on the pump: all stagings that can discharge it make that pressure', async () => {
  const { outlets, stagings } = await requireOf(layout);
  const [outlet] = outlets ?? [];
  const able = stagings.filter(({ verdict }) => verdict === 'meets');
  for (const { pumps, totalFlow } of able) {
    // The engine of the tests has no plumbing: its last discharge is the outlet.
    expect(Math.max(...pumps.map(({ dischargePressure }) => dischargePressure)) / PSI).toBeCloseTo(
      outlet.pressure / PSI,
      2,
    );
    expect(totalFlow / GPM).toBeCloseTo(outlet.flow / GPM, 2);
  }
});

test('pumps in parallel share what is given between them', async () => {
  const { stagings } = await requireOf(layout);
  const parallel = stagings.find(({ staging }) => staging === 'parallel');
  expect(parallel?.pumps).toHaveLength(2);
  expect(parallel?.pumps.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
});

test('the staging as laid is kept where it can as well as any other', async () => {
  expect((await requireOf(layout)).staging).toBe('parallel');
});

test('where lift is short the answer is series, and where it can, it says so', async () => {
  const high = layoutOf(engine() + lay([{ feet: 800, rise: 750 }], FAR_FOG));
  const answer = await requireOf(high);
  expect(answer.asLaid).toBe('parallel');
  expect(answer.verdict).toBe('meets');
  expect(answer.staging).toMatch(/^series/);
});

test('the set that can be served is the largest: it is served, and with any one more it is not', async () => {
  const many = Array.from({ length: 6 }, () => ({ feet: 200, rise: 25, lateral: { feet: 100, gpm: 30 } }));
  const wide = layoutOf(engine() + lay([...many, { feet: 100 }], FAR_FOG));
  const { servable, verdict } = await requireOf(wide);
  expect(verdict).toBe('falls_short');
  expect(servable?.exact).toBe(true);
  const { served, leftOut, staging } = servable as NonNullable<typeof servable>;
  expect(served.length).toBeGreaterThan(0);
  const holds = async (open: readonly string[]) => {
    const { nozzles } = await operateLayout(
      { ...wide, staging },
      { nozzleState: (name) => (open.includes(name) ? 'open' : 'shut') },
    );
    return nozzles.filter(({ state }) => state === 'open').every(({ pressure }) => pressure >= 100 * PSI);
  };
  expect(await holds(served)).toBe(true);
  for (const one of leftOut) expect(await holds([...served, one])).toBe(false);
});

test('of more nozzles than are tried in every set, as many are found as there are in fact', () => {
  // Independent of hydraulics: each nozzle weighs something, and a set is served up to a weight.
  const weights = [9, 7, 5, 5, 4, 3, 3, 2, 2, 1, 1];
  const nozzles = weights.map((flow, i) => ({ name: `n${i}`, flow }));
  const weigh = (open: ReadonlySet<string>) =>
    nozzles.reduce((sum, { name, flow }) => sum + (open.has(name) ? flow : 0), 0);
  const { served, exact } = largestServed(nozzles, (open) => ({
    served: weigh(open) <= 16,
    order: [...open],
  }));
  expect(exact).toBe(false);
  expect(weigh(new Set(served))).toBeLessThanOrEqual(16);
  // 1 + 1 + 2 + 2 + 3 + 3 + 4 = 16: seven.
  expect(served).toHaveLength(7);
});

test('the search for the largest set asks of twice as many nozzles hardly more often', () => {
  const asked = (count: number) => {
    const nozzles = Array.from({ length: count }, (_, i) => ({ name: `n${i}`, flow: 1 + ((i * 7) % 5) }));
    let times = 0;
    largestServed(nozzles, (open) => {
      times++;
      const flow = nozzles.reduce((sum, { name, flow: own }) => sum + (open.has(name) ? own : 0), 0);
      return { served: flow <= count, order: [...open] };
    });
    return times;
  };
  expect(asked(160) / asked(80)).toBeLessThan(1.4);
  expect(asked(1280)).toBeLessThan(3 * asked(40));
});

test('a nozzle is laid for what the layout states, else its rating, else 50 psi of a hand line', async () => {
  const text = `lay:
  left:
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 100 ft}
    - branch: plain
      to:
        - {steps: [{nozzle: tip-3/8, name: tip}]}
        - {steps: [{nozzle: tip-3/8, pressure: 45 psi, name: low tip}]}
        - {steps: [{nozzle: {kind: automatic, pressure: 75 psi, flow_from: 10 gpm, flow_to: 60 gpm}, name: automatic}]}
        - {steps: [{nozzle: fog-20, name: fog}]}
`;
  const { needs } = await requireOf(layoutOf(engine() + text));
  expect(needs.map(({ name, pressure }) => [name, Number((pressure / PSI).toFixed(6))])).toEqual([
    ['tip', 50],
    ['low tip', 45],
    // It regulates from 1 % below what it is set to.
    ['automatic', 74.25],
    ['fog', 100],
  ]);
  // 29.7 d^2 sqrt(NP), city fire department training slides.
  expect((needs[0].flow ?? 0) / GPM).toBeCloseTo(29.7 * 0.375 ** 2 * Math.sqrt(50), 1);
  expect(needs[2].flow).toBeUndefined();
});

test('a lay without an open nozzle asks for nothing, and is told so', async () => {
  await expect(requireOf(layout, { nozzleState: () => 'shut' })).rejects.toThrow(NothingRequired);
});

test('a booster in the line has no hand rule, and the answer says why', async () => {
  const text = `lay:
  left:
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft, rise: 200 ft}
    - {pump: demo-highlift, name: booster}
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft, rise: 200 ft}
    - ${FAR_FOG}
`;
  const { rules, rulesOmitted } = await requireOf(layoutOf(engine() + text));
  expect(rules).toEqual([]);
  expect(rulesOmitted?.template).toMatch(/booster/);
});

test('each rule set counts appliances and height in its own way, and only the stamp tells which', async () => {
  const { rules } = await requireOf(layout);
  const [wildland, structural, engineering] = rules;
  // The far nozzle: 200 ft each of 80, 60, 40 and 20 gpm; three wyes; 120 ft up.
  const friction = [80, 60, 40, 20].reduce((sum, gpm) => sum + 24 * (gpm / 100) ** 2 * 2, 0);
  const lateral = 150 * 0.2 ** 2;
  expect(rules.map((rule) => rule.nozzle)).toEqual(['far', 'far', 'far']);
  for (const rule of rules) {
    expect(rule.friction / PSI).toBeCloseTo(friction, 2);
    expect(rule.climb).toBeCloseTo(120 * FOOT, 9);
  }
  expect(lateral).toBeLessThan(24 * 0.2 ** 2 * 2 + 15);
  expect([wildland, structural, engineering].map((rule) => Math.round(rule.appliances / PSI))).toEqual([
    15, 0, 0,
  ]);
  expect([wildland, structural, engineering].map((rule) => (rule.height / PSI).toFixed(1))).toEqual([
    '60.0',
    '60.0',
    '52.1',
  ]);
  expect(wildland.pressure / PSI).toBeCloseTo(Math.round(100 + friction + 15 + 60), 6);
  expect(structural.pressure / PSI).toBeCloseTo(5 * Math.round((100 + friction + 60) / 5), 6);
  expect(engineering.pressure / PSI).toBeCloseTo(100 + friction + 52.08, 2);
});

test('an open tank in the line has to fill as fast as it is drawn', async () => {
  const text = `lay:
  left:
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft, rise: 100 ft}
    - {tank: 1000 gal, name: pumpkin}
    - {pump: demo-highlift, name: booster}
    - {hose: {inside_diameter: 1.5 in, coefficient: 24}, length: 500 ft, rise: 200 ft}
    - {nozzle: {kind: fog, flow: 40 gpm, pressure: 100 psi}, name: far}
`;
  const open = layoutOf(engine() + text);
  const { stagings } = await requireOf(open);
  const parallel = stagings.find(({ staging }) => staging === 'parallel');
  expect(parallel?.verdict).toBe('meets');
  const { portableTanks } = await operateLayout({
    ...open,
    throttle: { by: 'speed', a: parallel?.throttle ?? 0, b: parallel?.throttle ?? 0 },
  });
  // The least throttle is the one at which the tank just holds its level.
  expect(portableTanks[0].inflow / GPM).toBeCloseTo(portableTanks[0].outflow / GPM, 1);
  // 100 ft up, 43 psi, are not to be had from a pump that idles.
  expect(parallel?.pumps[0].dischargePressure ?? 0).toBeGreaterThan(43 * PSI);
});

test('a tank that loses water at full throttle is named with how much', async () => {
  const text = `lay:
  left:
    - {hose: {inside_diameter: 1 in, coefficient: 150}, length: 2000 ft, rise: 300 ft}
    - {tank: 1000 gal, name: pumpkin}
    - {pump: demo-highlift, name: booster}
    - {nozzle: {kind: fog, flow: 40 gpm, pressure: 100 psi}, name: far}
`;
  const { stagings, verdict } = await requireOf(layoutOf(engine() + text));
  expect(verdict).toBe('falls_short');
  for (const { losing } of stagings) {
    expect(losing?.name).toBe('pumpkin');
    expect(losing?.by ?? 0).toBeGreaterThan(0);
  }
});

test('what the lay takes is told even where the relief valve would spill it', async () => {
  const steep = lay([{ feet: 1500, rise: 1200 }], FAR_FOG);
  const without = await requireOf(layoutOf(engine() + steep));
  const relieved = await requireOf(layoutOf(engine('relief: {opens_at: 300 psi}') + steep));
  expect(relieved.verdict).toBe('falls_short');
  // 1,200 ft of water, 100 psi at the nozzle, and the friction of 20 gpm.
  const byHand = (998.967 * 9.80665 * 1200 * FOOT) / PSI + 100 + 24 * 0.2 ** 2 * 15;
  expect((relieved.outlets?.[0].pressure ?? 0) / PSI).toBeCloseTo(byHand, 0);
  expect((relieved.outlets?.[0].pressure ?? 0) / PSI).toBeCloseTo(
    (without.outlets?.[0].pressure ?? 0) / PSI,
    2,
  );
});

test('lines that part and meet again carry half the flow each, however many lengths they are of', async () => {
  const half = '{hose: {inside_diameter: 2.5 in, coefficient: 2}, length: 100 ft}';
  const text = `lay:
  left:
    - siamese: [[${half}, ${half}], [${half}, ${half}]]
    - {nozzle: {kind: fog, flow: 100 gpm, pressure: 100 psi}, name: far}
`;
  const { rules } = await requireOf(layoutOf(engine() + text));
  // 50 gpm in each: 2 x 0.5^2 x 2.
  for (const { friction } of rules) expect(friction / PSI).toBeCloseTo(1, 6);
});
