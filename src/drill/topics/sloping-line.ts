import { Drafting, type Setting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import {
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
  pressures,
  pumpRounding,
} from '../parts.js';

import type { Draw } from '../random.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface SlopingLineFacts {
  readonly hose: HoseSize;
  readonly length: number;
  readonly flow: number;
  /** Height of the nozzle above or below the pump. */
  readonly height?: number;
  /** The height by the part of the line's length that it rises, in percent. */
  readonly grade?: number;
  /** The storey that the nozzle is on, in place of a height. */
  readonly storey?: number;
}

function drawFacts(draw: Draw, setting: Setting, up: boolean): SlopingLineFacts {
  const { level, rules } = setting;
  const hose = draw.pick(lineSizes(setting));
  const length = drawLength(draw, setting, lengths(setting, 200), lengths(setting, 400 + 100 * level));
  const flow = drawFlow(draw, setting, hose);
  if (up && level >= 2 && rules.storey.loss > 0 && rules.appliance.policy === 'by_flow' && draw.chance(0.3))
    return { hose, length, flow, storey: draw.whole(4, 10) };
  if (level >= 4 && draw.chance(0.5)) return { hose, length, flow, grade: 5 * draw.whole(2, 8) };
  const most = Math.min(0.5 * (length / lengths(setting, 1)), up ? 200 : 160);
  return { hose, length, flow, height: drawHeight(draw, setting, 30, most) };
}

function pose(facts: SlopingLineFacts, setting: Setting, up: boolean) {
  const d = new Drafting(setting);
  const { unit, wording, rules } = setting;
  const { hose, length, flow, height, grade, storey } = facts;
  const hoseOf = hoseFacts(setting, hose);
  const len = giveHose(d, '', 'hose', hoseOf, 'length of the line', length);
  const q = d.give('Q', 'flow', flow, unit.flow);
  const end = lineEnd(d, hose, q, true);
  let where: string;
  if (storey !== undefined) {
    d.give('S', 'storey that the nozzle is on', storey, '');
    d.rule('s', 'loss of each storey above the first', rules.storey.loss, unit.pressure, rules.storey.source);
    where = `on the ${ORDINAL[storey] ?? `${storey}th`} storey, the pump standing at the first`;
  } else if (grade !== undefined) {
    d.give('G', `height ${up ? 'gained' : 'lost'} in each 100 ${unit.length} of line`, grade, unit.length);
    where = `${up ? 'up' : 'down'} a slope; the line ${up ? 'gains' : 'loses'} ${grade} ${unit.length} of height in each 100 ${unit.length} of its length`;
  } else {
    const text = d.give('H', `height ${up ? 'above' : 'below'} the pump`, height ?? 0, unit.length);
    where = `${text} ${up ? 'above' : 'below'} the pump`;
  }
  friction(d, {
    symbol: 'FL',
    say: 'Friction loss in the hose',
    size: hose,
    flow: 'Q',
    flowValue: flow,
    length: 'L',
  });
  if (storey !== undefined) {
    d.step('EL', 'Pressure of the height', '(S - 1) * s', unit.pressure);
    d.slip('storey-of-nozzle', { formulas: { EL: 'S * s' } });
  } else {
    if (grade !== undefined) {
      d.step('H', 'Height of the end of the line', `G * (L / (100 ${unit.l}))`, unit.length);
      d.slip('slope-as-height', { formulas: { H: 'L' } });
    } else d.slip('slope-as-height', { set: { H: length } });
    elevation(d);
  }
  const [sign, wrong] = up ? ['+', '-'] : ['-', '+'];
  d.step('PDP', 'Pump discharge pressure', `NP + FL ${sign} EL`, unit.pressure, pumpRounding(setting));
  d.slip('elevation-reversed', { formulas: { PDP: `NP + FL ${wrong} EL` } });
  d.slip('elevation-dropped', { formulas: { PDP: 'NP + FL' } });
  d.slip('nozzle-pressure-dropped', { formulas: { PDP: `FL ${sign} EL` } });
  d.bound('PDP', pressures(setting, 30), hoseOf.limit);
  const question = wording.pick([
    `${engine(wording)} at ${place(wording)} feeds ${len} of ${hoseOf.name} hose to ${end.words}, ${where}. What must the pump discharge?`,
    `At ${place(wording)} a line of ${len} of ${hoseOf.name} hose leads to ${end.words}, ${where}. Find the pump discharge pressure.`,
    `${len} of ${hoseOf.name} hose runs from the pump to ${end.words}, ${where}. What pressure does the pump operator set at the discharge?`,
  ]);
  const risen = (value: (symbol: string) => number) =>
    (up ? 1 : -1) * (storey === undefined ? value('H') : (storey - 1) * STOREY[setting.units]);
  const label =
    storey !== undefined
      ? `storey ${storey}`
      : grade !== undefined
        ? `${up ? 'up' : 'down'} ${grade} in 100`
        : `${up ? 'up' : 'down'} ${height} ${unit.length}`;
  return d.draft(question, 'pump discharge pressure', {
    sketch: [
      { kind: 'pump', label: 'pump' },
      { kind: 'hose', label: `${len} of ${hoseOf.name}`, rise: label },
      { kind: 'nozzle', label: end.label },
    ],
    crossCheck: (value) => {
      const rise = risen(value);
      return besideSolver(
        setting,
        value('PDP'),
        [{ hose, length, rise, end: { flow, pressure: end.pressure } }],
        { elevation: (up ? 1 : -1) * value('EL'), rise },
      );
    },
  });
}

/** Height of a storey for the solver: 10 ft and 3 m, as the rules of 5 psi and 30 kPa take it. */
const STOREY = { us: 10, si: 3 };

const ORDINAL: Readonly<Record<number, string>> = {
  2: 'second',
  3: 'third',
  4: 'fourth',
  5: 'fifth',
  6: 'sixth',
  7: 'seventh',
  8: 'eighth',
  9: 'ninth',
  10: 'tenth',
};

export const lineUphill = topic<SlopingLineFacts>({
  id: 'line-uphill',
  title: 'Pump pressure of a line uphill',
  levels: levelsTo(5),
  draw: (draw, setting) => drawFacts(draw, setting, true),
  pose: (facts, setting) => pose(facts, setting, true),
});

export const lineDownhill = topic<SlopingLineFacts>({
  id: 'line-downhill',
  title: 'Pump pressure of a line downhill',
  levels: levelsTo(5),
  draw: (draw, setting) => drawFacts(draw, setting, false),
  pose: (facts, setting) => pose(facts, setting, false),
});
