import { Drafting, type Setting, topic } from '../draft.js';
import { engine, place } from '../names.js';
import { pressures } from '../parts.js';
import type { SketchPart } from '../problem.js';
import { beside, drawPump, flowAgainst, givePump, hundreds, NO_GAP, runout, weaker } from '../pumps.js';
import type { Draw } from '../random.js';
import { type Load, type SquarePump, staged } from '../solver/two-pumps.js';

/** Pumps on a pressure that is held at the manifold, or on a line of some height and loss. */
export interface TwoPumpFacts {
  readonly pumps: readonly [SquarePump, SquarePump];
  readonly load: Load;
}

const side: SketchPart = {
  kind: 'joined',
  label: '',
  legs: [[{ kind: 'pump', label: 'pump A' }], [{ kind: 'pump', label: 'pump B' }]],
};
const PARALLEL: readonly SketchPart[] = [
  { kind: 'source', what: 'tank', label: 'tank' },
  side,
  { kind: 'gauge', label: 'manifold' },
];
const SERIES: readonly SketchPart[] = [
  { kind: 'source', what: 'tank', label: 'tank' },
  { kind: 'pump', label: 'pump A' },
  { kind: 'pump', label: 'pump B' },
  { kind: 'gauge', label: 'manifold' },
];

const round = (value: number, step: number) => step * Math.round(value / step);

/** A line that takes the pumps to a sound part of their curves. */
function drawLoad(draw: Draw, setting: Setting, shutoff: number, flow: number): Load {
  const us = setting.units === 'us';
  const height = setting.level >= 4 ? round(shutoff * draw.pick([0.1, 0.15, 0.2, 0.25]), us ? 5 : 25) : 0;
  const left = shutoff * draw.pick([0.5, 0.55, 0.6, 0.65, 0.7]) - height;
  return { static: height, loss: Math.max(1, round(left / (flow / 100) ** 2, us ? 5 : 1)) };
}

/** Gives the load's figures and says them. */
function giveLoad(d: Drafting, load: Load): string {
  const { unit } = d.setting;
  if ('held' in load) {
    const p = d.give('P', 'pressure at the manifold', load.held, unit.pressure);
    return `The manifold stands at ${p}.`;
  }
  const k = d.give('K', `what the line takes at 100 ${unit.flow}`, load.loss, unit.pressure);
  const e =
    load.static > 0
      ? d.give('E', 'pressure of the height that the line climbs', load.static, unit.pressure)
      : '';
  const climbs = e === '' ? 'level' : `climbing a height that takes ${e}`;
  return `The line, ${climbs}, takes ${k} in hose and nozzle at 100 ${unit.flow}, growing with the square of the flow.`;
}

const twins = 'Two equal pumps, each behind its check valve,';

export const parallelPumps = topic<TwoPumpFacts>({
  id: 'parallel-pumps',
  title: 'Two equal pumps in parallel',
  draw(draw, setting) {
    const pump = drawPump(draw, setting);
    if (setting.level <= 2) {
      const held = round(
        pump.shutoff * draw.pick([0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8]),
        setting.units === 'us' ? 5 : 25,
      );
      return { pumps: [pump, pump], load: { held } };
    }
    const flow = 2 * runout(pump) * draw.pick([0.6, 0.7, 0.8]);
    return { pumps: [pump, pump], load: drawLoad(draw, setting, pump.shutoff, flow) };
  },
  pose({ pumps, load }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const [pump] = pumps;
    const curve = givePump(d, pump, '', 'each pump');
    const words = giveLoad(d, load);
    if ('held' in load) {
      d.step('q', 'Flow of each pump against that pressure', flowAgainst(setting, 'P'), unit.flow);
      d.step('Q', 'Flow of both: in parallel flows add', '2 * q', unit.flow);
      d.slip('one-pump-alone', { formulas: { Q: '1 * q' } });
      d.slip('staging-confused', {
        formulas: { q: flowAgainst(setting, 'P / 2'), Q: '1 * q' },
        why: 'The pumps were taken in series: each was given half of the pressure.',
      });
      d.slip('root-forgotten', { formulas: { q: `100 ${unit.q} * (S - P) / b` } });
      d.slip('loss-for-pressure', {
        formulas: { q: `100 ${unit.q} * sqrt(P / b)` },
        why: 'The manifold’s pressure was used in place of what the pump has lost of its shutoff pressure.',
      });
      d.slip('shutoff-taken', { formulas: { q: `100 ${unit.q} * sqrt(S / b)` } });
    } else {
      const e = load.static > 0 ? '(S - E)' : 'S';
      d.step(
        'c',
        `What each pump has lost when both together flow 100 ${unit.flow}: half the flow, a quarter of the fall`,
        'b / 4',
        unit.pressure,
      );
      d.step(
        'Q',
        'Flow where the pumps make what the line takes',
        `100 ${unit.q} * sqrt(${e} / (K + c))`,
        unit.flow,
      );
      d.slip('twice-one-pump', { formulas: { Q: `2 * 100 ${unit.q} * sqrt(${e} / (K + b))` } });
      d.slip('one-pump-alone', { formulas: { Q: `100 ${unit.q} * sqrt(${e} / (K + b))` } });
      d.slip('half-sum', {
        formulas: { c: 'b / 2' },
        why: 'The fall was halved: half the flow makes a quarter of it.',
      });
      d.slip('shutoff-taken', {
        formulas: { c: '0 * b' },
        why: 'The pumps were taken to hold their shutoff pressure at any flow.',
      });
      d.slip('staging-confused', {
        formulas: { Q: `100 ${unit.q} * sqrt((2 * S${load.static > 0 ? ' - E' : ''}) / (K + 2 * b))` },
      });
      d.slip('root-forgotten', { formulas: { Q: `100 ${unit.q} * ${e} / (K + c)` } });
      if (load.static > 0)
        d.slip('elevation-dropped', { formulas: { Q: `100 ${unit.q} * sqrt(S / (K + c))` } });
    }
    d.bound('Q', runout(pump) * 0.4, 2 * runout(pump));
    const question = wording.pick([
      `${twins} work in parallel on ${engine(wording)}. Each ${curve}. ${words} What do both together flow?`,
      `At ${place(wording)} two equal pumps in parallel feed one manifold. Each ${curve}. ${words} Find the flow of both together.`,
    ]);
    return d.draft(question, 'flow of both pumps', {
      sketch: PARALLEL,
      keyedBySolver: true,
      crossCheck: (value) =>
        beside(value('Q'), staged(pumps, 'parallel', load, units).total, unit.flow, NO_GAP),
    });
  },
});

export const seriesPumps = topic<TwoPumpFacts & { readonly flow?: number }>({
  id: 'series-pumps',
  title: 'Two pumps in series',
  draw(draw, setting) {
    const a = drawPump(draw, setting, 'series');
    const b = setting.level === 1 ? a : weaker(a, draw, setting, 5, 25);
    const most = Math.min(runout(a), runout(b));
    const flow = round(most * draw.pick([0.5, 0.6, 0.7, 0.8, 0.9]), setting.units === 'us' ? 5 : 20);
    if (setting.level <= 2) return { pumps: [a, b], load: { held: 0 }, flow };
    return { pumps: [a, b], load: drawLoad(draw, setting, a.shutoff + b.shutoff, most * 0.85) };
  },
  pose({ pumps, load, flow }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const [a, b] = pumps;
    const curveA = givePump(d, a, 'A', 'pump A');
    const curveB = givePump(d, b, 'B', 'pump B');
    const both = `Pump A ${curveA}. Pump B ${curveB}.`;
    if (flow !== undefined) {
      const q = d.give('Q', 'flow', flow, unit.flow);
      const r = hundreds(setting, 'Q');
      d.step('PA', 'What pump A adds at this flow', `SA - bA * ${r}`, unit.pressure);
      d.step('PB', 'What pump B adds at the same flow', `SB - bB * ${r}`, unit.pressure);
      d.step('P', 'Pressure of both: in series pressures add', 'PA + PB', unit.pressure);
      d.slip('staging-confused', {
        formulas: { P: '(PA + PB) / 2' },
        why: 'The pumps were taken in parallel: the pressures were not added.',
      });
      d.slip('shutoff-taken', { formulas: { P: 'SA + SB' } });
      d.slip('flow-not-squared', {
        formulas: { PA: `SA - bA * Q / (100 ${unit.q})`, PB: `SB - bB * Q / (100 ${unit.q})` },
      });
      d.slip('half-sum', {
        formulas: {
          PA: `SA - bA * ${hundreds(setting, '(Q / 2)')}`,
          PB: `SB - bB * ${hundreds(setting, '(Q / 2)')}`,
        },
        why: 'The flow was halved, as in parallel: in series each pump moves all of it.',
      });
      d.bound('PA', a.shutoff * 0.2, a.shutoff);
      d.bound('PB', b.shutoff * 0.2, b.shutoff);
      return d.draft(
        wording.pick([
          `On ${engine(wording)} pump A feeds pump B in series, from a tank level with them. ${both} What does the gauge after pump B read at ${q}, plumbing left out?`,
          `Two pumps at ${place(wording)} are staged in series, drawing from a tank at their own level. ${both} What do they make together at ${q}?`,
        ]),
        'pressure after the second pump',
        {
          sketch: SERIES,
          keyedBySolver: true,
          crossCheck: (value) => {
            const loss = value('P') / (flow / 100) ** 2;
            const { pressure } = staged(pumps, 'series', { static: 0, loss }, units);
            return beside(value('P'), pressure, unit.pressure, NO_GAP);
          },
        },
      );
    }
    const words = giveLoad(d, load);
    const lineStatic = 'static' in load ? load.static : 0;
    const e = lineStatic > 0 ? ' - E' : '';
    d.step('S', 'Shutoff pressure of both', 'SA + SB', unit.pressure);
    d.step('c', `What both have lost at 100 ${unit.flow}`, 'bA + bB', unit.pressure);
    d.step(
      'Q',
      'Flow where the pumps make what the line takes',
      `100 ${unit.q} * sqrt((S${e}) / (K + c))`,
      unit.flow,
    );
    d.slip('one-pump-alone', { formulas: { S: 'SA + 0 * SB', c: 'bA + 0 * bB' } });
    d.slip('twice-one-pump', {
      formulas: { Q: `2 * 100 ${unit.q} * sqrt((SA${e}) / (K + bA))` },
      why: 'Twice the flow of one pump was taken: in series pressures add, not flows.',
    });
    d.slip('staging-confused', {
      formulas: { Q: `100 ${unit.q} * sqrt((SA${e}) / (K + bA / 4))` },
      why: 'The pumps were taken in parallel.',
    });
    d.slip('shutoff-taken', {
      formulas: { c: '0 * bA' },
      why: 'The pumps were taken to hold their shutoff pressure at any flow.',
    });
    d.slip('root-forgotten', { formulas: { Q: `100 ${unit.q} * (S${e}) / (K + c)` } });
    if (lineStatic > 0) d.slip('elevation-dropped', { formulas: { Q: `100 ${unit.q} * sqrt(S / (K + c))` } });
    d.bound('Q', Math.min(runout(a), runout(b)) * 0.3, Math.min(runout(a), runout(b)));
    return d.draft(
      wording.pick([
        `On ${engine(wording)} pump A feeds pump B in series, from a tank level with them. ${both} ${words} What flows?`,
        `Two pumps at ${place(wording)} are staged in series, drawing from a tank at their own level. ${both} ${words} Find the flow.`,
      ]),
      'flow through both pumps',
      {
        sketch: SERIES,
        keyedBySolver: true,
        crossCheck: (value) =>
          beside(value('Q'), staged(pumps, 'series', load, units).total, unit.flow, NO_GAP),
      },
    );
  },
});

export const weakPump = topic<TwoPumpFacts & { readonly ask: 'total' | 'least' }>({
  id: 'weak-pump',
  title: 'Unlike pumps in parallel: is the weaker one shut out?',
  draw(draw, setting) {
    const a = drawPump(draw, setting);
    const b = weaker(a, draw, setting, 12, 30);
    const step = setting.units === 'us' ? 5 : 25;
    const out = draw.chance(0.6);
    const part = draw.pick([0.25, 0.5, 0.75]);
    const held = out
      ? round(b.shutoff + (a.shutoff - b.shutoff) * part * 0.8, step)
      : round(b.shutoff * (1 - 0.25 * part), step);
    return { pumps: [a, b], load: { held }, ask: setting.level >= 4 && draw.chance(0.4) ? 'least' : 'total' };
  },
  pose({ pumps, load, ask }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const [a, b] = pumps;
    const curveA = givePump(d, a, 'A', 'pump A');
    const curveB = givePump(d, b, 'B', 'pump B');
    const both = `Pump A ${curveA}. Pump B, worn, ${curveB}.`;
    const parallel = 'Each stands behind its own check valve, and both feed one manifold.';
    if (ask === 'least') {
      d.step(
        'Q',
        'Flow of pump A when the manifold stands at pump B’s shutoff pressure',
        `100 ${unit.q} * sqrt((SA - SB) / bA)`,
        unit.flow,
      );
      d.slip('root-forgotten', { formulas: { Q: `100 ${unit.q} * (SA - SB) / bA` } });
      d.slip('half-sum', {
        formulas: { Q: `100 ${unit.q} * sqrt((SA - SB) / (2 * bA))` },
        why: 'Both pumps were taken to share the flow: at this point pump B moves none.',
      });
      d.slip('shutoff-taken', { formulas: { Q: `100 ${unit.q} * sqrt(SB / bB)` } });
      d.slip('other-pump', {
        formulas: { Q: `100 ${unit.q} * sqrt(SA / bA)` },
        why: 'Pump A’s shutoff pressure was used in place of the difference of the two.',
      });
      d.bound('Q', 2, runout(a));
      return d.draft(
        wording.pick([
          `Two unlike pumps work in parallel on ${engine(wording)}. ${parallel} ${both} Below which total flow is pump B shut out, so that it moves no water and heats what it holds?`,
          `At ${place(wording)} two unlike pumps are staged in parallel. ${parallel} ${both} As nozzles are closed the flow falls. At which flow does pump B’s check valve shut?`,
        ]),
        'flow at which the weaker pump is shut out',
        {
          sketch: PARALLEL,
          keyedBySolver: true,
          crossCheck: (value) =>
            beside(
              value('Q'),
              staged(pumps, 'parallel', { held: b.shutoff }, units).total,
              unit.flow,
              NO_GAP,
            ),
        },
      );
    }
    const held = 'held' in load ? load.held : 0;
    const stands = giveLoad(d, load);
    const reads = d.given[d.given.length - 1].text;
    const nothing = `0 ${unit.p}`;
    d.step('XA', 'What pump A has left to lose', `max(SA - P, ${nothing})`, unit.pressure);
    d.step(
      'XB',
      'What pump B has left to lose; none, and its check valve is shut',
      `max(SB - P, ${nothing})`,
      unit.pressure,
    );
    d.step('QA', 'Flow of pump A', `100 ${unit.q} * sqrt(XA / bA)`, unit.flow);
    d.step('QB', 'Flow of pump B', `100 ${unit.q} * sqrt(XB / bB)`, unit.flow);
    d.step('Q', 'Flow of both', 'QA + QB', unit.flow);
    if (held >= b.shutoff) {
      d.slip('shut-out-overlooked', {
        formulas: { Q: '2 * QA' },
        why: 'Pump B was taken to flow as much as pump A: above its shutoff pressure it is shut out.',
      });
      d.slip('shut-out-overlooked', { formulas: { XB: 'P - SB' } });
      d.slip('shut-out-overlooked', {
        formulas: { QB: `100 ${unit.q} * sqrt(SB / bB) / 2` },
        why: 'Pump B was counted at half of its greatest flow: above its shutoff pressure it is shut out.',
      });
    } else {
      d.slip('other-pump', { formulas: { Q: '2 * QA' }, why: 'Pump B was taken to be as strong as pump A.' });
      d.slip('other-pump', { formulas: { Q: '2 * QB' }, why: 'Pump A was taken to be as weak as pump B.' });
      d.slip('one-pump-alone', { formulas: { Q: 'QA + 0 * QB' } });
    }
    d.slip('root-forgotten', { formulas: { QA: `100 ${unit.q} * XA / bA`, QB: `100 ${unit.q} * XB / bB` } });
    d.slip('shutoff-taken', { formulas: { XA: 'SA * 1', XB: 'SB * 1' } });
    d.slip('half-sum', {
      formulas: { QA: `100 ${unit.q} * sqrt(XA / bA) / 2`, QB: `100 ${unit.q} * sqrt(XB / bB) / 2` },
      why: 'The flow was halved.',
    });
    d.bound('XA', pressures(setting, 5), a.shutoff);
    d.bound('Q', 5, 2 * runout(a));
    const question = wording.pick([
      `Two unlike pumps work in parallel on ${engine(wording)}. ${parallel} ${both} ${stands} How much do they flow together?`,
      `At ${place(wording)} two unlike pumps are staged in parallel. ${parallel} ${both} The gauge on the manifold reads ${reads}. Find the total flow.`,
    ]);
    return d.draft(question, 'flow of both pumps', {
      sketch: PARALLEL,
      keyedBySolver: true,
      crossCheck: (value) =>
        beside(value('Q'), staged(pumps, 'parallel', load, units).total, unit.flow, NO_GAP),
    });
  },
});

export interface OnePumpOutFacts {
  readonly pump: SquarePump;
  readonly staging: 'parallel' | 'series';
  /** What the test orifice takes at a flow of 100. */
  readonly orifice: number;
  readonly ask: 'flow' | 'pressure';
}

export const onePumpOut = topic<OnePumpOutFacts>({
  id: 'one-pump-out',
  title: 'One of two pumps out',
  draw(draw, setting) {
    const staging = setting.level >= 3 && draw.chance(0.5) ? 'series' : 'parallel';
    const pump = drawPump(draw, setting, staging);
    const each = runout(pump) * draw.pick([0.6, 0.7, 0.8]);
    const flow = staging === 'parallel' ? 2 * each : each;
    const pressure = (pump.shutoff - pump.fall * (each / 100) ** 2) * (staging === 'parallel' ? 1 : 2);
    const orifice = Math.max(1, round(pressure / (flow / 100) ** 2, setting.units === 'us' ? 5 : 0.5));
    return { pump, staging, orifice, ask: setting.level >= 2 && draw.chance(0.5) ? 'pressure' : 'flow' };
  },
  pose({ pump, staging, orifice, ask }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const curve = givePump(d, pump, '', 'each pump');
    const k = d.give(
      'K',
      `pressure that drives 100 ${unit.flow} through the orifice`,
      orifice,
      unit.pressure,
    );
    const r = `sqrt(S / (K + b))`;
    const withBoth = staging === 'parallel' ? 'sqrt(S / (K + b / 4))' : 'sqrt(2 * S / (K + 2 * b))';
    d.step('Q', 'Flow that one pump drives through the orifice', `100 ${unit.q} * ${r}`, unit.flow);
    const wrong: [
      string,
      string | undefined,
      'half-sum' | 'other-pump' | 'staging-confused' | 'shutoff-taken',
    ][] = [
      [`100 ${unit.q} * ${withBoth}`, 'Both pumps were counted: one of them is out.', 'other-pump'],
      [
        `50 ${unit.q} * ${withBoth}`,
        'Half of what both flow was taken: with less flow the orifice takes less, so one pump gives more than half.',
        'half-sum',
      ],
      [`100 ${unit.q} * sqrt(S / K)`, undefined, 'shutoff-taken'],
      [
        `100 ${unit.q} * sqrt(S / (K + 2 * b))`,
        'The fall of both pumps was counted for the one that runs.',
        'staging-confused',
      ],
    ];
    if (ask === 'pressure')
      d.step('P', 'Pressure at the orifice', `K * ${hundreds(setting, 'Q')}`, unit.pressure);
    for (const [formula, why, slip] of wrong)
      d.slip(slip, { formulas: { Q: formula }, ...(why ? { why } : {}) });
    if (ask === 'pressure') {
      d.slip('flow-not-squared', { formulas: { P: `K * Q / (100 ${unit.q})` } });
      d.slip('shutoff-taken', {
        formulas: { P: 'S - b' },
        why: `The pump’s pressure at 100 ${unit.flow} was taken.`,
      });
    } else d.slip('root-forgotten', { formulas: { Q: `100 ${unit.q} * S / (K + b)` } });
    d.bound('Q', 5, runout(pump) * 1.15);
    const way =
      staging === 'parallel'
        ? 'in parallel, each behind its check valve'
        : 'in series, each with a bypass around it that opens when it stops';
    const asked =
      ask === 'flow'
        ? 'How much does the other drive through the orifice?'
        : 'What pressure does the other hold at the orifice?';
    const question = wording.pick([
      `${engine(wording)} carries two equal pumps staged ${way}. Each ${curve}. A test orifice on the outlet takes ${k} at 100 ${unit.flow}, growing with the square of the flow. One pump is out; plumbing is left out. ${asked}`,
      `Two equal pumps, staged ${way}, feed a test orifice that takes ${k} at 100 ${unit.flow} and grows with the square of the flow. Each pump ${curve}. One of them fails. ${asked}`,
    ]);
    return d.draft(
      question,
      ask === 'flow' ? 'flow with one pump out' : 'pressure at the orifice with one pump out',
      {
        sketch:
          staging === 'parallel'
            ? [...PARALLEL, { kind: 'nozzle', label: 'test orifice' }]
            : [...SERIES, { kind: 'nozzle', label: 'test orifice' }],
        keyedBySolver: true,
        crossCheck: (value) => {
          const one = staged([pump], 'parallel', { static: 0, loss: orifice }, units);
          return ask === 'flow'
            ? beside(value('Q'), one.total, unit.flow, NO_GAP)
            : beside(value('P'), one.pressure, unit.pressure, NO_GAP);
        },
      },
    );
  },
});

export interface StagingChoiceFacts {
  readonly pump: SquarePump;
  readonly flow: number;
  /** What nozzle, hose and height take together at that flow. */
  readonly nozzle: number;
  readonly hose: number;
  readonly height: number;
}

const WAYS = ['one pump alone', 'two in parallel', 'two in series', 'neither staging'] as const;

export const stagingChoice = topic<StagingChoiceFacts | undefined>({
  id: 'staging-choice',
  title: 'Parallel or series: pick and justify',
  draw(draw, setting) {
    const us = setting.units === 'us';
    const pump = drawPump(draw, setting, 'series');
    const q0 = runout(pump);
    const step = us ? 5 : 20;
    const want = draw.pick(WAYS);
    const share = {
      'one pump alone': 0.5,
      'two in parallel': 1.5,
      'two in series': 0.7,
      'neither staging': 1.55,
    }[want];
    const flow = round(q0 * share * draw.pick([0.85, 0.95, 1.05, 1.15]), step);
    const one = pump.shutoff - pump.fall * (flow / 100) ** 2;
    const par = pump.shutoff - pump.fall * (flow / 200) ** 2;
    const needed =
      want === 'one pump alone'
        ? one * 0.85
        : want === 'two in parallel'
          ? par * 0.88
          : want === 'two in series'
            ? Math.max(par, one) * 0.3 + 2 * one * 0.6
            : par * 1.35;
    const grain = us ? 5 : 25;
    const nozzle = setting.rules.nozzle.fog;
    const rest = round(needed, grain) - nozzle;
    if (rest < 2 * grain) return undefined;
    const height = setting.level <= 1 ? 0 : round(rest * draw.pick([0.3, 0.4, 0.5, 0.6]), grain);
    return { pump, flow, nozzle, hose: rest - height, height };
  },
  pose(facts, setting) {
    if (facts === undefined) throw new Error('nothing to pose');
    const { pump, flow, nozzle, hose, height } = facts;
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const curve = givePump(d, pump, '', 'each pump');
    const q = d.give('Q', 'flow wanted', flow, unit.flow);
    const np = d.give('NP', 'nozzle pressure', nozzle, unit.pressure);
    const fl = d.give('FL', 'loss in the hose at that flow', hose, unit.pressure);
    const el = height > 0 ? d.give('EL', 'pressure of the height', height, unit.pressure) : '';
    const r = hundreds(setting, 'Q');
    const half = hundreds(setting, '(Q / 2)');
    const nothing = `0 ${unit.p}`;
    d.step('R', 'Pressure that is needed', `NP + FL${height > 0 ? ' + EL' : ''}`, unit.pressure);
    d.step(
      'P1',
      'One pump alone moves all the flow and makes',
      `max(S - b * ${r}, ${nothing})`,
      unit.pressure,
    );
    d.step(
      'PP',
      'In parallel each moves half the flow; both make',
      `max(S - b * ${half}, ${nothing})`,
      unit.pressure,
    );
    d.step('PS', 'In series each moves all the flow, and pressures add; both make', '2 * P1', unit.pressure);
    const decide = (value: (symbol: string) => number) => {
      const need = value('R');
      if (value('P1') >= need) return WAYS[0];
      if (value('PP') >= need && value('PP') >= value('PS')) return WAYS[1];
      if (value('PS') >= need && value('PS') > value('PP')) return WAYS[2];
      return value('PP') >= need ? WAYS[1] : WAYS[3];
    };
    d.slip('staging-confused', { formulas: { PP: '2 * P1', PS: `max(S - b * ${half}, ${nothing})` } });
    d.slip('shutoff-taken', { formulas: { P1: 'S * 1', PP: 'S * 1', PS: '2 * S' } });
    if (height > 0) d.slip('elevation-dropped', { formulas: { R: 'NP + FL' } });
    d.slip('friction-dropped', { formulas: { R: `NP${height > 0 ? ' + EL' : ''}` } });
    d.bound('R', pressures(setting, 60), pressures(setting, 600));
    const print = (value: number) => `${Math.round(value)} ${unit.pressure}`;
    const question = wording.pick([
      `${engine(wording)} carries two equal pumps that can be staged in parallel or in series. Each ${curve}. The lay wants ${q} with ${np} at the nozzle; its hose takes ${fl} at that flow${el === '' ? ', and it is level' : `, and its height ${el}`}. Which is the least that will do: one pump alone, two in parallel, two in series, or neither staging?`,
      `A lay at ${place(wording)} needs ${q}: ${np} at the nozzle and ${fl} for friction${el === '' ? ', on the level' : `, and ${el} for the height`}. There are two equal pumps; each ${curve}. How are they to be staged: one pump alone, two in parallel, two in series, or will neither staging do?`,
    ]);
    return d.draft(question, 'how to stage the pumps', {
      word: {
        options: WAYS,
        decide,
        text: (word, value) =>
          `${word}: ${print(value('R'))} is needed; one pump makes ${print(value('P1'))}, two in parallel ${print(value('PP'))}, two in series ${print(value('PS'))} at that flow`,
        wrong: {
          'one pump alone': { slip: 'shutoff-taken' },
          'two in parallel': { slip: 'staging-confused' },
          'two in series': { slip: 'staging-confused' },
          'neither staging': { slip: 'one-pump-alone', why: 'Only one pump’s curve was looked at.' },
        },
      },
      keyedBySolver: true,
      crossCheck: (value) => {
        const series = decide(value) === 'two in series';
        const hand = series ? value('PS') : value('PP');
        if (hand <= 0) return undefined;
        const { pressure } = staged(
          [pump, pump],
          series ? 'series' : 'parallel',
          { static: 0, loss: hand / (flow / 100) ** 2 },
          units,
        );
        return beside(hand, pressure, unit.pressure, NO_GAP);
      },
    });
  },
});
