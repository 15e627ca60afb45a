import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { beside, drawPump, flowAgainst, givePump, NO_GAP, runout } from '../pumps.js';
import { staged } from '../solver/two-pumps.js';
import { drawLoad, giveLoad, PARALLEL, round, type TwoPumpFacts } from '../staged-load.js';

const twins = 'Two equal pumps, each behind its check valve,';

export const parallelPumps = topic<TwoPumpFacts>({
  id: 'parallel-pumps',
  title: 'Two equal pumps in parallel',
  levels: levelsTo(2),
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
