import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import {
  appliances,
  besideSolver,
  drawFlow,
  drawHeight,
  drawLength,
  elevation,
  friction,
  giveHose,
  hoseFacts,
  lengths,
  lineEnd,
  lineSizes,
  pumpRounding,
} from '../parts.js';
import { count } from '../print.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface AppliancesFacts {
  readonly hose: HoseSize;
  readonly length: number;
  readonly flow: number;
  readonly count: number;
  /** Height of the nozzle above the pump; on the level where missing. */
  readonly height?: number;
}

export const appliancesInLine = topic<AppliancesFacts>({
  id: 'appliances',
  title: 'Appliances in the line',
  levels: levelsTo(5),
  draw(draw, setting) {
    const hose = draw.pick(lineSizes(setting));
    const length = drawLength(
      draw,
      setting,
      lengths(setting, 200),
      lengths(setting, 400 + 100 * setting.level),
    );
    const flow = drawFlow(draw, setting, hose);
    const number = draw.whole(2, 3 + Math.floor(setting.level / 2));
    return setting.level >= 3
      ? { hose, length, flow, count: number, height: drawHeight(draw, setting, 20, 100) }
      : { hose, length, flow, count: number };
  },
  pose({ hose, length, flow, count: number, height }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const facts = hoseFacts(setting, hose);
    const len = giveHose(d, '', 'hose', facts, 'length of the line', length);
    const q = d.give('Q', 'flow', flow, unit.flow);
    const up = height === undefined ? '' : d.give('H', 'height above the pump', height, unit.length);
    const end = lineEnd(d, hose, q);
    friction(d, {
      symbol: 'FL',
      say: 'Friction loss in the hose',
      size: hose,
      flow: 'Q',
      flowValue: flow,
      length: 'L',
    });
    appliances(d, number, flow, 'gated wyes in the line, each with only one side open');
    if (height === undefined) {
      d.step('PDP', 'Pump discharge pressure', 'NP + FL + AL', unit.pressure, pumpRounding(setting));
    } else {
      elevation(d);
      d.step('PDP', 'Pump discharge pressure', 'NP + FL + AL + EL', unit.pressure, pumpRounding(setting));
      d.slip('elevation-reversed', { formulas: { PDP: 'NP + FL + AL - EL' } });
      d.slip('elevation-dropped', { formulas: { PDP: 'NP + FL + AL' } });
    }
    d.slip('friction-dropped', { formulas: { PDP: d.formulaOf('PDP').replace('FL + ', '') } });
    d.bound('PDP', 0, facts.limit);
    const where = up === '' ? 'on the level' : `${up} above the pump`;
    const question = wording.pick([
      `At ${place(wording)} a line of ${len} of ${facts.name} hose passes ${count(number)} gated wyes, each with only one side open, and leads to ${end.words}, ${where}. What must the pump discharge?`,
      `${len} of ${facts.name} hose with ${count(number)} gated wyes in it, one side of each shut, runs from the pump to ${end.words}, ${where}. Find the pump discharge pressure.`,
    ]);
    return d.draft(question, 'pump discharge pressure', {
      sketch: [
        { kind: 'pump', label: 'pump' },
        { kind: 'hose', label: `${len} of ${facts.name}`, ...(up === '' ? {} : { rise: `up ${up}` }) },
        { kind: 'appliance', label: `${number} gated wyes` },
        { kind: 'nozzle', label: end.label },
      ],
      crossCheck: (value) =>
        besideSolver(
          setting,
          value('PDP'),
          [{ hose, length, rise: height ?? 0, end: { flow, pressure: end.pressure } }],
          height === undefined
            ? { appliances: value('AL') }
            : { appliances: value('AL'), elevation: value('EL'), rise: height },
        ),
    });
  },
});
