import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import { drawOneHose, friction, giveHose, hoseFacts, sizes } from '../parts.js';
import type { SingleLineFacts } from './single-line.js';

export const frictionLoss = topic<SingleLineFacts>({
  id: 'friction-loss',
  title: 'Friction loss in hose',
  levels: levelsTo(2),
  draw: (draw, setting) => drawOneHose(draw, setting, sizes(setting)),
  pose({ hose, length, flow }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const facts = hoseFacts(setting, hose);
    const len = giveHose(d, '', 'hose', facts, 'length of the hose', length);
    const q = d.give('Q', 'flow', flow, unit.flow);
    friction(d, {
      symbol: 'FL',
      say: 'Friction loss in the hose',
      size: hose,
      flow: 'Q',
      flowValue: flow,
      length: 'L',
    });
    d.bound('FL', 2, facts.limit);
    const question = wording.pick([
      `How much pressure does friction take in ${len} of ${facts.name} hose at ${q}?`,
      `A line ${setting.rig ? `of the lay “${setting.rig}”` : `at ${place(wording)}`} is ${len} of ${facts.name} hose and carries ${q}. Find the friction loss.`,
      `${len} of ${facts.name} hose flows ${q}. What is lost to friction from one end to the other?`,
    ]);
    return d.draft(question, 'friction loss', {
      sketch: [{ kind: 'hose', label: `${len} of ${facts.name}, ${q}` }],
    });
  },
});
