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
  handSizes,
  hoseFacts,
  lengths,
  lineEnd,
  lineSizes,
  pressures,
  pumpRounding,
  sizes,
} from '../parts.js';
import { count } from '../print.js';
import type { Draw } from '../random.js';
import type { HoseSize } from '../rules/rule-set.js';

export interface WyeEqualFacts {
  readonly feeder: HoseSize;
  readonly feederLength: number;
  readonly leg: HoseSize;
  readonly legLength: number;
  /** Flow of each leg. */
  readonly flow: number;
  readonly legs: number;
}

/** A leg, with a feeder of the same size or larger that bears the flow of all legs. */
function drawHose(draw: Draw, setting: Setting, legs: number) {
  const leg = draw.pick(lineSizes(setting));
  const flow = drawFlow(draw, setting, leg);
  const feeders = sizes(setting).filter((size) => {
    const { bore, flows } = hoseFacts(setting, size);
    const total = legs * flow;
    return bore >= hoseFacts(setting, leg).bore && covers(setting, size, total) && total <= flows[1] * 1.1;
  });
  return feeders.length === 0 ? undefined : { leg, flow, feeder: draw.pick(feeders.slice(0, 2)) };
}

/** Whether any two legs can be fed by hose that the rule set knows. */
function lacks(setting: Setting): string | undefined {
  const known = sizes(setting);
  const legs = lineSizes(setting);
  const can = legs.some((leg) => {
    const { friction: rule } = setting.rules;
    const [least, , step] = hoseFacts(setting, leg).flows;
    const from = Math.max(least, rule.hoses[leg]?.from_flow ?? 0);
    const flows =
      rule.method === 'table' ? (rule.hoses[leg]?.table ?? []).map(([at]) => at) : [from, from + step];
    return flows.some((flow) =>
      known.some(
        (size) =>
          hoseFacts(setting, size).bore >= hoseFacts(setting, leg).bore &&
          covers(setting, size, 2 * flow) &&
          2 * flow <= hoseFacts(setting, size).flows[1] * 1.1,
      ),
    );
  });
  return can ? undefined : 'it has no hose that carries the flow of two legs';
}

export const wyeEqual = topic<WyeEqualFacts | undefined>({
  id: 'wye-equal',
  title: 'Wye with equal legs',
  levels: levelsTo(5),
  lacks,
  draw(draw, setting) {
    const legs = setting.level >= 3 && handSizes(setting).length > 0 ? draw.whole(2, 3) : 2;
    const hose = drawHose(draw, setting, legs);
    if (hose === undefined) return undefined;
    return {
      ...hose,
      legs,
      feederLength: drawLength(
        draw,
        setting,
        lengths(setting, 100),
        lengths(setting, 400 + 60 * setting.level),
      ),
      legLength: drawLength(draw, setting, lengths(setting, 100), lengths(setting, 200 + 30 * setting.level)),
    };
  },
  pose(facts, setting) {
    if (facts === undefined) throw new Error('nothing to pose');
    const { feeder, feederLength, leg, legLength, flow, legs } = facts;
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const [main, branch] = [hoseFacts(setting, feeder), hoseFacts(setting, leg)];
    const len1 = giveHose(d, '1', 'hose before the wye', main, 'length before the wye', feederLength);
    const len2 = giveHose(d, '2', 'hose of each leg', branch, 'length of each leg', legLength);
    const q = d.give('q', 'flow of each leg', flow, unit.flow);
    d.give('N', 'legs', legs, '', count(legs));
    const end = lineEnd(d, leg, q);
    d.step('Q', 'Flow before the wye', 'N * q', unit.flow);
    d.slip('one-leg-in-feeder', { formulas: { Q: '1 * q' } });
    friction(d, {
      symbol: 'FL1',
      say: 'Friction loss before the wye',
      size: feeder,
      flow: 'Q',
      flowValue: legs * flow,
      length: 'L1',
      tag: '1',
    });
    friction(d, {
      symbol: 'FL2',
      say: 'Friction loss in one leg; legs side by side count once',
      size: leg,
      flow: 'q',
      flowValue: flow,
      length: 'L2',
      tag: '2',
      quiet: true,
    });
    appliances(d, 1, legs * flow, legs === 2 ? 'wye' : 'manifold');
    d.step('PDP', 'Pump discharge pressure', 'NP + FL1 + FL2 + AL', unit.pressure, pumpRounding(setting));
    d.slip('legs-added', { formulas: { PDP: `NP + FL1 + ${legs} * FL2 + AL` } });
    d.slip('feeder-forgotten', { formulas: { PDP: 'NP + FL2 + AL' } });
    d.slip('lateral-forgotten', { formulas: { PDP: 'NP + FL1 + AL' } });
    d.bound('PDP', 0, Math.min(main.limit, branch.limit));
    const what = legs === 2 ? 'a wye' : 'a manifold';
    const question = wording.pick([
      `${engine(wording)} at ${place(wording)} feeds ${len1} of ${main.name} hose to ${what}. ${count(legs).replace(/^./, (c) => c.toUpperCase())} equal legs leave it, each ${len2} of ${branch.name} hose to ${end.words}. All is level. What must the pump discharge?`,
      `On the level, ${len1} of ${main.name} hose leads to ${what} with ${count(legs)} legs; each is ${len2} of ${branch.name} hose to ${end.words}. Find the pump discharge pressure with all legs open.`,
    ]);
    const legSketch = [
      { kind: 'hose' as const, label: `${len2} of ${branch.name}` },
      { kind: 'nozzle' as const, label: end.label },
    ];
    return d.draft(question, 'pump discharge pressure', {
      sketch: [
        { kind: 'pump', label: 'pump' },
        { kind: 'hose', label: `${len1} of ${main.name}` },
        {
          kind: 'branch',
          label: legs === 2 ? 'wye' : 'manifold',
          legs: Array.from({ length: legs }, () => legSketch),
        },
      ],
      crossCheck: (value) =>
        besideSolver(
          setting,
          value('PDP'),
          [
            {
              hose: feeder,
              length: feederLength,
              end: Array.from({ length: legs }, () => ({
                hose: leg,
                length: legLength,
                end: { flow, pressure: end.pressure },
              })),
            },
          ],
          { appliances: value('AL') },
        ),
    });
  },
});

export interface WyeUnequalFacts {
  readonly feeder: HoseSize;
  readonly feederLength: number;
  readonly leg: HoseSize;
  readonly legLengths: readonly [number, number];
  /** Heights of the ends above the wye. */
  readonly heights: readonly [number, number];
  readonly flow: number;
  /** What is asked: the pump's pressure, or what the gate on the easier leg must take off. */
  readonly ask: 'pump' | 'gate';
}

export const wyeUnequal = topic<WyeUnequalFacts | undefined>({
  id: 'wye-unequal',
  title: 'Wye with unequal legs',
  levels: levelsTo(5),
  lacks,
  draw(draw, setting) {
    const hose = drawHose(draw, setting, 2);
    if (hose === undefined) return undefined;
    const short = drawLength(draw, setting, lengths(setting, 100), lengths(setting, 200));
    const long = short + drawLength(draw, setting, lengths(setting, 100), lengths(setting, 450));
    const high = setting.level >= 2 ? drawHeight(draw, setting, 20, 70) : 0;
    const swap = draw.chance(0.5);
    const pair = <T>(a: T, b: T): [T, T] => (swap ? [b, a] : [a, b]);
    const against = setting.level >= 3 && draw.chance(0.4);
    return {
      ...hose,
      feederLength: drawLength(draw, setting, lengths(setting, 100), lengths(setting, 500)),
      legLengths: pair(short, long),
      heights: against ? pair(high, 0) : pair(0, high),
      ask: setting.level >= 4 && draw.chance(0.5) ? 'gate' : 'pump',
    };
  },
  pose(facts, setting) {
    if (facts === undefined) throw new Error('nothing to pose');
    const { feeder, feederLength, leg, legLengths, heights, flow, ask } = facts;
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const [main, branch] = [hoseFacts(setting, feeder), hoseFacts(setting, leg)];
    const sloping = heights.some((height) => height !== 0);
    const len1 = giveHose(d, '1', 'hose before the wye', main, 'length before the wye', feederLength);
    d.give('d2', 'hose of each leg', branch.bore, unit.bore, branch.name);
    const legWords = (['A', 'B'] as const).map((name, at) => {
      const length = d.give(`L${name}`, `length of leg ${name}`, legLengths[at], unit.length);
      if (!sloping) return `leg ${name} is ${length}`;
      const height = d.give(
        `H${name}`,
        `height of the end of leg ${name} above the wye`,
        heights[at],
        unit.length,
      );
      return `leg ${name} is ${length}, its end ${heights[at] === 0 ? 'level with' : `${height} above`} the wye`;
    });
    const q = d.give('q', 'flow of each leg', flow, unit.flow);
    const end = lineEnd(d, leg, q, true);
    const legSum = (name: string) => {
      friction(d, {
        symbol: `FL${name}`,
        say: `Friction loss in leg ${name}`,
        size: leg,
        flow: 'q',
        flowValue: flow,
        length: `L${name}`,
        tag: '2',
        quiet: true,
      });
      if (sloping) elevation(d, `EL${name}`, `H${name}`, true);
      d.step(
        `P${name}`,
        `Pressure that leg ${name} needs at the wye`,
        `NP + FL${name}${sloping ? ` + EL${name}` : ''}`,
        unit.pressure,
      );
      if (sloping) d.slip('elevation-dropped', { formulas: { PA: 'NP + FLA', PB: 'NP + FLB' } });
    };
    legSum('A');
    legSum('B');
    if (ask === 'gate') {
      d.step(
        'G',
        'Pressure that the gate on the easier leg takes off',
        'max(PA, PB) - (PA + PB - max(PA, PB))',
        unit.pressure,
      );
      d.slip('legs-added', { formulas: { G: 'PA + PB' }, why: 'The needs of both legs were added.' });
      d.slip('half-sum', { formulas: { G: '(PA + PB) / 2' }, why: 'The mean of both legs was taken.' });
      d.slip('loss-for-pressure', {
        formulas: { G: 'max(PA, PB)' },
        why: 'The higher leg’s pressure was given in place of the difference.',
      });
      d.slip('friction-dropped', { formulas: { FLA: '0 * NP', FLB: '0 * NP' } });
      d.slip('lower-leg', {
        formulas: { G: 'max(PA, PB) - NP' },
        why: 'Everything above the nozzle pressure was taken off.',
      });
      d.bound('G', pressures(setting, 10), pressures(setting, 150));
      d.bound('PA', 0, branch.limit);
      d.bound('PB', 0, branch.limit);
    } else {
      d.step('P', 'The higher of the two', 'max(PA, PB)', unit.pressure);
      d.step('Q', 'Flow before the wye', '2 * q', unit.flow);
      friction(d, {
        symbol: 'FL',
        say: 'Friction loss before the wye',
        size: feeder,
        flow: 'Q',
        flowValue: 2 * flow,
        length: 'L1',
        tag: '1',
        quiet: true,
      });
      appliances(d, 1, 2 * flow, 'wye');
      d.step('PDP', 'Pump discharge pressure', 'P + FL + AL', unit.pressure, pumpRounding(setting));
      d.slip('one-leg-in-feeder', { formulas: { Q: '1 * q' } });
      d.slip('lower-leg', { formulas: { P: 'PA + PB - max(PA, PB)' } });
      d.slip('legs-added', { formulas: { P: 'PA + PB - NP' } });
      d.slip('half-sum', {
        formulas: { P: '(PA + PB) / 2' },
        why: 'The mean of both legs was taken: pump to the higher one.',
      });
      d.slip('feeder-forgotten', { formulas: { PDP: 'P + AL' } });
      d.slip('nozzle-pressure-dropped', { formulas: { PDP: 'P - NP + FL + AL' } });
      d.bound('PDP', 0, Math.min(main.limit, branch.limit));
      d.bound('PA', 0, branch.limit);
    }
    const asked =
      ask === 'pump'
        ? 'What must the pump discharge so that both have their pressure, the easier leg being gated?'
        : 'The pump is set for the harder leg. How much pressure must the gate on the easier leg take off?';
    const question = wording.pick([
      `${engine(wording)} at ${place(wording)} feeds ${len1} of ${main.name} hose${sloping ? ' on the level' : ''} to a wye. Both legs are ${branch.name} hose to ${end.words}: ${legWords.join('; ')}. ${sloping ? '' : 'All is level. '}${asked}`,
      `A wye stands at the end of ${len1} of ${main.name} hose${sloping ? ', level with the pump' : '; all is level'}. From it, ${legWords.join('; ')}. Each leg is ${branch.name} hose and ends in ${end.words}. ${asked}`,
    ]);
    const legSketch = (at: 0 | 1) => [
      {
        kind: 'hose' as const,
        label: `${'AB'[at]}: ${legLengths[at]} ${unit.length} of ${branch.name}`,
        ...(heights[at] === 0 ? {} : { rise: `up ${heights[at]} ${unit.length}` }),
      },
      { kind: 'nozzle' as const, label: end.label },
    ];
    return d.draft(
      question,
      ask === 'pump' ? 'pump discharge pressure' : 'pressure that the gate takes off',
      {
        sketch: [
          { kind: 'pump', label: 'pump' },
          { kind: 'hose', label: `${len1} of ${main.name}` },
          { kind: 'branch', label: 'wye', legs: [legSketch(0), legSketch(1)] },
        ],
        crossCheck: (value) => {
          if (ask === 'gate') return undefined;
          const harder = value('PA') >= value('PB') ? 0 : 1;
          return besideSolver(
            setting,
            value('PDP'),
            [
              {
                hose: feeder,
                length: feederLength,
                end: ([0, 1] as const).map((at) => ({
                  hose: leg,
                  length: legLengths[at],
                  rise: heights[at],
                  end: { flow, pressure: end.pressure },
                })),
              },
            ],
            {
              appliances: value('AL'),
              ...(sloping ? { elevation: value(harder === 0 ? 'ELA' : 'ELB'), rise: heights[harder] } : {}),
            },
          );
        },
      },
    );
  },
});
