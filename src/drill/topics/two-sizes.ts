import { Drafting, type Setting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import {
  appliances,
  besideSolver,
  covers,
  drawFlow,
  drawHeight,
  drawLength,
  elevation,
  friction,
  giveHose,
  hoseFacts,
  lengths,
  lineEnd,
  pumpRounding,
  sizes,
} from '../parts.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface TwoSizesFacts {
  readonly first: HoseSize;
  readonly firstLength: number;
  readonly second: HoseSize;
  readonly secondLength: number;
  readonly flow: number;
  readonly height?: number;
}

/** Pairs of a larger hose and the next smaller ones that the rule set knows. */
function pairs(setting: Setting): [HoseSize, HoseSize][] {
  const known = sizes(setting);
  return known.flatMap((second, at) =>
    known.slice(at + 1, at + 3).map((first): [HoseSize, HoseSize] => [first, second]),
  );
}

export const twoSizes = topic<TwoSizesFacts | undefined>({
  id: 'two-sizes',
  title: 'Two sizes of hose in one line',
  levels: levelsTo(5),
  lacks: (setting) => (pairs(setting).length === 0 ? 'it knows one size of hose only' : undefined),
  draw(draw, setting) {
    const [first, second] = draw.pick(pairs(setting));
    const flow = drawFlow(draw, setting, second);
    if (!covers(setting, first, flow)) return undefined;
    const firstLength = drawLength(draw, setting, lengths(setting, 100), lengths(setting, 600));
    const secondLength = drawLength(draw, setting, lengths(setting, 100), lengths(setting, 300));
    const facts = { first, firstLength, second, secondLength, flow };
    return setting.level >= 3 ? { ...facts, height: drawHeight(draw, setting, 20, 80) } : facts;
  },
  pose(facts, setting) {
    if (facts === undefined) throw new Error('nothing to pose');
    const { first, firstLength, second, secondLength, flow, height } = facts;
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const [one, two] = [hoseFacts(setting, first), hoseFacts(setting, second)];
    const len1 = giveHose(d, '1', 'first hose', one, 'length of the first hose', firstLength);
    const len2 = giveHose(d, '2', 'second hose', two, 'length of the second hose', secondLength);
    const q = d.give('Q', 'flow', flow, unit.flow);
    const up =
      height === undefined ? '' : d.give('H', 'height of the end above the pump', height, unit.length);
    const end = lineEnd(d, second, q);
    const part = { flow: 'Q', flowValue: flow };
    friction(d, {
      ...part,
      symbol: 'FL1',
      say: `Friction loss in the ${one.name} hose`,
      size: first,
      length: 'L1',
      tag: '1',
    });
    friction(d, {
      ...part,
      symbol: 'FL2',
      say: `Friction loss in the ${two.name} hose`,
      size: second,
      length: 'L2',
      tag: '2',
    });
    const figures = new Map(d.constants.map(({ symbol, value }) => [symbol, value]));
    for (const [from, to, name] of [
      ['1', '2', one.name],
      ['2', '1', two.name],
    ]) {
      const set: Record<string, number> = {};
      for (const [symbol, value] of figures)
        if (symbol.endsWith(from)) set[`${symbol.slice(0, -1)}${to}`] = value;
      if (Object.keys(set).length > 0)
        d.slip('one-size-throughout', { set, why: `The whole line was worked as ${name} hose.` });
    }
    let appliance = 0;
    if (setting.level >= 4) {
      appliances(d, 1, flow, 'gated wyes where the sizes meet');
      appliance = 1;
    }
    if (height !== undefined) elevation(d);
    const right = [
      'NP',
      'FL1',
      'FL2',
      ...(appliance ? ['AL'] : []),
      ...(height === undefined ? [] : ['EL']),
    ].join(' + ');
    d.step('PDP', 'Pump discharge pressure', right, unit.pressure, pumpRounding(setting));
    d.slip('feeder-forgotten', {
      formulas: { PDP: right.replace(' + FL1', '') },
      why: 'The friction in the first hose was forgotten.',
    });
    d.slip('lateral-forgotten', {
      formulas: { PDP: right.replace(' + FL2', '') },
      why: 'The friction in the second hose was forgotten.',
    });
    if (height !== undefined) {
      d.slip('elevation-reversed', { formulas: { PDP: right.replace('+ EL', '- EL') } });
      d.slip('elevation-dropped', { formulas: { PDP: right.replace(' + EL', '') } });
    }
    d.bound('PDP', 0, Math.min(one.limit, two.limit));
    const joined = appliance ? ', with one gated wye (one side open) where they meet' : '';
    const where = up === '' ? 'on the level' : `${up} above the pump`;
    const question = wording.pick([
      `${engine(wording)} at ${place(wording)} feeds ${len1} of ${one.name} hose and then ${len2} of ${two.name} hose${joined}, to ${end.words}, ${where}. What must the pump discharge?`,
      `A line starts with ${len1} of ${one.name} hose and goes on with ${len2} of ${two.name} hose${joined}. It ends in ${end.words}, ${where}. Find the pump discharge pressure.`,
    ]);
    return d.draft(question, 'pump discharge pressure', {
      sketch: [
        { kind: 'pump', label: 'pump' },
        { kind: 'hose', label: `${len1} of ${one.name}` },
        ...(appliance ? [{ kind: 'appliance' as const, label: 'gated wye' }] : []),
        { kind: 'hose', label: `${len2} of ${two.name}`, ...(up === '' ? {} : { rise: `up ${up}` }) },
        { kind: 'nozzle', label: end.label },
      ],
      crossCheck: (value) =>
        besideSolver(
          setting,
          value('PDP'),
          [
            {
              hose: first,
              length: firstLength,
              end: [
                {
                  hose: second,
                  length: secondLength,
                  rise: height ?? 0,
                  end: { flow, pressure: end.pressure },
                },
              ],
            },
          ],
          {
            appliances: appliance ? value('AL') : 0,
            ...(height === undefined ? {} : { elevation: value('EL'), rise: height }),
          },
        ),
    });
  },
});
