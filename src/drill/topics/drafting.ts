import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';

import { number } from '../print.js';
import type { SketchPart } from '../problem.js';

const DRAFT: readonly SketchPart[] = [
  { kind: 'source', what: 'draft', label: 'pond' },
  { kind: 'hose', label: 'hard suction' },
  { kind: 'pump', label: 'pump' },
];

export interface DraftFacts {
  readonly ask: 'lift' | 'vacuum' | 'lift-flowing';
  readonly vacuum?: number;
  readonly lift?: number;
  /** Loss in the intake hose, as height of water. */
  readonly loss?: number;
}

export const drafting = topic<DraftFacts>({
  id: 'draft',
  title: 'Drafting: lift and vacuum',
  levels: levelsTo(2),
  draw(draw, setting) {
    const us = setting.units === 'us';
    const vacuum = us ? draw.whole(8, 20) : draw.stepped(150, 500, 10);
    const lift = us ? draw.whole(8, 20) : draw.stepped(2, 5.5, 0.5);
    const loss = us ? draw.whole(3, 6) : draw.stepped(0.6, 1.8, 0.2);
    const tidy = Math.round(loss * 10) / 10;
    if (setting.level > 1) return { ask: 'lift-flowing', vacuum, loss: tidy };
    return draw.chance(0.5) ? { ask: 'lift', vacuum } : { ask: 'vacuum', lift, loss: tidy };
  },
  pose({ ask, vacuum = 0, lift = 0, loss = 0 }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules, units } = setting;
    const us = units === 'us';
    const gauge = us ? 'inHg' : '(1 mmHg)';
    d.rule(
      'v',
      us
        ? 'feet of water that an inch of mercury lifts'
        : 'metres of water that a millimetre of mercury lifts',
      rules.draft.length_per_vacuum,
      '',
      rules.draft.source,
    );
    const one = us ? '(1 inHg)' : gauge;
    const asPressure = us ? 2.31 : 0.102;
    const why = us
      ? 'Inches of mercury were read as psi: an inch of mercury lifts 1.13 ft, a psi 2.31 ft.'
      : 'Millimetres of mercury were read as kPa.';
    const at = place(wording);
    if (ask === 'vacuum') {
      const h = d.give('H', 'lift', lift, unit.length);
      const f = d.give('F', 'loss in the intake hose and strainer, as height of water', loss, unit.length);
      d.step('V', 'Vacuum that the gauge shows', `(H + F) / (1 ${unit.l}) / v * ${one}`, unit.vacuum);
      d.slip('intake-dropped', { formulas: { V: `H / (1 ${unit.l}) / v * ${one}` } });
      d.slip('lift-dropped', { formulas: { V: `F / (1 ${unit.l}) / v * ${one}` } });
      d.slip('vacuum-as-pressure', {
        formulas: { V: `(H + F) / (1 ${unit.l}) / ${asPressure} * ${one}` },
        why: us
          ? 'The height was turned into psi in place of inches of mercury.'
          : 'The height was turned into kPa in place of mmHg.',
      });
      d.slip('feet-and-psi-inverted', {
        formulas: { V: us ? `(H + F) / (1 ft) * v * ${one}` : `(H + F) / (1 m) * v * 1000 * ${one}` },
      });
      d.slip('elevation-reversed', {
        formulas: { V: `(H - F) / (1 ${unit.l}) / v * ${one}` },
        why: 'The loss was taken off the lift: the pump must overcome both.',
      });
      d.slip('unit-slip', {
        formulas: { V: us ? `(H + F) / (1 ft) * ${one}` : `(H + F) / (1 m) * 100 * ${one}` },
        why: 'The height was given as vacuum without the conversion.',
      });
      d.bound('V', us ? 3 : 80, us ? 24 : 600);
      return d.draft(
        wording.pick([
          `${engine(wording)} drafts at ${at} from a pond ${h} below the pump; the intake hose and strainer cost another ${f} of water at this flow. What does the vacuum gauge show?`,
          `The lift is ${h}, and the hard suction with its strainer takes ${f} of water as friction at the flow in hand. Find the reading of the vacuum gauge.`,
        ]),
        'vacuum at the pump intake',
        { sketch: DRAFT },
      );
    }
    const v = d.give('V', 'vacuum at the pump intake', vacuum, unit.vacuum);
    const height = `V / ${one} * v * (1 ${unit.l})`;
    if (ask === 'lift') {
      d.step('H', 'Height that the vacuum lifts', height, unit.length);
    } else {
      d.give('F', 'loss in the intake hose and strainer, as height of water', loss, unit.length);
      d.step('T', 'Height of water that the vacuum overcomes', height, unit.length);
      d.step('H', 'The lift is what friction leaves of it', 'T - F', unit.length);
      d.slip('intake-dropped', { formulas: { H: 'T * 1' } });
      d.slip('elevation-reversed', {
        formulas: { H: 'T + F' },
        why: 'The loss was added to the lift: it is a part of what the gauge shows.',
      });
    }
    const first = ask === 'lift' ? 'H' : 'T';
    d.slip('vacuum-as-pressure', {
      formulas: { [first]: `V / ${one} * ${asPressure} * (1 ${unit.l})` },
      why,
    });
    d.slip('feet-and-psi-inverted', {
      formulas: { [first]: us ? `V / ${one} / v * (1 ft)` : `V / ${one} / v / 1000 * (1 m)` },
    });
    d.slip('attainable-dropped', {
      formulas: { [first]: us ? `34 ft - V / ${one} * (1 ft)` : `10.3 m - V / ${one} / 100 * (1 m)` },
      why: 'The vacuum was taken off the height that the atmosphere lifts.',
    });
    d.slip('half-sum', {
      formulas: { [first]: `V / ${one} * v * (2 ${unit.l}) / 3` },
      why: 'Two thirds of it were taken: that is the rule for the attainable lift, not for reading a gauge.',
    });
    d.slip('unit-slip', {
      formulas: { [first]: us ? `V / ${one} * 0.434 * (1 ft)` : `V / ${one} / 100 * (1 m)` },
      why: us
        ? 'The psi of a foot of water were used for an inch of mercury.'
        : 'The vacuum was divided by a hundred.',
    });
    d.bound('H', us ? 3 : 1, us ? 24 : 7.3);
    const fText = ask === 'lift' ? '' : d.given.find(({ symbol }) => symbol === 'F')?.text;
    return d.draft(
      ask === 'lift'
        ? wording.pick([
            `${engine(wording)} at ${at} has primed from a pond and holds water with nothing flowing; the vacuum gauge shows ${v}. How high does the pump stand above the water?`,
            `A pump at ${at} is primed, no water moves yet, and the intake gauge shows a vacuum of ${v}. What is the lift?`,
          ])
        : wording.pick([
            `${engine(wording)} drafts at ${at}; the vacuum gauge shows ${v} at a flow where the hard suction and strainer take ${fText} of water. How high does the pump stand above the water?`,
            `At draft the intake gauge shows a vacuum of ${v}. Intake hose and strainer cost ${fText} of water at this flow. Find the lift.`,
          ]),
      'lift',
      { sketch: DRAFT },
    );
  },
});

export interface NetPressureFacts {
  readonly discharge: number;
  /** Pressure from a hydrant or another pump. */
  readonly intake?: number;
  readonly lift?: number;
  readonly loss?: number;
  readonly vacuum?: number;
}

export const netPressure = topic<NetPressureFacts>({
  id: 'net-pressure',
  title: 'Net pump pressure',
  levels: levelsTo(3),
  draw(draw, setting) {
    const us = setting.units === 'us';
    const discharge = us ? 5 * draw.whole(20, 50) : 25 * draw.whole(28, 68);
    const intake = us ? 5 * draw.whole(4, 14) : 25 * draw.whole(6, 20);
    const lift = us ? draw.whole(8, 20) : draw.stepped(2.5, 6, 0.5);
    const loss = us ? draw.whole(2, 8) : draw.stepped(0.5, 2.5, 0.5);
    if (setting.level <= 1 || (setting.level === 2 && draw.chance(0.5))) return { discharge, intake };
    if (setting.level >= 4 && draw.chance(0.6)) {
      const vacuum = us ? draw.whole(10, 22) : draw.stepped(250, 550, 10);
      return { discharge, vacuum };
    }
    return { discharge, lift, loss };
  },
  pose({ discharge, intake, lift, loss = 0, vacuum }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules, units } = setting;
    const us = units === 'us';
    const p = d.give('PDP', 'pump discharge pressure', discharge, unit.pressure);
    const name = engine(wording);
    if (intake !== undefined) {
      const i = d.give('IP', 'intake pressure', intake, unit.pressure);
      d.step('NPP', 'Net pump pressure: what the pump itself adds', 'PDP - IP', unit.pressure);
      d.cite(
        'from a pressure source the net pump pressure is discharge less intake',
        'IFSTA pumping-apparatus cards',
      );
      d.slip('gauge-for-net', { formulas: { NPP: 'PDP * 1' } });
      d.slip('elevation-reversed', {
        formulas: { NPP: 'PDP + IP' },
        why: 'The intake pressure was added: it is what the pump does not have to make.',
      });
      d.slip('half-sum', {
        formulas: { NPP: '(PDP + IP) / 2' },
        why: 'The mean of the two gauges was taken.',
      });
      d.slip('loss-for-pressure', { formulas: { NPP: 'IP * 1' }, why: 'The intake pressure was given.' });
      return d.draft(
        wording.pick([
          `${name} pumps from a hydrant. The discharge gauge reads ${p}, the intake gauge ${i}. What is the net pump pressure?`,
          `A pump in relay at ${place(wording)} takes water in at ${i} and discharges at ${p}. How much pressure does the pump itself add?`,
        ]),
        'net pump pressure',
        {
          sketch: [
            { kind: 'source', what: 'hydrant', label: 'hydrant' },
            { kind: 'gauge', label: i },
            { kind: 'pump', label: 'pump' },
            { kind: 'gauge', label: p },
          ],
        },
      );
    }
    d.rule(
      'f',
      us ? 'feet of water that a psi holds up' : 'metres of water that a kPa holds up',
      rules.draft.feet_per_psi,
      '',
      rules.draft.source,
    );
    let words: string;
    if (vacuum !== undefined) {
      const v = d.give('V', 'vacuum at the pump intake', vacuum, unit.vacuum);
      const one = us ? '(1 inHg)' : '(1 mmHg)';
      d.rule(
        'v',
        us
          ? 'feet of water that an inch of mercury lifts'
          : 'metres of water that a millimetre of mercury lifts',
        rules.draft.length_per_vacuum,
        '',
        rules.draft.source,
      );
      d.step(
        'H',
        'Height of water that the vacuum stands for: lift and intake loss together',
        `V / ${one} * v * (1 ${unit.l})`,
        unit.length,
      );
      d.slip('vacuum-as-pressure', {
        formulas: { H: us ? `V / ${one} * f * (1 ${unit.l})` : `V / ${one} * f * (1 ${unit.l})` },
      });
      words = `the intake gauge shows a vacuum of ${v}`;
    } else {
      const h = d.give('L', 'lift', lift ?? 0, unit.length);
      const g = d.give('F', 'loss in the intake hose, as height of water', loss, unit.length);
      d.step('H', 'Lift and intake loss together', 'L + F', unit.length);
      d.slip('intake-dropped', { formulas: { H: 'L * 1' } });
      d.slip('lift-dropped', { formulas: { H: 'F * 1' } });
      words = `the lift is ${h} and the intake hose takes ${g} of water`;
    }
    d.step('PC', 'Pressure correction', `H / (1 ${unit.l}) / f * (1 ${unit.p})`, unit.pressure);
    d.step('NPP', 'Net pump pressure: what the pump itself adds', 'PDP + PC', unit.pressure, {
      decimals: us ? 1 : 0,
    });
    d.slip('gauge-for-net', { formulas: { NPP: 'PDP * 1' } });
    d.slip('elevation-reversed', {
      formulas: { NPP: 'PDP - PC' },
      why: 'The correction was taken off: at draft the pump also makes the lift.',
    });
    d.slip('feet-and-psi-inverted', { formulas: { PC: `H / (1 ${unit.l}) * f * (1 ${unit.p})` } });
    d.slip('unit-slip', {
      formulas: { PC: us ? `H / (1 ft) * (1 psi)` : `H / (1 m) * (1 kPa)` },
      why: 'The height was added as if it were pressure.',
    });
    d.slip('half-sum', {
      formulas: { PC: `H / (1 ${unit.l}) / f / 2 * (1 ${unit.p})` },
      why: 'Half of the correction was taken.',
    });
    return d.draft(
      wording.pick([
        `${name} pumps from draft at ${place(wording)}: ${words}; the discharge gauge reads ${p}. What is the net pump pressure?`,
        `At draft ${words}. With ${p} at the discharge, find the net pump pressure.`,
      ]),
      'net pump pressure',
      { sketch: [...DRAFT, { kind: 'gauge', label: p }], tolerance: us ? 1 : 5 },
    );
  },
});

export interface AltitudeDraftFacts {
  readonly elevation: number;
  /** Whether the attainable lift is asked, or only the theoretical one. */
  readonly attainable: boolean;
}

export const altitudeDraft = topic<AltitudeDraftFacts>({
  id: 'altitude-draft',
  title: 'Drafting at altitude',
  levels: levelsTo(3),
  draw(draw, setting) {
    const us = setting.units === 'us';
    const elevation = us
      ? draw.stepped(4000, 10000, setting.level < 3 ? 500 : 100)
      : draw.stepped(1200, 3000, setting.level < 3 ? 100 : 50);
    return { elevation, attainable: setting.level >= 3 || draw.chance(0.3) };
  },
  pose({ elevation: height, attainable }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, rules, units } = setting;
    const { draft } = rules;
    const us = units === 'us';
    const e = d.give(
      'E',
      'elevation of the site',
      height,
      unit.length,
      `${number(height, 0)} ${unit.length}`,
    );
    d.rule('A', 'pressure of the atmosphere at sea level', draft.atmosphere, unit.pressure, draft.source);
    d.rule(
      'g',
      `pressure lost with each 1000 ${unit.length}`,
      draft.atmosphere_loss_per_1000,
      unit.pressure,
      draft.source,
    );
    d.rule(
      'f',
      us ? 'feet of water that a psi holds up' : 'metres of water that a kPa holds up',
      draft.feet_per_psi,
      '',
      draft.source,
    );
    d.step('B', 'Pressure of the atmosphere at the site', `A - g * (E / (1000 ${unit.l}))`, unit.pressure, {
      decimals: us ? 2 : 1,
    });
    d.step(
      'T',
      'Theoretical lift: the water that it holds up',
      `B / (1 ${unit.p}) * f * (1 ${unit.l})`,
      unit.length,
      { decimals: 1 },
    );
    if (attainable) {
      d.rule('r', 'part of it that a sound pump attains', draft.attainable, '', draft.source);
      d.step('H', 'Attainable lift', 'T * r', unit.length, { decimals: 1 });
      d.slip('attainable-dropped', { set: { r: 1 } });
    }
    d.slip('altitude-dropped', { set: { g: 0 } });
    d.slip('feet-and-psi-inverted', {
      formulas: { T: `B / (1 ${unit.p}) * ${us ? '0.434' : '9.81 / 10'} * (1 ${unit.l})` },
    });
    d.slip('wrong-coefficient', {
      formulas: { B: `A - 2 * g * (E / (1000 ${unit.l}))` },
      why: `Twice the loss was taken off: ${draft.atmosphere_loss_per_1000} ${unit.pressure} goes with each 1000 ${unit.length}.`,
    });
    d.slip('vacuum-as-pressure', {
      formulas: { T: us ? `B / (1 psi) * 1.13 * (1 ft)` : `B / (1 kPa) * 0.0136 * (1 m)` },
      why: 'The pressure was read as mercury.',
    });
    d.slip('half-sum', {
      formulas: {
        [attainable ? 'H' : 'T']: attainable ? 'T / 2' : `B / (1 ${unit.p}) * f * (0.5 ${unit.l})`,
      },
      why: 'Half of the lift was taken.',
    });
    d.slip('elevation-reversed', {
      formulas: { B: `A + g * (E / (1000 ${unit.l}))` },
      why: 'The loss with height was added: air is thinner higher up.',
    });
    const asked = attainable
      ? 'How high can a sound pump be expected to lift water there?'
      : 'What is the theoretical lift there?';
    return d.draft(
      wording.pick([
        `${engine(wording)} is to draft at ${place(wording)}, ${e} above the sea. ${asked}`,
        `A drafting site lies at an elevation of ${e}. ${asked}`,
      ]),
      attainable ? 'attainable lift' : 'theoretical lift',
      { sketch: DRAFT, relativeTolerance: 0.02 },
    );
  },
});
