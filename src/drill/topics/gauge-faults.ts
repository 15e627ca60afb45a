import { Drafting, topic } from '../draft.js';
import { engine } from '../names.js';
import type { Draw } from '../random.js';

const FAULTS = [
  'no fault in the pump',
  'worn impeller or wear ring, or low speed',
  'starved suction',
  'wrong impeller or too high a speed',
] as const;
type Fault = (typeof FAULTS)[number];

export interface GaugeFaultFacts {
  /** Net pressure at shutoff and at the rated flow when the pump was accepted. */
  readonly accepted: readonly [number, number];
  /** Gauges today, discharge and intake, at shutoff and at the rated flow. */
  readonly shutoff: readonly [discharge: number, intake: number];
  readonly flowing: readonly [discharge: number, intake: number];
}

/** More than this off from the acceptance test is a fault: below 95 % of the baseline is acted on. */
const OFF = 0.05;

const CHANGE: Record<
  Fault,
  readonly [shutoff: readonly [number, number], flowing: readonly [number, number]]
> = {
  'no fault in the pump': [
    [-2, 2],
    [-2, 2],
  ],
  'worn impeller or wear ring, or low speed': [
    [-18, -9],
    [-18, -9],
  ],
  'starved suction': [
    [-2, 2],
    [-40, -18],
  ],
  'wrong impeller or too high a speed': [
    [9, 20],
    [8, 20],
  ],
};

export const gaugeFaults = topic<GaugeFaultFacts>({
  id: 'gauge-faults',
  title: 'Fault finding from two gauges',
  draw(draw: Draw, setting) {
    const us = setting.units === 'us';
    const grain = us ? 1 : 5;
    const round = (value: number) => grain * Math.round(value / grain);
    const accepted = [us ? 5 * draw.whole(36, 60) : 25 * draw.whole(50, 82), 0] as [number, number];
    accepted[1] = round(accepted[0] * draw.pick([0.6, 0.65, 0.7, 0.75]));
    const [[least0, most0], [least1, most1]] = CHANGE[draw.pick(FAULTS)];
    const intake = us ? 5 * draw.whole(4, 12) : 25 * draw.whole(6, 16);
    const dropped = round(intake * draw.pick([0.5, 0.6, 0.7]));
    const net = (at: number, least: number, most: number) => round(at * (1 + draw.whole(least, most) / 100));
    return {
      accepted,
      shutoff: [net(accepted[0], least0, most0) + intake, intake],
      flowing: [net(accepted[1], least1, most1) + dropped, dropped],
    };
  },
  pose({ accepted, shutoff, flowing }, setting) {
    const d = new Drafting(setting);
    const { unit, wording } = setting;
    const a0 = d.give('A0', 'net pressure at shutoff when accepted', accepted[0], unit.pressure);
    const a1 = d.give('A1', 'net pressure at the rated flow when accepted', accepted[1], unit.pressure);
    const d0 = d.give('D0', 'discharge gauge at shutoff today', shutoff[0], unit.pressure);
    const i0 = d.give('I0', 'intake gauge at shutoff today', shutoff[1], unit.pressure);
    const d1 = d.give('D1', 'discharge gauge at the rated flow today', flowing[0], unit.pressure);
    const i1 = d.give('I1', 'intake gauge at the rated flow today', flowing[1], unit.pressure);
    d.cite(
      'less than 95 % of the acceptance test, or more than 105 %, is a fault',
      'building fire pump practice: act below 95 % of the baseline',
    );
    d.cite(
      'low everywhere: impeller, wear ring or speed; falling away at high flow only: suction; high at shutoff: wrong impeller',
      'pump test trend practice, fault by where the curve falls short',
    );
    d.step('N0', 'Net pressure at shutoff', 'D0 - I0', unit.pressure);
    d.step('N1', 'Net pressure at the rated flow', 'D1 - I1', unit.pressure);
    d.step('X0', 'Of the acceptance test, at shutoff', 'N0 / A0', '', { decimals: 3 });
    d.step('X1', 'Of the acceptance test, at the rated flow', 'N1 / A1', '', { decimals: 3 });
    d.slip('gauge-for-net', { formulas: { N0: 'D0 * 1', N1: 'D1 * 1' } });
    d.slip('elevation-reversed', {
      formulas: { N0: 'D0 + I0', N1: 'D1 + I1' },
      why: 'The intake pressure was added: it is what the pump does not make.',
    });
    d.slip('wrong-row', { formulas: { X1: 'X0 * 1' }, why: 'Only the reading at shutoff was looked at.' });
    d.slip('wrong-row', {
      formulas: { X0: 'N1 / A1' },
      why: 'Only the reading at the rated flow was looked at.',
    });
    const decide = (value: (symbol: string) => number): Fault => {
      const [x0, x1] = [value('X0'), value('X1')];
      if (x0 > 1 + OFF) return FAULTS[3];
      if (x0 < 1 - OFF) return FAULTS[1];
      return x1 < 1 - OFF ? FAULTS[2] : FAULTS[0];
    };
    const percent = (value: number) => `${(value * 100).toFixed(0)} %`;
    const options =
      'no fault in the pump; worn impeller or wear ring, or low speed; starved suction; or wrong impeller or too high a speed';
    return d.draft(
      wording.pick([
        `When ${engine(wording)} was accepted, its pump made ${a0} net at shutoff and ${a1} net at the rated flow. Today the gauges read, at shutoff, ${d0} discharge and ${i0} intake; at the rated flow, ${d1} discharge and ${i1} intake. What is wrong: ${options}?`,
        `A pump was accepted with ${a0} net pressure at shutoff and ${a1} at the rated flow. On this year’s test the discharge gauge shows ${d0} and the intake gauge ${i0} at shutoff, then ${d1} and ${i1} at the rated flow. Name the fault: ${options}.`,
      ]),
      'what the gauges tell',
      {
        sketch: [
          { kind: 'source', what: 'hydrant', label: 'hydrant' },
          { kind: 'gauge', label: 'intake gauge' },
          { kind: 'pump', label: 'pump' },
          { kind: 'gauge', label: 'discharge gauge' },
        ],
        word: {
          options: FAULTS,
          decide,
          text: (word, value) =>
            `${word}: net pressure is ${percent(value('X0'))} of the acceptance test at shutoff and ${percent(value('X1'))} at the rated flow`,
          wrong: Object.fromEntries(FAULTS.map((fault) => [fault, { slip: 'misread-gauges' as const }])),
        },
      },
    );
  },
});
