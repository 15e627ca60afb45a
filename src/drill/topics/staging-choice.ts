import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { pressures } from '../parts.js';
import { beside, drawPump, givePump, hundreds, NO_GAP, runout } from '../pumps.js';
import { type SquarePump, staged } from '../solver/two-pumps.js';
import { round } from '../staged-load.js';

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
  levels: levelsTo(4),
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
    // Where both stagings will do, neither is the one that is needed.
    const need = nozzle + rest;
    if (one < need && par >= need && 2 * one >= need) return undefined;
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
      'Pressure of one pump, which moves all of the flow',
      `max(S - b * ${r}, ${nothing})`,
      unit.pressure,
    );
    d.step(
      'PP',
      'Pressure of both in parallel, each with half of the flow',
      `max(S - b * ${half}, ${nothing})`,
      unit.pressure,
    );
    d.step('PS', 'Pressure of both in series, each with all of the flow', '2 * P1', unit.pressure);
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
    const better = (way: string, value: (symbol: string) => number) => value(way) >= value('R');
    const print = (value: number) => `${Math.round(value)} ${unit.pressure}`;
    const listed = `: ${WAYS[0]}, ${WAYS[1]}, ${WAYS[2]}, or ${WAYS[3]}`;
    const question = wording.pick([
      `${engine(wording)} carries two equal pumps that can be staged in parallel or in series. Each ${curve}. The lay wants ${q} with ${np} at the nozzle; its hose takes ${fl} at that flow${el === '' ? ', and it is level' : `, and its height ${el}`}. Which is the least that will do${listed}?`,
      `A lay at ${place(wording)} needs ${q}: ${np} at the nozzle and ${fl} for friction${el === '' ? ', on the level' : `, and ${el} for the height`}. There are two equal pumps; each ${curve}. What is the least that will do${listed}?`,
    ]);
    return d.draft(question, 'how to stage the pumps', {
      word: {
        options: WAYS,
        listed,
        decide,
        text: (word, value) =>
          `${word}: ${print(value('R'))} is needed; one pump makes ${print(value('P1'))}, two in parallel ${print(value('PP'))}, two in series ${print(value('PS'))} at that flow`,
        against: (option, value) => ({
          slip: 'staging-confused',
          why: {
            [WAYS[0]]: `One pump alone makes ${print(value('P1'))} at this flow, and ${print(value('R'))} is needed.`,
            [WAYS[1]]: better('PP', value)
              ? `Two in parallel will do, but it is not the least that does: one pump alone makes ${print(value('P1'))}.`
              : `In parallel the pumps make ${print(value('PP'))} at this flow, where ${print(value('R'))} is needed or series makes more.`,
            [WAYS[2]]: better('PS', value)
              ? `Two in series will do, but less does too: one pump makes ${print(value('P1'))}, two in parallel ${print(value('PP'))}.`
              : `In series each pump moves all the flow, and both make ${print(value('PS'))}: ${print(value('R'))} is needed.`,
            [WAYS[3]]: `${print(value('R'))} is needed, and ${print(Math.max(value('P1'), value('PP'), value('PS')))} is to be had.`,
          }[option as (typeof WAYS)[number]],
        }),
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
