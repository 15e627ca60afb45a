import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import {
  appliances,
  besideSolver,
  drawHeight,
  drawLength,
  elevation,
  friction,
  giveHose,
  hoseFacts,
  lengths,
  nozzlePressure,
  pumpRounding,
  sizes,
} from '../parts.js';
import { count } from '../print.js';
import type { SketchPart } from '../problem.js';
import type { HoseSize } from '../rules/rule-set.js';
import type { LayLine } from '../solver/required-pressure.js';

export interface ProgressiveLayFacts {
  readonly trunk: HoseSize;
  /** Length of trunk from the pump to the first wye, and from wye to wye. */
  readonly spacing: number;
  readonly lateral: HoseSize;
  readonly lateralLength: number;
  readonly laterals: number;
  /** Flow of each lateral. */
  readonly flow: number;
  /** Height of the last wye above the pump. */
  readonly height: number;
}

export const progressiveLay = topic<ProgressiveLayFacts>({
  id: 'progressive-lay',
  title: 'Progressive lay with laterals open',
  levels: levelsTo(5),
  lacks: (setting) =>
    sizes(setting, ['1', '1.5']).length < 2 || setting.rules.friction.method !== 'coefficient'
      ? 'it has no friction for 1-1/2 in trunk and 1 in laterals at every flow'
      : undefined,
  draw(draw, setting) {
    const us = setting.units === 'us';
    return {
      trunk: '1.5',
      lateral: '1',
      spacing: drawLength(draw, setting, lengths(setting, 100), lengths(setting, 250)),
      lateralLength: us ? 100 : 30,
      laterals: draw.whole(2, Math.min(6, 2 + setting.level)),
      flow: us ? draw.pick([10, 15, 20, 25]) : draw.pick([40, 50, 60, 80, 90]),
      height:
        setting.level === 1 && draw.chance(0.4) ? 0 : drawHeight(draw, setting, 20, 60 + 20 * setting.level),
    };
  },
  pose({ trunk, spacing, lateral, lateralLength, laterals, flow, height }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const [main, side] = [hoseFacts(setting, trunk), hoseFacts(setting, lateral)];
    const n = laterals;
    const s = giveHose(d, '1', 'trunk', main, 'trunk to the first wye and from wye to wye', spacing);
    const l = giveHose(d, '2', 'laterals', side, 'length of each lateral', lateralLength);
    const q = d.give('q', 'flow of each lateral', flow, unit.flow);
    d.give('N', 'laterals open', n, '', count(n));
    const up = height === 0 ? '' : d.give('H', 'height of the last wye above the pump', height, unit.length);
    const np = nozzlePressure(d, 'fog', 'NP', true);
    const trunkSum: string[] = [];
    const whole: Record<string, string> = {};
    const single: Record<string, string> = {};
    for (let i = 1; i <= n; i++) {
      const carried = n - i + 1;
      d.step(
        `Q${i}`,
        `Flow of trunk section ${i}: ${carried === n ? 'all laterals' : `the ${carried === 1 ? 'last lateral' : `${count(carried)} laterals beyond it`}`}`,
        i === 1 ? 'N * q' : `Q${i - 1} - q`,
        unit.flow,
      );
      friction(d, {
        symbol: `T${i}`,
        say: `Friction loss in trunk section ${i}`,
        size: trunk,
        flow: `Q${i}`,
        flowValue: carried * flow,
        length: 'L1',
        tag: '1',
        quiet: true,
      });
      trunkSum.push(`T${i}`);
      whole[`Q${i}`] = 'N * q';
      single[`Q${i}`] = '1 * q';
    }
    d.step('FL1', 'Friction loss in the trunk', trunkSum.join(' + '), unit.pressure);
    friction(d, {
      symbol: 'FL2',
      say: 'Friction loss in the last lateral',
      size: lateral,
      flow: 'q',
      flowValue: flow,
      length: 'L2',
      tag: '2',
      quiet: true,
    });
    appliances(d, n, n * flow, 'wyes in the trunk up to the last lateral');
    if (height !== 0) elevation(d);
    const right = `NP + FL1 + FL2 + AL${height === 0 ? '' : ' + EL'}`;
    d.step('PDP', 'Pump discharge pressure', right, unit.pressure, pumpRounding(setting));
    d.slip('all-flow-to-end', { formulas: whole });
    d.slip('one-leg-in-feeder', {
      formulas: single,
      why: 'One lateral’s flow was taken for the whole trunk: every section carries all laterals beyond it.',
    });
    d.slip('lateral-forgotten', { formulas: { PDP: right.replace(' + FL2', '') } });
    d.slip('feeder-forgotten', {
      formulas: { PDP: right.replace(' + FL1', '') },
      why: 'The friction in the trunk was forgotten.',
    });
    d.slip('nozzle-pressure-dropped', { formulas: { PDP: right.replace('NP + ', '') } });
    d.slip('legs-added', {
      formulas: { PDP: right.replace('FL2', `${n} * FL2`) },
      why: 'The losses of all laterals were added: laterals side by side count once.',
    });
    if (height !== 0) {
      d.slip('elevation-reversed', { formulas: { PDP: right.replace('+ EL', '- EL') } });
      d.slip('elevation-dropped', { formulas: { PDP: right.replace(' + EL', '') } });
      d.slip('slope-as-height', { set: { H: n * spacing } });
    }
    d.bound('PDP', 0, main.limit);
    const where =
      up === ''
        ? 'All is level.'
        : `The last wye is ${up} above the pump, the laterals run level along the slope.`;
    const question = wording.pick([
      `A progressive lay at ${place(wording)} has ${count(n)} wyes on a trunk of ${main.name} hose, the first ${s} from the pump and then one every ${s}, the last at the trunk’s end. At each, a lateral of ${l} of ${side.name} hose feeds a fog nozzle of ${q}; all are open. ${where} What must the pump discharge for the last nozzle?`,
      `A trunk of ${main.name} hose has a wye every ${s}, ${count(n)} of them, and ends at the last. Each feeds ${l} of ${side.name} hose with a fog nozzle flowing ${q}, and all are working. ${where} Find the pump discharge pressure for the nozzle on the last lateral.`,
    ]);
    const sketch: SketchPart[] = [{ kind: 'pump', label: 'pump' }];
    for (let i = 1; i <= n; i++)
      sketch.push(
        { kind: 'hose', label: `${s} of ${main.name}` },
        {
          kind: 'branch',
          label: `wye ${i}`,
          legs: [
            [
              { kind: 'hose', label: `${l} of ${side.name}` },
              { kind: 'nozzle', label: q },
            ],
          ],
        },
      );
    const line = (left: number): LayLine => ({
      hose: trunk,
      length: spacing,
      rise: height / n,
      end: [
        { hose: lateral, length: lateralLength, end: { flow, pressure: np } },
        ...(left > 1 ? [line(left - 1)] : []),
      ],
    });
    return d.draft(question, 'pump discharge pressure', {
      sketch,
      crossCheck: (value) =>
        besideSolver(setting, value('PDP'), [line(n)], {
          appliances: value('AL'),
          ...(height === 0 ? {} : { elevation: value('EL'), rise: height }),
        }),
    });
  },
});
