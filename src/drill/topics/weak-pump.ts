import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { pressures } from '../parts.js';
import { beside, drawPump, givePump, NO_GAP, runout, weaker } from '../pumps.js';
import { staged } from '../solver/two-pumps.js';
import { giveLoad, PARALLEL, round, type TwoPumpFacts } from '../staged-load.js';

export const weakPump = topic<TwoPumpFacts & { readonly ask: 'total' | 'least' }>({
  id: 'weak-pump',
  title: 'Unlike pumps in parallel: is the weaker one shut out?',
  levels: levelsTo(5),
  draw(draw, setting) {
    const a = drawPump(draw, setting);
    const b = weaker(a, draw, setting, 12, 30);
    const step = setting.units === 'us' ? 5 : 25;
    const out = draw.chance(0.6);
    const part = draw.pick([0.25, 0.5, 0.75]);
    const held = out
      ? round(b.shutoff + (a.shutoff - b.shutoff) * part * 0.8, step)
      : round(b.shutoff * (1 - 0.25 * part), step);
    return { pumps: [a, b], load: { held }, ask: setting.level === 1 ? 'least' : 'total' };
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
