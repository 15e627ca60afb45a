import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { hoseFacts } from '../parts.js';
import { count } from '../print.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface WaterMinutesFacts {
  readonly tank: number;
  readonly nozzles: number;
  /** Flow of each nozzle. */
  readonly flow: number;
  /** Dry hose that is filled from the tank first. */
  readonly fill?: { readonly hose: HoseSize; readonly length: number };
}

export const waterMinutes = topic<WaterMinutesFacts>({
  id: 'water-minutes',
  title: 'Minutes of water',
  levels: levelsTo(4),
  draw(draw, setting) {
    const us = setting.units === 'us';
    // Mop-up and line work: enough minutes that a reserve forgotten is more than a minute or two.
    const tank = us ? 50 * draw.whole(8, 30) : 250 * draw.whole(6, 23);
    const nozzles = draw.whole(setting.level === 1 ? 1 : 2, Math.min(4, 1 + setting.level));
    const flow = us ? draw.stepped(6, 20, 2) : draw.stepped(20, 80, 5);
    if (setting.level < 4) return { tank, nozzles, flow };
    const length = (us ? 100 : 30) * draw.whole(6, 10);
    return { tank, nozzles, flow, fill: { hose: draw.pick<HoseSize>(['1.5', '1.75', '2.5']), length } };
  },
  pose({ tank, nozzles, flow, fill }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules } = setting;
    const v = d.give('T', 'water in the tank', tank, unit.volume);
    const q = d.give('q', 'flow of each nozzle', flow, unit.flow);
    d.give('n', 'nozzles', nozzles, '', count(nozzles));
    d.rule('r', 'part of the tank kept in reserve', rules.tank.reserve, '', rules.tank.source);
    const nozzleWords = nozzles === 1 ? `one nozzle of ${q}` : `${count(nozzles)} nozzles of ${q} each`;
    d.step('U', 'Water that may be used', 'T * (1 - r)', unit.volume);
    d.slip('reserve-forgotten', { set: { r: 0 } });
    let hoseWords = 'The hose is already full.';
    if (fill) {
      const hose = hoseFacts(setting, fill.hose);
      const a = d.give('d', 'inside diameter of the hose', hose.bore, unit.bore, hose.name);
      const l = d.give('L', 'length of dry hose', fill.length, unit.length);
      hoseWords = `First it fills ${l} of dry ${a} hose.`;
      d.cite('a hose is taken as a cylinder of its nominal bore', 'NWCG Firefighter Math 3.2');
      d.step('F', 'Water that fills the hose', '0.7854 * d^2 * L', unit.volume);
      d.slip('line-fill-forgotten', { formulas: { F: '0 * 0.7854 * d^2 * L' } });
      d.slip('bore-not-squared', { formulas: { F: `0.7854 * d * L * (1 ${unit.d})` } });
    }
    d.step('Q', 'Flow of all nozzles', 'n * q', unit.flow);
    d.slip('one-leg-in-feeder', {
      set: { n: nozzles === 1 ? 2 : 1 },
      why: nozzles === 1 ? 'The flow was doubled.' : 'One nozzle’s flow was taken for all of them.',
    });
    const left = fill ? '(U - F)' : 'U';
    d.step('t', 'Time until the reserve is reached', `${left} / Q`, 'min');
    d.slip('wrong-gallon', {
      formulas: { t: `${left} / Q ${setting.units === 'us' ? '* 1.201' : '/ 3.785'}` },
      why: 'Gallons of two kinds, or gallons and litres, were mixed.',
    });
    d.slip('unit-slip', {
      formulas: { t: `${left} / Q / 60` },
      why: 'The flow is a minute’s already: it was divided by 60 once more.',
    });
    d.slip('half-sum', {
      formulas: { t: `T * r / Q` },
      why: 'The reserve was used up in place of being kept.',
    });
    d.bound('t', 5, 60);
    const question = wording.pick([
      `${setting.rig ?? `${engine(wording)} at ${place(wording)}`} has ${v} in its tank and feeds ${nozzleWords}. ${hoseWords} After how many minutes is the tank down to its reserve?`,
      `With ${v} on board${setting.rig ? ` ${setting.rig}` : ''} and ${nozzleWords} open, how long does the water last if the reserve stays in the tank? ${hoseWords}`,
    ]);
    return d.draft(question, 'minutes of water', {
      sketch: [
        { kind: 'source', what: 'tank', label: `tank, ${v}` },
        { kind: 'pump', label: 'pump' },
        ...(fill ? [{ kind: 'hose' as const, label: `${fill.length} ${unit.length} of hose` }] : []),
        { kind: 'nozzle', label: `${nozzles} × ${q}` },
      ],
    });
  },
});
