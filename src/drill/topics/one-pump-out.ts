import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine } from '../names.js';
import { beside, drawPump, givePump, hundreds, NO_GAP, runout } from '../pumps.js';
import { type SquarePump, staged } from '../solver/two-pumps.js';
import { PARALLEL, round, SERIES } from '../staged-load.js';

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
  levels: levelsTo(2),
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
