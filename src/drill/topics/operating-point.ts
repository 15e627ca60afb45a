import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { place } from '../names.js';
import { pressures } from '../parts.js';
import { figure, listed } from '../print.js';
import { beside, drawPump, pressureAt, runout } from '../pumps.js';
import { type SquarePump, staged } from '../solver/two-pumps.js';

export interface OperatingPointFacts {
  readonly pump: SquarePump;
  /** Flows at which the curve is tabulated. */
  readonly flows: readonly number[];
  /** Static pressure of the line: the height that it climbs. */
  readonly static: number;
  /** What the line and its nozzle take at the two flows around the operating point. */
  readonly loss: number;
  readonly ask: 'pressure' | 'flow' | 'point';
  /** For `pressure`, a flow between two of the table's. */
  readonly at?: number;
}

const round = (value: number, step: number) => step * Math.round(value / step);

export const operatingPoint = topic<OperatingPointFacts | undefined>({
  id: 'operating-point',
  title: 'Reading a pump curve and finding the operating point',
  levels: levelsTo(5),
  draw(draw, setting) {
    const pump = drawPump(draw, setting);
    const step = setting.units === 'us' ? 20 : 80;
    const most = Math.floor(runout(pump) / step);
    if (most < 4) return undefined;
    const flows = Array.from({ length: most + 1 }, (_, index) => index * step);
    const between = step * (draw.whole(1, most - 1) + draw.pick([0.25, 0.5, 0.75]));
    if (setting.level === 1)
      return { pump, flows, static: 0, loss: 0, ask: draw.pick(['flow', 'pressure'] as const), at: between };
    const height = setting.level <= 3 ? 0 : pressures(setting, 10 * draw.whole(2, 12));
    const q = Math.max(between, flows[Math.ceil(most / 2)] + step / 2) / 100;
    const loss = (pressureAt(pump, q * 100) - height) / q ** 2;
    const step5 = setting.units === 'us' ? 5 : 1;
    return { pump, flows, static: round(height, step5), loss: round(loss, step5), ask: 'point' };
  },
  pose(facts, setting) {
    if (facts === undefined) throw new Error('nothing to pose');
    const { pump, flows, static: height, loss, ask, at = 0 } = facts;
    const d = new Drafting(setting);
    const { unit, wording, units } = setting;
    const grain = units === 'us' ? 1 : 5;
    const table = flows.map((flow) => [flow, round(pressureAt(pump, flow), grain)] as const);
    const rows = table.map(([flow, p]) => `${figure(p, unit.pressure)} at ${figure(flow, unit.flow)}`);
    const curve = `The pump’s curve: ${listed(rows)}.`;
    const name = place(wording);
    d.cite('between two points of a table the curve is taken as straight', 'common practice, no source');
    const pair = (index: number) => {
      const [[q1, p1], [q2, p2]] = [table[index], table[index + 1]];
      d.give('Q1', 'flow of the point before', q1, unit.flow);
      d.give('P1', 'pressure there', p1, unit.pressure);
      d.give('Q2', 'flow of the point after', q2, unit.flow);
      d.give('P2', 'pressure there', p2, unit.pressure);
      return { q1, p1, q2, p2 };
    };
    if (ask !== 'point') {
      const index = table.findIndex(
        ([flow], i) => i + 1 < table.length && flow <= at && at < table[i + 1][0],
      );
      pair(index);
      const exact = pressureAt(pump, at);
      if (ask === 'pressure') {
        const q = d.give('Q', 'flow', at, unit.flow);
        d.step(
          'P',
          'Pressure on the straight line between the two points',
          'P1 - (P1 - P2) * (Q - Q1) / (Q2 - Q1)',
          unit.pressure,
        );
        d.slip('wrong-row', {
          formulas: { P: 'P1 + (P1 - P2) * (Q - Q1) / (Q2 - Q1)' },
          why: 'The pressure was taken to rise with the flow: it falls.',
        });
        d.slip('shutoff-taken', { formulas: { P: `${pump.shutoff} ${unit.p} + 0 * P1` } });
        d.slip('wrong-row', {
          formulas: { P: 'P2 - (P1 - P2) * (Q - Q1) / (Q2 - Q1)' },
          why: 'The next pair of points was read.',
        });
        d.slip('flow-not-squared', {
          formulas: {
            P: `${pump.shutoff} ${unit.p} * (1 - Q / (${flows[flows.length - 1]} ${unit.q})) + 0 * P1`,
          },
          why: 'A straight line was drawn from shutoff to no pressure at the last flow.',
        });
        d.slip('half-sum', {
          formulas: { P: `(${pump.shutoff} ${unit.p} + P2) / 2` },
          why: 'The middle between shutoff and the point after was taken.',
        });
        d.bound('P', pressures(setting, 60), pressures(setting, 450));
        return d.draft(
          wording.pick([
            `${curve} What pressure does it make at ${q}?`,
            `A portable pump at ${name} has this curve: ${listed(rows)}. Read the pressure at ${q}.`,
          ]),
          'pump pressure',
          {
            crossCheck: (value) =>
              beside(
                value('P'),
                exact,
                unit.pressure,
                'The curve bends between the two points; the hand method draws it straight.',
              ),
          },
        );
      }
      const p = d.give('P', 'pressure', round(exact, units === 'us' ? 5 : 25), unit.pressure);
      d.step(
        'Q',
        'Flow on the straight line between the two points',
        'Q1 + (Q2 - Q1) * (P1 - P) / (P1 - P2)',
        unit.flow,
      );
      d.slip('wrong-row', {
        formulas: { Q: 'Q1 - (Q2 - Q1) * (P1 - P) / (P1 - P2)' },
        why: 'The flow was taken to fall with the pressure.',
      });
      d.slip('wrong-row', {
        formulas: { Q: 'Q2 + (Q2 - Q1) * (P1 - P) / (P1 - P2)' },
        why: 'The next pair of points was read.',
      });
      d.slip('flow-not-squared', {
        formulas: {
          Q: `${flows[flows.length - 1]} ${unit.q} * (1 - P / (${pump.shutoff} ${unit.p})) + 0 * Q1`,
        },
        why: 'A straight line was drawn from shutoff to no pressure at the last flow.',
      });
      d.slip('half-sum', {
        formulas: { Q: `${flows[flows.length - 1]} ${unit.q} * P / (${pump.shutoff} ${unit.p}) + 0 * Q1` },
        why: 'The flow was taken in proportion to the pressure: it grows as the pressure falls.',
      });
      d.bound('P', table[index + 1][1], table[index][1]);
      d.bound('Q', flows[1] / 2, flows[flows.length - 1]);
      return d.draft(
        wording.pick([
          `${curve} How much does it flow at ${p}?`,
          `A portable pump at ${name} has this curve: ${listed(rows)}. What does it flow when its gauge shows ${p}?`,
        ]),
        'pump flow',
        {
          crossCheck: (value) =>
            beside(
              value('Q'),
              100 * Math.sqrt((pump.shutoff - value('P')) / pump.fall),
              unit.flow,
              'The curve bends between the two points; the hand method draws it straight.',
            ),
        },
      );
    }
    const need = (flow: number) => height + loss * (flow / 100) ** 2;
    const index = table.findIndex(
      ([flow, p], i) =>
        i > 0 && i + 1 < table.length && p >= need(flow) && table[i + 1][1] < need(table[i + 1][0]),
    );
    if (index < 0) {
      // The line and the curve do not cross within the table: bounds that nothing meets throw the draw away.
      pair(0);
      d.step('Q', 'Flow', 'Q1 + Q2', unit.flow);
      d.bound('Q', -1, -1);
      return d.draft('', 'flow');
    }
    pair(index);
    const k = d.give('K', `what hose and nozzle take at 100 ${unit.flow}`, loss, unit.pressure);
    const e =
      height > 0 ? d.give('E', 'pressure of the height that the line climbs', height, unit.pressure) : '';
    const plus = height > 0 ? 'E + ' : '';
    const r = (q: string) => `(${q} / (100 ${unit.q}))^2`;
    d.step('N1', 'What the line needs at the first flow', `${plus}K * ${r('Q1')}`, unit.pressure);
    d.step('N2', 'What the line needs at the second flow', `${plus}K * ${r('Q2')}`, unit.pressure);
    d.step('X1', 'Pressure to spare at the first flow', 'P1 - N1', unit.pressure);
    d.step('X2', 'Pressure short at the second flow', 'N2 - P2', unit.pressure);
    d.step(
      'Q',
      'Flow where neither is left: the operating point',
      'Q1 + (Q2 - Q1) * X1 / (X1 + X2)',
      unit.flow,
    );
    d.slip('flow-not-squared', {
      formulas: { N1: `${plus}K * Q1 / (100 ${unit.q})`, N2: `${plus}K * Q2 / (100 ${unit.q})` },
    });
    if (height > 0) d.slip('elevation-dropped', { formulas: { N1: `K * ${r('Q1')}`, N2: `K * ${r('Q2')}` } });
    d.slip('wrong-row', {
      formulas: { Q: 'Q1 - (Q2 - Q1) * X1 / (X1 + X2)' },
      why: 'The step between the two flows was taken downwards.',
    });
    d.slip('wrong-row', {
      formulas: { Q: 'Q2 + (Q2 - Q1) * X1 / (X1 + X2)' },
      why: 'The next pair of points was read.',
    });
    d.slip('shutoff-taken', {
      formulas: { Q: `100 ${unit.q} * sqrt(${pump.shutoff} ${unit.p} / K) + 0 * Q1` },
      why: 'The shutoff pressure was put on the line: a pump makes less as it moves more.',
    });
    d.slip('half-sum', {
      formulas: { Q: `100 ${unit.q} * P1 / K` },
      why: 'The pressure was divided by the loss without taking the root.',
    });
    const most = flows[flows.length - 1];
    d.bound('Q', flows[1], most);
    d.bound('X1', 0, pressures(setting, 400));
    d.bound('X2', 0, pressures(setting, 400));
    const climbs = e === '' ? 'The line is level' : `The line climbs a height that takes ${e}`;
    return d.draft(
      wording.pick([
        `${curve} ${climbs}; its hose and nozzle take ${k} at 100 ${unit.flow}, growing with the square of the flow. With the throttle wide open, what flows?`,
        `At ${name} a pump runs wide open on one line. ${climbs}; hose and nozzle together take ${k} at 100 ${unit.flow} and grow with the square of the flow. ${curve} Find the flow at the operating point.`,
      ]),
      'flow at the operating point',
      {
        sketch: [
          { kind: 'pump', label: 'pump, wide open' },
          {
            kind: 'hose',
            label: `takes ${k} at 100 ${unit.flow}`,
            ...(e === '' ? {} : { rise: `up, ${e}` }),
          },
          { kind: 'nozzle', label: 'nozzle' },
        ],
        keyedBySolver: true,
        crossCheck: (value) =>
          beside(
            value('Q'),
            staged([pump], 'parallel', { static: height, loss }, units).total,
            unit.flow,
            'Curve and line both bend between the two flows; the hand method draws them straight.',
          ),
      },
    );
  },
});
