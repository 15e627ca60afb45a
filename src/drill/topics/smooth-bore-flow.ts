import { withArticle, withCapitalArticle } from '../../quantity/article.js';
import { Drafting, type Setting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import { HAND, handSizes, hoseFacts, pressures } from '../parts.js';
import { inches } from '../print.js';
import type { Draw } from '../random.js';

export interface SmoothBoreFacts {
  readonly bore: number;
  readonly pressure: number;
  readonly ask: 'flow' | 'reaction' | 'pressure' | 'push';
  /** For `pressure`, and for `push`, which goes on to the reaction: the flow that the tip has to give. */
  readonly flow?: number;
}

function drawFacts(draw: Draw, setting: Setting): SmoothBoreFacts {
  const { level, rules, units } = setting;
  const among = handSizes(setting).length > 1 ? handSizes(setting) : HAND;
  const bore = draw.pick(among.flatMap((size) => hoseFacts(setting, size).tips));
  const usual = rules.nozzle.smooth_hand;
  const step = units === 'us' ? 5 : 50;
  const pressure =
    level <= 2
      ? draw.stepped(usual - 2 * step, usual + 2 * step, 2 * step)
      : draw.stepped(usual - 2 * step, usual + 4 * step, step);
  const most = rules.smooth_bore.constant * bore ** 2 * Math.sqrt(pressure);
  const round = units === 'us' ? 1 : 5;
  const flow = round * Math.round(most / round);
  if (level === 2) return { bore, pressure, ask: 'push', flow };
  if (draw.chance(0.3)) return { bore, pressure, ask: 'reaction' };
  if (draw.chance(0.3)) return { bore, pressure, ask: 'pressure', flow };
  return { bore, pressure, ask: 'flow' };
}

export const smoothBoreFlow = topic<SmoothBoreFacts>({
  id: 'smooth-bore-flow',
  title: 'Flow and reaction of a smooth-bore tip',
  levels: levelsTo(2),
  draw: drawFacts,
  pose({ bore, pressure, ask, flow = 0 }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules, units } = setting;
    const tip = units === 'us' ? `${inches(bore)} in` : `${bore} mm`;
    d.give('d', 'bore of the tip', bore, unit.bore, tip);
    const np =
      ask === 'pressure' || ask === 'push' ? '' : d.give('NP', 'nozzle pressure', pressure, unit.pressure);
    const other = rules.nozzle.smooth_master === pressure ? rules.nozzle.fog : rules.nozzle.smooth_master;
    const swapped = { set: { NP: other } };
    const at = place(wording);
    const { smooth_bore, reaction } = rules;
    const right = `r * (d / (1 ${unit.d}))^2 * (NP / (1 ${unit.p}))`;
    const giveReaction = () =>
      d.rule(
        'r',
        `reaction of a bore of 1 ${unit.bore} at 1 ${unit.pressure}`,
        reaction.smooth,
        unit.force,
        reaction.source,
      );
    if (ask === 'reaction') {
      giveReaction();
      d.step('R', 'Nozzle reaction', right, unit.force);
      d.slip('bore-not-squared', { formulas: { R: right.replace('^2', '') } });
      d.slip('nozzle-pressure-swapped', swapped);
      d.slip('root-forgotten', {
        formulas: { R: `r * (d / (1 ${unit.d}))^2 * sqrt(NP / (1 ${unit.p}))` },
        why: 'The root of the pressure was taken, as for a flow: reaction goes with the pressure itself.',
      });
      d.slip('wrong-coefficient', {
        formulas: { R: `2 * ${right}` },
        why: 'The bore of a larger tip was used: reaction was doubled.',
      });
      return d.draft(
        wording.pick([
          `${withCapitalArticle(tip)} smooth-bore tip at ${at} works at a nozzle pressure of ${np}. How hard does it push back?`,
          `What is the nozzle reaction of ${withArticle(tip)} smooth-bore tip at a nozzle pressure of ${np}?`,
        ]),
        'nozzle reaction',
      );
    }
    d.rule(
      'k',
      `flow of a bore of 1 ${unit.bore} at 1 ${unit.pressure}`,
      smooth_bore.constant,
      unit.flow,
      smooth_bore.source,
    );
    const area = `(d / (1 ${unit.d}))^2`;
    if (ask === 'flow') {
      d.step('Q', 'Flow of the tip', `k * ${area} * sqrt(NP / (1 ${unit.p}))`, unit.flow);
      d.slip('bore-not-squared', {
        formulas: { Q: `k * d / (1 ${unit.d}) * sqrt(NP / (1 ${unit.p}))` },
      });
      d.slip('nozzle-pressure-swapped', swapped);
      d.slip('root-halved', { formulas: { Q: `k * ${area} * NP / (2 ${unit.p})` } });
      d.slip('root-forgotten', { formulas: { Q: `k * ${area} * NP / (1 ${unit.p})` } });
      d.slip(
        'wrong-gallon',
        units === 'us'
          ? {
              formulas: { Q: `k * ${area} * sqrt(NP / (1 ${unit.p})) / 1.201` },
              why: 'Imperial gallons were counted: a US gallon is smaller.',
            }
          : {
              formulas: { Q: `k * ${area} * sqrt(NP / (100 ${unit.p}))` },
              why: 'The pressure was put in bar, where the formula asks for kPa.',
            },
      );
      d.bound('Q', 2, 6000);
      return d.draft(
        wording.pick([
          `How much water does ${withArticle(tip)} smooth-bore tip at ${at} flow at a nozzle pressure of ${np}?`,
          `A nozzle with ${withArticle(tip)} smooth-bore tip works at ${np}. Find its flow.`,
          `The pitot gauge at ${withArticle(tip)} smooth-bore tip reads ${np}. What flows?`,
        ]),
        'flow of the tip',
        { sketch: [{ kind: 'nozzle', label: `${tip} smooth bore, ${np}` }] },
      );
    }
    const q = d.give('Q', 'flow wanted', flow, unit.flow);
    d.step('NP', 'Nozzle pressure', `(Q / (k * ${area}))^2 * (1 ${unit.p})`, unit.pressure);
    d.slip('root-forgotten', {
      formulas: { NP: `Q / (k * ${area}) * (1 ${unit.p})` },
      why: 'The square was not taken: pressure goes with the square of the flow.',
    });
    d.slip('bore-not-squared', { formulas: { NP: `(Q / (k * (d / (1 ${unit.d}))))^2 * (1 ${unit.p})` } });
    d.slip('wrong-power', {
      formulas: { NP: `2 * Q / (k * ${area}) * (1 ${unit.p})` },
      why: 'The ratio was doubled in place of being squared.',
    });
    d.slip('wrong-gallon', {
      set: { Q: flow * (units === 'us' ? 1.201 : 0.8) },
      why:
        units === 'us'
          ? 'Imperial gallons were counted: a US gallon is smaller.'
          : 'The flow was read wrongly off the meter.',
    });
    d.bound('NP', pressures(setting, 25), pressures(setting, 90));
    if (ask === 'push') {
      giveReaction();
      d.step('R', 'Nozzle reaction', right, unit.force);
      d.slip('bore-not-squared', {
        formulas: { R: right.replace('^2', '') },
        why: 'The bore was not squared in the reaction.',
      });
      return d.draft(
        wording.pick([
          `${withCapitalArticle(tip)} smooth-bore tip at ${at} flows ${q}. How hard does it push back?`,
          `A crew at ${at} wants ${q} from ${withArticle(tip)} smooth-bore tip. What nozzle reaction must they hold?`,
        ]),
        'nozzle reaction',
      );
    }
    return d.draft(
      wording.pick([
        `${withCapitalArticle(tip)} smooth-bore tip has to flow ${q}. What nozzle pressure does that take?`,
        `At ${at} a flow meter shows ${q} through ${withArticle(tip)} smooth-bore tip. What is the nozzle pressure?`,
      ]),
      'nozzle pressure',
    );
  },
});
