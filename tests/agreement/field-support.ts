import { expect } from 'vitest';
import { needOf } from '../../src/assembly/nozzle-needs.js';
import type { Layout } from '../../src/layout/layout.js';
import { LayoutProblems } from '../../src/layout/problem.js';
import { bearingLimit } from '../../src/limits/hose-limit.js';
import { whyImpossible } from '../../src/limits/impossible.js';
import { answerDocument } from '../../src/report/answer-document.js';
import { cardText } from '../../src/report/card.js';
import { toJson } from '../../src/report/json.js';
import { markdownOf } from '../../src/report/markdown.js';
import { textOf } from '../../src/report/text.js';
import { cardOf } from '../../src/study/card.js';
import { clockOf } from '../../src/study/clock.js';
import { governed } from '../../src/study/governor.js';
import { GrowingLay } from '../../src/study/growing-lay.js';
import { NoSteadyAnswer } from '../../src/study/no-steady-answer.js';
import { operateLayout } from '../../src/study/operation.js';
import { advanceLayout } from '../../src/study/progression.js';
import { reachOf } from '../../src/study/reach.js';
import { requireOf } from '../../src/study/require.js';
import { Rig } from '../../src/study/rig.js';
import { layoutOf } from '../study/support.js';
import { Random } from '../support/random.js';

const FOOT = 0.3048;

/** A lay of a trunk with laterals as a crew may have it, over ridges and into canyons; some of it cannot be. */
interface Drawn {
  text: string;
  /** The same with each hose of the trunk in two lengths. */
  halved: string;
  plan: string;
  grade: number;
}

function nozzle(random: Random): string {
  const kind = random.integer(0, 3);
  if (kind === 0) return `{kind: smooth_bore, bore: ${random.pick(['1/4', '5/16', '3/8', '1/2'])} in}`;
  if (kind === 1)
    return `{kind: automatic, pressure: 100 psi, flow_from: ${random.integer(8, 20)} gpm, flow_to: 60 gpm}`;
  return `{kind: fog, flow: ${random.integer(8, 40)} gpm, pressure: ${random.pick([50, 75, 100])} psi}`;
}

function drawn(seed: number): Drawn {
  const random = new Random(seed);
  const pump = () => {
    const shut = random.integer(90, 420);
    const most = random.integer(40, 160);
    const npsh = random.chance(0.2) ? `, npsh_required: [[5 gpm, ${random.integer(2, 36)} ft]]` : '';
    const limits = random.chance(0.3) ? `, limits: {casing: ${random.integer(200, 600)} psi}` : '';
    return `{name: p, points: [[0 gpm, ${shut} psi], [${most / 2} gpm, ${Math.round(shut * 0.8)} psi], [${most} gpm, ${Math.round(shut * 0.3)} psi]]${npsh}${limits}}`;
  };
  const tested = random.chance(0.6) ? `, limits: {service_test: ${random.pick([250, 300, 450])} psi}` : '';
  const hose = `{inside_diameter: ${random.pick([1, 1.5, 2.5])} in, coefficient: ${random.pick([5, 24, 60])}${tested}}`;
  const governor = random.chance(0.25);
  const throttle = governor
    ? `{discharge_pressure: ${random.integer(60, 250)} psi}`
    : `${random.integer(50, 100)} %`;
  const staging = random.pick(['parallel', 'series', 'a', 'b']);
  const head = `engine:
  name: engine of the tests
  tank: {capacity: ${random.integer(100, 900)} gal, outlet_height: ${random.integer(0, 4)} ft, depth: 3 ft}
  pumps: {a: {model: ${pump()}}, b: {model: ${pump()}}}
  outlets: {left: []}
  plumbing: {discharge: [{pipe: stainless-10s-1.5, length: 2 ft}, {check_valve: swing}]}
staging: ${staging}
throttle: ${throttle}
`;
  const sections = random.integer(1, 4);
  const trunk = (halves: number) => {
    const again = new Random(seed + 1);
    return Array.from({ length: sections }, (_, index) => {
      const feet = again.integer(60, 500);
      const rise = again.integer(-Math.floor(feet / 2), Math.floor(feet / 2));
      const one = `    - {hose: ${hose}, length: ${feet / halves} ft, rise: ${rise / halves} ft}`;
      const hoses = Array.from({ length: halves }, () => one).join('\n');
      const lateral = again.chance(0.5)
        ? `\n    - branch: plain\n      to: [{name: lateral ${index + 1}, steps: [{hose: {inside_diameter: 1 in, coefficient: 150}, length: 100 ft}, {nozzle: ${nozzle(again)}, name: nozzle ${index + 1}}]}]`
        : '';
      return hoses + lateral;
    }).join('\n');
  };
  const far = `    - {nozzle: ${nozzle(random)}, name: far}`;
  const count = random.integer(2, 6);
  const plan = `progressive:
  trunk: {hose: ${hose}, length: 100 ft, rise: ${random.integer(-40, 50)} ft}
  sections: ${count}
  lateral:
    every: 2
    branch: plain
    steps: [{hose: {inside_diameter: 1 in, coefficient: 150}, length: 100 ft}, {nozzle: ${nozzle(random)}}]
    flowing: ${random.pick(['all', 'none', '{last: 1}'])}
  end: [{nozzle: ${nozzle(random)}}]
${random.chance(0.5) ? `  pace: ${random.integer(1, 6)} min\n` : ''}`;
  return {
    text: `${head}lay:\n  left:\n${trunk(1)}\n${far}\n`,
    halved: `${head}lay:\n  left:\n${trunk(2)}\n${far}\n`,
    plan: head + plan,
    grade: random.pick([-0.5, -0.2, 0, 0.3]),
  };
}

/** What an answer of nothing steady, or of a layout that is refused as written, leaves to compare. */
async function answered<T>(ask: () => Promise<T>): Promise<T | undefined> {
  try {
    return await ask();
  } catch (error) {
    if (error instanceof NoSteadyAnswer || error instanceof LayoutProblems) return undefined;
    throw error;
  }
}

const close = (one: number, other: number, part: number, least: number, where: string) =>
  expect(Math.abs(one - other), where).toBeLessThanOrEqual(Math.max(least, part * Math.abs(other)));

/** How many comparisons of each kind were made, so that none of them is empty. */
export type Made = Record<string, number>;

/** Puts one layout's questions two ways; throws where they disagree. */
export async function agree(seed: number, made: Made): Promise<void> {
  const { text, halved, plan, grade } = drawn(seed);
  const count = (what: string) => {
    made[what] = (made[what] ?? 0) + 1;
  };
  const layout = layoutOf(text);
  await flowClockCard(layout, halved, count, `seed ${seed}`);
  if (seed % 4 === 0) await requireAndFlow(layout, count, `seed ${seed}, require`);
  if (seed % 4 === 1) await advanceAndFlow(layoutOf(plan), count, `seed ${seed}, advance`);
  if (seed % 8 === 2) await reachAndFlow(layout, grade, count, `seed ${seed}, reach`);
}

async function flowClockCard(layout: Layout, halved: string, count: (what: string) => void, where: string) {
  const flow = await answered(() => operateLayout(layout));
  if (flow === undefined) return count('unsteady');
  const clock = await clockOf(layout);
  const gate = whyImpossible(governed(await Rig.of(layout), layout.staging));
  expect(flow.impossible[0]?.code, where).toBe(gate?.code);
  expect(clock.impossible, where).toEqual(flow.impossible);
  close(clock.totalFlow, flow.totalFlow, 1e-9, 1e-12, where);
  expect(clock.tank?.endurance, where).toBe(flow.tank?.endurance);
  expect(
    clock.cautions.filter(({ code }) => code === 'tank_runs_out' || code === 'nozzle_starved'),
    where,
  ).toEqual(flow.cautions.filter(({ code }) => code === 'tank_runs_out' || code === 'nozzle_starved'));
  const card = await cardOf(layout);
  expect(card.tank, where).toEqual(flow.tank);
  const allShut = card.gauges.map(({ shut }) => shut ?? 0);
  const { device, overSetting } = flow.lineControl;
  if (device && overSetting !== undefined)
    close(Math.max(...allShut), device.set + overSetting, 1e-6, 10, `${where}, all shut`);
  const json = toJson(flow, 'us');
  const texts = [
    textOf(answerDocument(flow, 'us')),
    markdownOf(answerDocument(flow, 'us')),
    cardText(card, 'us', '2026-01-01'),
    textOf(answerDocument(clock, 'us')),
  ];
  if (gate) {
    count('impossible');
    expect([json.total_flow, json.tank, json.supply, json.nozzles, json.pumps], where).toEqual([
      null,
      null,
      null,
      [],
      [],
    ]);
    expect(toJson(clock, 'us').total_flow, where).toBeNull();
    for (const one of texts) {
      expect(one.replace(/\s+/g, ' '), where).toMatch(/CANNOT FLOW/);
      expect(one, where).not.toMatch(/FLOWS |WATER LASTS|At the nozzles/);
    }
  } else {
    count('possible');
    const exact = json.total_flow?.value ?? 0;
    const gpm = Math.round(exact);
    // Below ten a figure has one decimal more.
    if (exact >= 10) for (const one of texts) expect(one.replace(/\s+/g, ' '), where).toContain(`${gpm} gpm`);
    const two = await answered(() => operateLayout(layoutOf(halved)));
    if (two) {
      close(two.totalFlow, flow.totalFlow, 1e-5, 1e-8, `${where}, halved`);
      expect(two.impossible.length, where).toBe(0);
    }
  }
}

async function requireAndFlow(layout: Layout, count: (what: string) => void, where: string) {
  const answer = await answered(() => requireOf(layout));
  for (const demand of answer?.stagings ?? []) {
    if (demand.verdict !== 'meets') {
      count(demand.impossible ? 'require cannot be' : 'require cannot');
      continue;
    }
    count('require can');
    const { throttle, staging } = demand;
    const fed = await operateLayout({
      ...layout,
      staging,
      throttle: { by: 'speed', a: throttle, b: throttle },
    });
    expect(fed.impossible, `${where} ${staging}`).toEqual([]);
    close(fed.totalFlow, demand.totalFlow, 1e-5, 1e-8, where);
    for (const need of answer?.needs ?? []) {
      const there = fed.nozzles.find(({ name }) => name === need.name);
      expect(there?.pressure, where).toBeGreaterThanOrEqual(need.pressure - 20);
    }
    for (const pump of demand.pumps) {
      const there = fed.pumps.find(({ name }) => name === pump.name);
      close(there?.dischargePressure ?? 0, pump.dischargePressure, 1e-5, 20, where);
    }
  }
}

async function advanceAndFlow(layout: Layout, count: (what: string) => void, where: string) {
  const answer = await answered(() => advanceLayout(layout));
  const { progressive } = layout;
  if (answer === undefined || progressive === undefined) return;
  const lay = new GrowingLay(await Rig.of(layout), progressive);
  for (const step of answer.steps) {
    const cut = await answered(() => operateLayout(lay.layoutAt(step.section)));
    if (cut === undefined) continue;
    count('advance step');
    const at = `${where}, section ${step.section}`;
    expect(cut.impossible[0]?.code, at).toBe(step.impossible?.code);
    if (step.impossible) {
      count('advance cannot be');
      expect(step.limits[0].code, at).toBe('cannot_be');
      continue;
    }
    close(cut.totalFlow, step.totalFlow, 1e-4, 1e-7, at);
    const shut = cut.lineControl.overSetting;
    if (
      shut !== undefined &&
      cut.tank?.endurance != null &&
      step.water?.used === 0 &&
      step.water.lasts !== null
    )
      close(cut.tank.endurance, step.water.lasts, 2e-3, 1, at);
    if (step.limits.length === 0)
      expect(
        cut.cautions.some(({ code }) => code === 'nozzle_starved' || code === 'hose_over_service_test'),
        at,
      ).toBe(false);
  }
  const option = answer.options.find(({ code }) => code === 'throttle');
  const throttle = option?.title.values?.throttle;
  if (option && typeof throttle === 'object') {
    count('advance option');
    const run = await advanceLayout({
      ...layout,
      throttle: { by: 'speed', a: throttle.value, b: throttle.value },
    });
    // Without the tenders that are counted on the tank ends it where the option says.
    expect(run.reached, where).toBe(option.dryAt === undefined ? option.reached : option.dryAt - 1);
  }
}

async function reachAndFlow(layout: Layout, grade: number, count: (what: string) => void, where: string) {
  const speed = layout.throttle.by === 'speed' ? layout.throttle.a : 1;
  const at = { ...layout, throttle: { by: 'speed' as const, a: speed, b: speed } };
  const answer = await answered(() => reachOf(at, { grades: [grade], laterals: [0] }));
  const { steps } = layout.lay[0];
  const hose = steps.find((step) => step.kind === 'hose');
  const nozzle = steps.findLast((step) => step.kind === 'nozzle');
  for (const { staging, rows } of answer?.stagings ?? []) {
    const [cell] = rows[0].cells;
    if (hose?.kind !== 'hose' || nozzle === undefined || cell.length < 20 * FOOT) continue;
    const serves = async (length: number): Promise<boolean | undefined> => {
      const rise = (length * grade) / Math.hypot(1, grade);
      const trunk = { ...hose, length, rise, ground: undefined };
      const laid = { ...at, staging, lay: [{ ...layout.lay[0], steps: [trunk, nozzle] }] };
      const rig = await Rig.of(laid);
      const state = await answered(async () => governed(rig, staging));
      const shut = await answered(async () => governed(rig, staging, () => 'shut'));
      if (state === undefined || shut === undefined) return undefined;
      const limit = bearingLimit(hose.hose)?.pressure ?? Number.POSITIVE_INFINITY;
      const [far] = state.assembly.nozzles;
      const highest = [state, shut].flatMap((point) =>
        point.assembly.elements
          .filter(({ step }) => step?.kind === 'hose')
          .flatMap(({ from, to }) => [point.totalPressure(from), point.totalPressure(to)]),
      );
      return (
        whyImpossible(state) === undefined &&
        state.totalPressure(far.inlet) >= (needOf(far)?.pressure ?? 0) - 1 &&
        Math.max(...highest) <= limit + 100
      );
    };
    count(`reach ${cell.limit}`);
    if (0.98 * cell.length > (cell.from ?? 0))
      expect(await serves(0.98 * cell.length), `${where} ${staging} shorter`).not.toBe(false);
    if (cell.limit !== 'longest_looked_at')
      expect(await serves(1.02 * cell.length), `${where} ${staging} longer`).not.toBe(true);
  }
}
