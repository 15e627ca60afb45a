import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine } from '../names.js';
import { figure } from '../print.js';
import type { Draw } from '../random.js';

const SOUND = 'no fault in the pump';
const WORN = 'worn impeller or wear ring, or low speed';
const STARVED = 'starved suction';
const FAST = 'wrong impeller or too high a speed';
const FAULTS = [SOUND, WORN, STARVED, FAST] as const;
type Fault = (typeof FAULTS)[number];

/** Gauge pressure at the pump's intake is negative where it pulls a vacuum. */
export interface GaugeFaultFacts {
  /** Net pressure at shutoff and at the rated flow when the pump was accepted. */
  readonly accepted: readonly [number, number];
  /** Gauges today, discharge and intake, at shutoff and at the rated flow. */
  readonly shutoff: readonly [discharge: number, intake: number];
  readonly flowing: readonly [discharge: number, intake: number];
}

/** More than this off from the acceptance test is a fault: below 95 % of the baseline is acted on. */
const OFF = 0.05;
/** Net pressure today as percent of the acceptance test, at shutoff and at the rated flow. */
const NET: Record<Fault, readonly [shutoff: readonly [number, number], flowing: readonly [number, number]]> =
  {
    [SOUND]: [
      [98, 102],
      [98, 102],
    ],
    [WORN]: [
      [82, 91],
      [80, 90],
    ],
    [STARVED]: [
      [98, 102],
      [60, 82],
    ],
    [FAST]: [
      [109, 120],
      [109, 120],
    ],
  };

/** Intake that a supply leaves at the rated flow is above this; starved, it is near none or a vacuum. */
const LEAST_INTAKE = { us: 10, si: 70 };

export const gaugeFaults = topic<GaugeFaultFacts>({
  id: 'gauge-faults',
  title: 'Fault finding from two gauges',
  levels: levelsTo(4),
  draw(draw: Draw, setting) {
    const us = setting.units === 'us';
    const grain = us ? 1 : 5;
    const round = (value: number) => grain * Math.round(value / grain);
    const accepted = [us ? 5 * draw.whole(36, 60) : 25 * draw.whole(50, 82), 0] as [number, number];
    accepted[1] = round(accepted[0] * draw.pick([0.6, 0.65, 0.7, 0.75]));
    const fault = draw.pick(FAULTS);
    const [[least0, most0], [least1, most1]] = NET[fault];
    const intake = us ? 5 * draw.whole(6, 12) : 25 * draw.whole(8, 16);
    // The supply loses some of its pressure as water moves; a choked one loses all of it, and the pump pulls a vacuum.
    const dropped =
      fault === STARVED
        ? us
          ? -draw.whole(3, 11)
          : -5 * draw.whole(4, 15)
        : round(intake * draw.pick([0.6, 0.7, 0.8]));
    const net = (at: number, least: number, most: number) => round((at * draw.whole(least, most)) / 100);
    return {
      accepted,
      shutoff: [net(accepted[0], least0, most0) + intake, intake],
      flowing: [net(accepted[1], least1, most1) + dropped, dropped],
    };
  },
  pose({ accepted, shutoff, flowing }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const a0 = d.give('A0', 'net pressure at shutoff when accepted', accepted[0], unit.pressure);
    const a1 = d.give('A1', 'net pressure at the rated flow when accepted', accepted[1], unit.pressure);
    const d0 = d.give('D0', 'discharge gauge at shutoff today', shutoff[0], unit.pressure);
    const i0 = d.give('I0', 'intake gauge at shutoff today', shutoff[1], unit.pressure);
    const d1 = d.give('D1', 'discharge gauge at the rated flow today', flowing[0], unit.pressure);
    const i1 = d.give('I1', 'intake gauge at the rated flow today', flowing[1], unit.pressure);
    const least = figure(LEAST_INTAKE[units], unit.pressure);
    d.cite(
      'net pressure under 95 % of the acceptance test, or over 105 %, is a fault',
      'building fire pump practice: act below 95 % of the baseline',
    );
    d.cite(
      'low at shutoff and at flow: impeller, wear ring or speed; high: wrong impeller or speed; sound at shutoff and low at flow: suction',
      'pump test trend practice, fault by where the curve falls short',
    );
    d.cite(
      `starved suction shows at the intake: a vacuum, or less than ${least}, at the rated flow`,
      'common practice, no source',
    );
    d.step('N0', 'Net pressure at shutoff', 'D0 - I0', unit.pressure);
    d.step('N1', 'Net pressure at the rated flow', 'D1 - I1', unit.pressure);
    d.step('X0', 'Part of the acceptance test at shutoff', 'N0 / A0', '', { decimals: 3 });
    d.step('X1', 'Part of the acceptance test at the rated flow', 'N1 / A1', '', { decimals: 3 });
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
      if (x0 > 1 + OFF) return FAST;
      if (x0 < 1 - OFF) return WORN;
      return x1 < 1 - OFF ? STARVED : SOUND;
    };
    const percent = (value: number) => `${(value * 100).toFixed(0)} %`;
    const vacuum = (text: string, value: number) =>
      value < 0 ? `${text.replace('-', '\u2212')} (a vacuum)` : text;
    const intakes = [vacuum(i0, shutoff[1]), vacuum(i1, flowing[1])];
    const listed = `: ${FAULTS[0]}; ${FAULTS[1]}; ${FAULTS[2]}; or ${FAULTS[3]}`;
    const rule = `A sound pump makes 95 to 105 % of its acceptance test. Starved suction leaves the intake under ${least} at the rated flow, or in a vacuum, and shutoff as it was.`;
    return d.draft(
      wording.pick([
        `When ${engine(wording)} was accepted, its pump made ${a0} net at shutoff and ${a1} net at the rated flow. Today, at the same speed and on a hydrant, the gauges read ${d0} discharge and ${intakes[0]} intake at shutoff, and ${d1} discharge and ${intakes[1]} intake at the rated flow. ${rule} What is wrong${listed}?`,
        `A pump was accepted with ${a0} net pressure at shutoff and ${a1} at the rated flow. On this year’s test from a hydrant the discharge gauge shows ${d0} and the intake gauge ${intakes[0]} at shutoff, then ${d1} and ${intakes[1]} at the rated flow. ${rule} What do the gauges say${listed}?`,
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
          listed,
          decide,
          text: (word, value) =>
            `${word}: net pressure is ${percent(value('X0'))} of the acceptance test at shutoff and ${percent(value('X1'))} at the rated flow`,
          against: (option, value) => {
            const [at0, at1] = [percent(value('X0')), percent(value('X1'))];
            const why = {
              [SOUND]: `A sound pump makes 95 to 105 % at both points: this one makes ${at0} at shutoff and ${at1} at the rated flow.`,
              [WORN]: `Wear or low speed takes pressure at shutoff too: there it is ${at0} of the acceptance test.`,
              [STARVED]: `Starved suction leaves shutoff as it was and the intake near nothing at flow: here the intake reads ${intakes[1]} at the rated flow, and net pressure is ${at0} at shutoff and ${at1} at flow.`,
              [FAST]: `A wrong impeller or too high a speed makes more than 105 % at shutoff: there it is ${at0}.`,
            }[option as Fault];
            return { slip: 'misread-gauges', why };
          },
        },
      },
    );
  },
});
