import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import { count } from '../print.js';

export interface TenderShuttleFacts {
  readonly tank: number;
  /** Minutes to fill and to dump, and distance each way; or the whole cycle. */
  readonly fill?: number;
  readonly dump?: number;
  readonly distance?: number;
  readonly cycle?: number;
  readonly tenders: number;
}

export const tenderShuttle = topic<TenderShuttleFacts>({
  id: 'tender-shuttle',
  title: 'Tender shuttle',
  levels: levelsTo(3),
  draw(draw, setting) {
    const us = setting.units === 'us';
    const tank = us ? 100 * draw.whole(10, 40) : 500 * draw.whole(8, 30);
    const tenders = setting.level >= 3 ? draw.whole(2, 4) : 1;
    if (setting.level === 1) return { tank, cycle: draw.whole(8, 30), tenders };
    const distance = us ? draw.stepped(1, 6, 0.5) : draw.stepped(1, 10, 0.5);
    return { tank, fill: draw.whole(2, 6), dump: draw.whole(1, 4), distance, tenders };
  },
  pose({ tank, fill = 0, dump = 0, distance, cycle = 0, tenders }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules, units } = setting;
    const t = d.give('T', 'tank of each tender', tank, unit.volume);
    const n = d.give('n', 'tenders', tenders, '', count(tenders));
    const { shuttle } = rules;
    d.rule('u', 'part of the tank that is delivered', shuttle.usable, '', shuttle.source);
    let words: string;
    if (distance === undefined) {
      const c = d.give('c', 'time of one round trip, filling and dumping in it', cycle, 'min');
      d.slip('one-way-for-round-trip', {
        set: { c: cycle / 2 },
        why: 'The time of the round trip was halved, as for one way.',
      });
      words = `one round trip with filling and dumping takes ${c}`;
    } else {
      const f = d.give('f', 'time to fill', fill, 'min');
      const e = d.give('g', 'time to dump', dump, 'min');
      const m = d.give('D', 'distance each way', distance, unit.distance);
      d.rule('t0', 'minutes of each leg, whatever its length', shuttle.fixed, 'min', shuttle.source);
      d.rule(
        't1',
        `minutes of each ${units === 'us' ? 'mile' : 'kilometre'}`,
        shuttle.per_distance,
        'min',
        shuttle.source,
      );
      const one = units === 'us' ? '(1 mile)' : '(1 km)';
      d.step('w', 'Time of one leg', `t0 + t1 * D / ${one}`, 'min');
      d.step('c', 'Time of the round trip: fill, dump and two legs', 'f + g + 2 * w', 'min');
      d.slip('one-way-for-round-trip', { formulas: { c: 'f + g + w' } });
      d.slip('handling-forgotten', { formulas: { c: '2 * w' } });
      words = `filling takes ${f}, dumping ${e}, and the fill site is ${m} away, each way`;
    }
    d.step('Q', 'Flow that the shuttle keeps up', 'n * u * T / c', unit.flow);
    d.slip('reserve-forgotten', {
      set: { u: 1 },
      why: 'The whole tank was counted: a tenth of it is not delivered.',
    });
    d.slip('half-sum', { formulas: { Q: 'n * u * T / c / 2' }, why: 'Half of the flow was taken.' });
    if (tenders > 1)
      d.slip('one-leg-in-feeder', { set: { n: 1 }, why: 'One tender was counted for all of them.' });
    d.slip('wrong-gallon', {
      formulas: { Q: `n * u * T / c * ${units === 'us' ? 1.201 : 0.22}` },
      why:
        units === 'us'
          ? 'Imperial gallons were turned into US ones that were US ones already.'
          : 'Imperial gallons were given in place of litres.',
    });
    d.slip('unit-slip', {
      formulas: { Q: 'n * u * T / c * 60' },
      why: 'The flow was given for an hour in place of a minute.',
    });
    d.bound('Q', 10, 12000);
    const who =
      tenders === 1
        ? 'A tender carries'
        : `${n.replace(/^./, (c) => c.toUpperCase())} equal tenders each carry`;
    return d.draft(
      wording.pick([
        `${who} ${t} to a fire at ${place(wording)}; ${words}. What flow can the shuttle keep up?`,
        `${who} ${t}; ${words}. How much water a minute does the shuttle deliver on the whole?`,
      ]),
      'flow that the shuttle keeps up',
      {
        sketch: [
          { kind: 'source', what: 'tender', label: `${tenders} × ${t}` },
          { kind: 'source', what: 'tank', label: 'portable tank' },
        ],
      },
    );
  },
});
