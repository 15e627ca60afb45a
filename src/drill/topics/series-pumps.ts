import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { beside, drawPump, givePump, hundreds, NO_GAP, runout, weaker } from '../pumps.js';
import { staged } from '../solver/two-pumps.js';
import { drawLoad, giveLoad, round, SERIES, type TwoPumpFacts } from '../staged-load.js';

export const seriesPumps = topic<TwoPumpFacts & { readonly flow?: number }>({
  id: 'series-pumps',
  title: 'Two pumps in series',
  levels: levelsTo(3),
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
