import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import {
  besideSolver,
  drawOneHose,
  friction,
  giveHose,
  hoseFacts,
  lineEnd,
  lineSizes,
  pumpRounding,
} from '../parts.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface SingleLineFacts {
  readonly hose: HoseSize;
  readonly length: number;
  readonly flow: number;
}

export const singleLine = topic<SingleLineFacts>({
  id: 'single-line',
  title: 'Pump pressure of a single line on the level',
  levels: levelsTo(3),
  draw: (draw, setting) => drawOneHose(draw, setting, lineSizes(setting)),
  pose({ hose, length, flow }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const facts = hoseFacts(setting, hose);
    const len = giveHose(d, '', 'hose', facts, 'length of the line', length);
    const q = d.give('Q', 'flow', flow, unit.flow);
    const end = lineEnd(d, hose, q);
    friction(d, {
      symbol: 'FL',
      say: 'Friction loss in the hose',
      size: hose,
      flow: 'Q',
      flowValue: flow,
      length: 'L',
    });
    d.step('PDP', 'Pump discharge pressure', 'NP + FL', unit.pressure, pumpRounding(setting));
    d.slip('nozzle-pressure-dropped', { formulas: { PDP: 'FL' } });
    d.slip('friction-dropped', { formulas: { PDP: 'NP' } });
    d.bound('PDP', 0, facts.limit);
    d.bound('FL', 1, facts.limit);
    const question = wording.pick([
      `${engine(wording)} at ${place(wording)} feeds one line on the level: ${len} of ${facts.name} hose to ${end.words}. What must the pump discharge?`,
      `On level ground at ${place(wording)}, ${len} of ${facts.name} hose leads to ${end.words}. Find the pump discharge pressure.`,
      `A crew at ${place(wording)} stretches ${len} of ${facts.name} hose across a flat field to ${end.words}. What pressure does the pump operator set at the discharge?`,
    ]);
    return d.draft(question, 'pump discharge pressure', {
      sketch: [
        { kind: 'pump', label: 'pump' },
        { kind: 'hose', label: `${len} of ${facts.name}` },
        { kind: 'nozzle', label: end.label },
      ],
      crossCheck: (value) =>
        besideSolver(setting, value('PDP'), [{ hose, length, end: { flow, pressure: end.pressure } }], {}),
    });
  },
});
