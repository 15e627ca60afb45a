import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
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
  nozzlePressure,
  pumpRounding,
  SUPPLY,
  sizes,
} from '../parts.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface SiameseFacts {
  readonly hose: HoseSize;
  readonly length: number;
  /** Flow of both lines together. */
  readonly flow: number;
  readonly height?: number;
}

export const siamese = topic<SiameseFacts>({
  id: 'siamese',
  title: 'Two lines joined by a siamese',
  levels: levelsTo(5),
  draw(draw, setting) {
    const among = sizes(setting, ['1.75', '2', ...SUPPLY.slice(0, 3)]);
    const hose = draw.pick(among.length > 0 ? among : sizes(setting));
    const length = drawLength(
      draw,
      setting,
      lengths(setting, 200),
      lengths(setting, 400 + 80 * setting.level),
    );
    const facts = { hose, length, flow: 2 * drawFlow(draw, setting, hose) };
    return setting.level >= 3 ? { ...facts, height: drawHeight(draw, setting, 20, 60) } : facts;
  },
  pose({ hose, length, flow, height }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const facts = hoseFacts(setting, hose);
    const len = giveHose(d, '', 'hose of each line', facts, 'length of each line', length);
    const q = d.give('Q', 'flow of the monitor', flow, unit.flow);
    const up =
      height === undefined ? '' : d.give('H', 'height of the monitor above the pump', height, unit.length);
    const np = nozzlePressure(d, 'smooth_master');
    d.step('q', 'Flow of each line: half of it', 'Q / 2', unit.flow);
    d.slip('full-flow-each-line', { formulas: { q: 'Q * 1' } });
    friction(d, {
      symbol: 'FL',
      say: 'Friction loss of the lines; side by side they count once',
      size: hose,
      flow: 'q',
      flowValue: flow / 2,
      length: 'L',
    });
    appliances(d, 1, flow, 'monitor with its siamese, as one appliance', true);
    if (height !== undefined) elevation(d);
    const right = height === undefined ? 'NP + FL + AL' : 'NP + FL + AL + EL';
    d.step('PDP', 'Pump discharge pressure', right, unit.pressure, pumpRounding(setting));
    d.slip('legs-added', {
      formulas: { PDP: right.replace('FL', '2 * FL') },
      why: 'The losses of both lines were added: side by side they count once.',
    });
    d.slip('friction-dropped', { formulas: { PDP: right.replace(' + FL', '') } });
    if (height !== undefined) d.slip('elevation-reversed', { formulas: { PDP: 'NP + FL + AL - EL' } });
    d.bound('PDP', 0, facts.limit);
    const where = up === '' ? 'on the level' : `${up} above the pump`;
    const question = wording
      .pick([
        `${engine(wording)} at ${place(wording)} feeds a monitor, ${where}, through two equal lines, each ${len} of ${facts.name} hose, joined by the monitor's own siamese. Its smooth-bore tip flows ${q}. What must the pump discharge?`,
        `Two lines of ${facts.name} hose, ${len} each, lie side by side from the pump to the siamese inlet of a monitor, ${where}. The monitor's smooth-bore tip flows ${q}. Find the pump discharge pressure.`,
      ])
      .replaceAll("'", '’');
    return d.draft(question, 'pump discharge pressure', {
      sketch: [
        { kind: 'pump', label: 'pump' },
        {
          kind: 'hose',
          label: `${len} of ${facts.name}`,
          lines: 2,
          ...(up === '' ? {} : { rise: `up ${up}` }),
        },
        { kind: 'nozzle', label: `monitor, ${q}` },
      ],
      crossCheck: (value) =>
        besideSolver(
          setting,
          value('PDP'),
          [{ hose, length, lines: 2, rise: height ?? 0, end: { flow, pressure: np } }],
          {
            appliances: value('AL'),
            ...(height === undefined ? {} : { elevation: value('EL'), rise: height }),
          },
        ),
    });
  },
});
