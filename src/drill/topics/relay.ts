import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import {
  besideSolver,
  drawFlow,
  drawHeight,
  elevation,
  friction,
  hoseFacts,
  lengths,
  pressures,
  SUPPLY,
  sizes,
} from '../parts.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface RelayFacts {
  readonly hose: HoseSize;
  readonly flow: number;
  readonly discharge: number;
  /** Height that the next pump stands above this one. */
  readonly height?: number;
}

export const relay = topic<RelayFacts>({
  id: 'relay',
  title: 'Relay: how far apart the pumps may stand',
  levels: levelsTo(4),
  draw(draw, setting) {
    const among = sizes(setting, ['1.5', '1.75', ...SUPPLY]);
    const hose = draw.pick(among);
    const { limit } = hoseFacts(setting, hose);
    const us = setting.units === 'us';
    const step = us ? 5 : 25;
    const most = Math.min(limit, pressures(setting, 200));
    const discharge = step * draw.whole(Math.ceil((most * 0.6) / step), Math.floor(most / step));
    const facts = { hose, flow: drawFlow(draw, setting, hose), discharge };
    return setting.level >= 3 ? { ...facts, height: drawHeight(draw, setting, 20, 90) } : facts;
  },
  pose({ hose, flow, discharge, height }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules } = setting;
    const facts = hoseFacts(setting, hose);
    d.give('d', 'hose', facts.bore, unit.bore, facts.name);
    const q = d.give('Q', 'flow', flow, unit.flow);
    const p = d.give('PDP', 'pump discharge pressure', discharge, unit.pressure);
    const up =
      height === undefined ? '' : d.give('H', 'height of the next pump above this one', height, unit.length);
    d.rule(
      'IP',
      'pressure to keep at the next intake',
      rules.relay.residual,
      unit.pressure,
      rules.relay.source,
    );
    d.rule('U', 'length that the friction figure is for', 100, unit.length, 'as the friction rule has it');
    friction(d, {
      symbol: 'FL',
      say: `Friction loss in 100 ${unit.length}`,
      size: hose,
      flow: 'Q',
      flowValue: flow,
      length: 'U',
      quiet: true,
    });
    if (height !== undefined) elevation(d);
    const left = height === undefined ? 'PDP - IP' : 'PDP - IP - EL';
    d.step('X', 'Pressure that friction may use up', left, unit.pressure);
    d.step('L', 'Distance to the next pump', 'X / FL * U', unit.length);
    d.slip('residual-dropped', { formulas: { X: left.replace(' - IP', '') } });
    if (rules.friction.method === 'coefficient') {
      d.slip('flow-not-squared', { formulas: { FL: `C * (Q / (100 ${unit.q}))` } });
      d.slip('wrong-power', {
        formulas: { FL: `C * (Q / (100 ${unit.q}))^2 / 2` },
        why: 'The loss of 50 in place of 100 was used.',
      });
    } else
      d.slip('wrong-coefficient', {
        formulas: { FL: `2 * (${d.formulaOf('FL')})` },
        why: 'The loss of twice the length was used.',
      });
    d.slip('point-misplaced', {
      formulas: { L: `X / FL * (10 ${unit.l})` },
      why: `The friction figure was taken to be for 10 ${unit.length}: it is for 100.`,
    });
    d.slip('half-sum', { formulas: { L: 'X / FL * U / 2' }, why: 'Half of the distance was taken.' });
    if (height !== undefined) {
      d.slip('elevation-dropped', { formulas: { X: 'PDP - IP' } });
      d.slip('elevation-reversed', { formulas: { X: 'PDP - IP + EL' } });
    }
    d.slip('nozzle-pressure-swapped', {
      set: { IP: rules.nozzle.fog },
      why: 'A nozzle’s pressure was kept back, where the hose feeds an intake.',
    });
    d.bound('L', lengths(setting, 100), lengths(setting, 5000));
    d.bound('X', pressures(setting, 30), pressures(setting, 300));
    const where = up === '' ? 'The ground is level.' : `The next pump stands ${up} higher.`;
    return d.draft(
      wording.pick([
        `A relay at ${place(wording)} moves ${q} through one line of ${facts.name} hose. Each pump discharges at ${p} and the residual pressure of the rule set is kept at the next intake. ${where} How much hose may lie between two pumps?`,
        `One line of ${facts.name} hose carries ${q} from a pump that discharges at ${p} to the next pump, where the rule set’s intake pressure has to be left. ${where} What is the greatest length of hose between them?`,
      ]),
      'length of hose between two pumps',
      {
        sketch: [
          { kind: 'pump', label: `pump, ${p}` },
          { kind: 'hose', label: `? of ${facts.name}, ${q}`, ...(up === '' ? {} : { rise: `up ${up}` }) },
          { kind: 'pump', label: 'next pump' },
        ],
        crossCheck: (value) =>
          besideSolver(
            setting,
            discharge,
            [{ hose, length: value('L'), rise: height ?? 0, end: { flow, pressure: rules.relay.residual } }],
            height === undefined ? {} : { elevation: value('EL'), rise: height },
          ),
      },
    );
  },
});
