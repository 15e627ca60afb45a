import { Drafting, type Setting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine } from '../names.js';
import { dischargeConstant } from '../orifice-constant.js';
import { covers, friction, hoseFacts, pressures } from '../parts.js';
import { beside, NO_GAP } from '../pumps.js';
import { sharpOrificeReading } from '../solver/sharp-orifice.js';

export interface TypingOrificeFacts {
  readonly bore: number;
  readonly coefficient: number;
  readonly ask: 'reading' | 'flow';
  readonly flow?: number;
  readonly reading?: number;
  /** Hose of 1-1/2 in between the outlet and the orifice. */
  readonly hose?: number;
}

/** Whether the rule set has friction for the hose before the orifice at any flow. */
const hoseBefore = ({ rules: { friction: rule } }: Setting) =>
  rule.method === 'coefficient' && rule.hoses['1.5'] !== undefined;

export const typingOrifice = topic<TypingOrificeFacts>({
  id: 'typing-orifice',
  title: 'The typing test on an orifice',
  levels: levelsTo(3),
  reach: (setting) => (hoseBefore(setting) ? 3 : 1),
  draw(draw, setting) {
    const us = setting.units === 'us';
    const large = draw.chance(0.5);
    const bore = us ? (large ? 0.716 : 0.52) : large ? 18.2 : 13.2;
    const coefficient = setting.level >= 4 ? draw.pick([0.6, 0.61, 0.62, 0.63]) : 0.62;
    const flow = us
      ? large
        ? 5 * draw.whole(26, 38)
        : 2 * draw.whole(20, 34)
      : large
        ? 20 * draw.whole(24, 36)
        : 10 * draw.whole(15, 26);
    const reading = us
      ? large
        ? 5 * draw.whole(40, 75)
        : 5 * draw.whole(15, 32)
      : large
        ? 25 * draw.whole(56, 100)
        : 25 * draw.whole(21, 44);
    const ask = setting.level === 1 && draw.chance(0.5) ? 'flow' : 'reading';
    if (ask === 'flow') return { bore, coefficient, ask, reading };
    const hose =
      setting.level >= 2 && covers(setting, '1.5', flow) && setting.rules.friction.method === 'coefficient';
    return hose
      ? { bore, coefficient, ask, flow, hose: (us ? 25 : 15) * draw.whole(1, 4) }
      : { bore, coefficient, ask, flow };
  },
  pose({ bore, coefficient, ask, flow = 0, reading = 0, hose }, setting) {
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const a = d.give('d', 'bore of the orifice', bore, unit.bore, `${bore} ${unit.bore}`);
    const c = d.give('Cd', 'discharge coefficient', coefficient, '', `${coefficient}`);
    const { constant, source } = dischargeConstant(units);
    d.rule('k', `flow of an ideal bore of 1 ${unit.bore} at 1 ${unit.pressure}`, constant, unit.flow, source);
    const area = `(d / (1 ${unit.d}))^2`;
    const loaded = `A sharp-edged orifice of ${a}, discharge coefficient ${c}, loads the pump of ${engine(wording)} for its typing test.`;
    const [smaller, larger] = units === 'us' ? [0.52, 0.716] : [13.2, 18.2];
    d.slip('wrong-row', {
      set: { d: bore === larger ? smaller : larger },
      why: 'The bore of another class’s test orifice was used.',
    });
    if (units === 'si')
      d.slip('unit-slip', {
        formulas: ask === 'flow' ? { Q: `k * Cd * ${area} * sqrt(P / (100 kPa))` } : {},
        why: 'The pressure was put in bar, where the formula asks for kPa.',
      });
    const sketch = [
      { kind: 'pump' as const, label: 'pump' },
      ...(hose
        ? [{ kind: 'hose' as const, label: `${hose} ${unit.length} of ${hoseFacts(setting, '1.5').name}` }]
        : []),
      { kind: 'gauge' as const, label: 'gauge tee' },
      { kind: 'nozzle' as const, label: `orifice, ${a}` },
    ];
    if (ask === 'flow') {
      const p = d.give('P', 'reading of the gauge before the orifice', reading, unit.pressure);
      d.step('Q', 'Flow through the orifice', `k * Cd * ${area} * sqrt(P / (1 ${unit.p}))`, unit.flow);
      d.slip('coefficient-dropped', { set: { Cd: 1 } });
      d.slip('bore-not-squared', { formulas: { Q: `k * Cd * d / (1 ${unit.d}) * sqrt(P / (1 ${unit.p}))` } });
      d.slip('root-halved', { formulas: { Q: `k * Cd * ${area} * P / (2 ${unit.p})` } });
      d.slip('half-sum', {
        formulas: { Q: `k * Cd * ${area} * sqrt(P / (1 ${unit.p})) / 2` },
        why: 'The flow was halved.',
      });
      return d.draft(
        wording.pick([
          `${loaded} The gauge just before it reads ${p}. What does the pump flow?`,
          `${loaded} The inspector reads ${p} at the tee before the orifice. Find the flow.`,
        ]),
        'flow through the orifice',
        { sketch },
      );
    }
    const q = d.give('Q', 'flow', flow, unit.flow);
    d.step(
      'P',
      'Reading of the gauge before the orifice',
      `(Q / (k * Cd * ${area}))^2 * (1 ${unit.p})`,
      unit.pressure,
    );
    d.slip('coefficient-dropped', { set: { Cd: 1 } });
    d.slip('bore-not-squared', { formulas: { P: `(Q / (k * Cd * d / (1 ${unit.d})))^2 * (1 ${unit.p})` } });
    d.slip('root-forgotten', {
      formulas: { P: `Q / (k * Cd * ${area}) * (1 ${unit.p})` },
      why: 'The ratio was not squared: pressure goes with the square of the flow.',
    });
    d.slip('wrong-power', {
      formulas: { P: `2 * Q / (k * Cd * ${area}) * (1 ${unit.p})` },
      why: 'The ratio was doubled in place of being squared.',
    });
    d.bound('P', pressures(setting, 40), pressures(setting, 480));
    if (hose === undefined)
      return d.draft(
        wording.pick([
          `${loaded} It has to flow ${q}. What must the gauge just before the orifice read?`,
          `${loaded} Which reading just before the orifice stands for ${q}?`,
        ]),
        'reading before the orifice',
        {
          sketch,
          crossCheck: (value) =>
            beside(
              value('P'),
              sharpOrificeReading(flow, bore, coefficient, units),
              unit.pressure,
              NO_GAP.replace('network solver', 'orifice law of the program').replace(
                ', as the curve is the same square law in both',
                ', but for the last digit of the constant',
              ),
            ),
        },
      );
    const facts = hoseFacts(setting, '1.5');
    const len = d.give('L', 'hose between outlet and orifice', hose, unit.length);
    d.give('dh', 'size of that hose', facts.bore, unit.bore, facts.name);
    friction(d, {
      symbol: 'FL',
      say: 'Friction loss in the hose before the orifice',
      size: '1.5',
      flow: 'Q',
      flowValue: flow,
      length: 'L',
      quiet: true,
    });
    d.step('PDP', 'Pressure at the outlet', 'P + FL', unit.pressure);
    d.slip('friction-dropped', { formulas: { PDP: 'P * 1' } });
    d.slip('flow-not-squared', { formulas: { FL: `C * (Q / (100 ${unit.q})) * (L / (100 ${unit.l}))` } });
    d.slip('elevation-reversed', {
      formulas: { PDP: 'P - FL' },
      why: 'The friction was taken off: the pump makes it on top of the reading.',
    });
    d.bound('PDP', pressures(setting, 40), pressures(setting, 600));
    return d.draft(
      wording.pick([
        `${loaded} Between the outlet and the gauge tee lie ${len} of ${facts.name} hose. With ${q} flowing, what must the panel gauge at the outlet read?`,
        `${loaded} It hangs on ${len} of ${facts.name} hose. For ${q}, find the pressure at the outlet.`,
      ]),
      'pressure at the outlet',
      { sketch },
    );
  },
});
