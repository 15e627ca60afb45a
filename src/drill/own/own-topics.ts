import type { Layout } from '../../layout/layout.js';
import { REFERENCE_WATER_DENSITY } from '../../physics/constants.js';
import { heightOfPressure } from '../../physics/elevation.js';
import { headAt, type PumpCurve } from '../../physics/pump-curve/curve.js';
import type { Setting, Topic } from '../draft.js';
import { Drafting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { covers } from '../parts.js';
import { figure, listed } from '../print.js';
import { beside } from '../pumps.js';
import { SI_VALUE } from '../solver/si.js';
import { frictionLoss } from '../topics/friction-loss.js';
import { waterMinutes } from '../topics/water-minutes.js';
import { layPressure } from './lay-pressure.js';
import { carriedBy, ownHoses, ownLay, ownNozzles, Unusable } from './own-lay.js';
import { type Point, pumpOf } from './own-pumps.js';

/** The topics that a layout gives problems of, each with figures of the trainer's own engine and lay. */
export function ownTopics(layout: Layout): readonly Topic[] {
  return [
    layPressure(layout),
    hoseFriction(layout),
    tankMinutes(layout),
    curveReading(layout),
    bothPumps(layout, 'parallel'),
    bothPumps(layout, 'series'),
  ];
}

function reasonOf(attempt: () => unknown): string | undefined {
  try {
    attempt();
    return undefined;
  } catch (error) {
    if (error instanceof Unusable) return error.message;
    throw error;
  }
}

function hoseFriction(layout: Layout): Topic {
  return topic<Parameters<typeof frictionLoss.pose>[0] | undefined>({
    id: 'own-friction',
    title: `Friction in the hose of ${layout.title}`,
    levels: levelsTo(2),
    lacks: (setting) =>
      reasonOf(() => {
        if (ownHoses(ownLay(layout, setting)).length === 0) throw new Unusable('the lay has no hose');
      }),
    draw(draw, setting) {
      const carried = carriedBy(ownLay(layout, setting));
      const [{ size, length, lines }, flows] = draw.pick(carried);
      const flow = draw.pick(flows) / lines;
      return covers(setting, size, flow) ? { hose: size, length, flow } : undefined;
    },
    pose(facts, setting) {
      if (facts === undefined) throw new Error('nothing to pose');
      return frictionLoss.pose(facts, { ...setting, rig: layout.title });
    },
  }) as Topic;
}

function tankMinutes(layout: Layout): Topic {
  return topic<Parameters<typeof waterMinutes.pose>[0]>({
    id: 'own-minutes',
    title: `Minutes of water of ${layout.engine.name}`,
    levels: levelsTo(3),
    lacks: (setting) =>
      layout.engine.tank === undefined
        ? 'the engine has no tank'
        : layout.lay.length > 0
          ? reasonOf(() => ownLay(layout, setting))
          : undefined,
    draw(draw, setting) {
      const gallon = setting.units === 'us' ? 231 * 0.0254 ** 3 : 1e-3;
      const tank = Math.round((layout.engine.tank?.capacity ?? 0) / gallon);
      const nozzles = layout.lay.length > 0 ? ownNozzles(ownLay(layout, setting)) : [];
      if (nozzles.length === 0) return { ...waterMinutes.draw(draw, setting), tank };
      const { flow } = draw.pick(nozzles);
      const alike = nozzles.filter((nozzle) => nozzle.flow === flow).length;
      return { tank, nozzles: draw.whole(1, alike), flow };
    },
    pose: (facts, setting) => waterMinutes.pose(facts, { ...setting, rig: layout.engine.name }),
  }) as Topic;
}

const rows = (table: readonly Point[], setting: Setting) =>
  listed(table.map(([q, p]) => `${figure(p, setting.unit.pressure)} at ${figure(q, setting.unit.flow)}`));

/** Points of the table around a flow, or around a pressure. */
function around(table: readonly Point[], value: number, by: 'flow' | 'pressure'): number {
  return table.findIndex((point, i) => {
    const next = table[i + 1];
    if (next === undefined) return false;
    return by === 'flow' ? point[0] <= value && value <= next[0] : point[1] >= value && value >= next[1];
  });
}

/** Flows to ask for that all tables tell of: a curve may have been measured from some flow up only. */
function flowsOf(tables: readonly (readonly Point[])[], step: number): { least: number; most: number } {
  const last = Math.min(...tables.map((table) => table[table.length - 1][0]));
  const first = Math.max(...tables.map((table) => table[0][0]));
  return { least: Math.ceil(Math.max(last * 0.1, first) / step) * step, most: last * 0.95 };
}

function givePoints(d: Drafting, table: readonly Point[], index: number, tag: string, name: string): void {
  const { unit } = d.setting;
  const [[q1, p1], [q2, p2]] = [table[index], table[index + 1]];
  d.give(`q1${tag}`, `flow of ${name}, point before`, q1, unit.flow);
  d.give(`p1${tag}`, `pressure of ${name} there`, p1, unit.pressure);
  d.give(`q2${tag}`, `flow of ${name}, point after`, q2, unit.flow);
  d.give(`p2${tag}`, `pressure of ${name} there`, p2, unit.pressure);
}

const pressureFormula = (tag: string, flow: string) =>
  `p1${tag} - (p1${tag} - p2${tag}) * (${flow} - q1${tag}) / (q2${tag} - q1${tag})`;
const flowFormula = (tag: string, pressure: string) =>
  `q1${tag} + (q2${tag} - q1${tag}) * (p1${tag} - ${pressure}) / (p1${tag} - p2${tag})`;

const BENDS = 'The curve bends between two points; the hand method draws it straight.';

function curveReading(layout: Layout): Topic {
  return topic<{ name: 'a' | 'b'; flow: number }>({
    id: 'own-curve',
    title: `Reading the pump curves of ${layout.engine.name}`,
    levels: levelsTo(1),
    draw(draw, setting) {
      const name = layout.engine.pumps.b === undefined ? 'a' : draw.pick(['a', 'b'] as const);
      const { table } = pumpOf(layout, name, setting) ?? { table: [] };
      const step = setting.units === 'us' ? 1 : 5;
      const { least, most } = flowsOf([table], step);
      return { name, flow: draw.stepped(least, most, step) };
    },
    pose({ name, flow }, setting) {
      const d = new Drafting(setting);
      const { unit } = setting;
      const pump = pumpOf(layout, name, setting);
      if (pump === undefined) throw new Error(`no pump ${name}`);
      const { table, at } = pump;
      givePoints(d, table, around(table, flow, 'flow'), '', 'the pump');
      const q = d.give('Q', 'flow', flow, unit.flow);
      d.cite('between two points of a table the curve is taken as straight', 'common practice, no source');
      d.step(
        'P',
        'Pressure on the straight line between the two points',
        pressureFormula('', 'Q'),
        unit.pressure,
      );
      d.slip('shutoff-taken', { formulas: { P: `${table[0][1]} ${unit.p} + 0 * p1` } });
      d.slip('wrong-row', {
        formulas: { P: 'p1 + (p1 - p2) * (Q - q1) / (q2 - q1)' },
        why: 'The pressure was taken to rise with the flow: it falls.',
      });
      d.slip('wrong-row', {
        formulas: { P: 'p2 - (p1 - p2) * (Q - q1) / (q2 - q1)' },
        why: 'The next pair of points was read.',
      });
      const last = table[table.length - 1];
      d.slip('flow-not-squared', {
        formulas: { P: `${table[0][1]} ${unit.p} * (1 - Q / (${last[0]} ${unit.q})) + 0 * p1` },
        why: 'A straight line was drawn from shutoff to no pressure at the last flow.',
      });
      d.slip('half-sum', {
        formulas: { P: `(${table[0][1]} ${unit.p} + p2) / 2` },
        why: 'The middle between shutoff and the point after was taken.',
      });
      return d.draft(
        `Pump ${name.toUpperCase()} of ${layout.engine.name} has this curve: ${rows(table, setting)}. What pressure does it make at ${q}?`,
        'pump pressure',
        { crossCheck: (value) => beside(value('P'), at(flow), unit.pressure, BENDS), keyedBySolver: true },
      );
    },
  }) as Topic;
}

function bothPumps(layout: Layout, staging: 'parallel' | 'series'): Topic {
  return topic<{ value: number }>({
    id: `own-${staging}`,
    title: `Both pumps of ${layout.engine.name} in ${staging}`,
    levels: levelsTo(3),
    lacks: () => (layout.engine.pumps.b === undefined ? 'the engine has one pump' : undefined),
    draw(draw, setting) {
      const [a, b] = [pumpOf(layout, 'a', setting), pumpOf(layout, 'b', setting)];
      if (a === undefined || b === undefined) throw new Error('the engine has one pump');
      const us = setting.units === 'us';
      if (staging === 'series') {
        const step = us ? 1 : 5;
        const { least, most } = flowsOf([a.table, b.table], step);
        return { value: draw.stepped(least, most, step) };
      }
      const most = Math.min(a.table[0][1], b.table[0][1]);
      const least = Math.max(a.table[a.table.length - 1][1], b.table[b.table.length - 1][1]);
      const step = us ? 5 : 25;
      return { value: draw.stepped(Math.ceil((least * 1.05) / step) * step, most * 0.95, step) };
    },
    pose({ value: asked }, setting) {
      const d = new Drafting(setting);
      const { unit, units } = setting;
      const pumps = (['a', 'b'] as const).map((name) => {
        const pump = pumpOf(layout, name, setting);
        if (pump === undefined) throw new Error(`no pump ${name}`);
        return { name: name.toUpperCase(), ...pump };
      });
      const parallel = staging === 'parallel';
      for (const { name, table } of pumps)
        givePoints(d, table, around(table, asked, parallel ? 'pressure' : 'flow'), name, `pump ${name}`);
      d.cite('between two points of a table the curve is taken as straight', 'common practice, no source');
      const text = parallel
        ? d.give('P', 'pressure at the manifold', asked, unit.pressure)
        : d.give('Q', 'flow', asked, unit.flow);
      for (const { name } of pumps)
        if (parallel)
          d.step(`Q${name}`, `Flow of pump ${name} at that pressure`, flowFormula(name, 'P'), unit.flow);
        else
          d.step(
            `P${name}`,
            `Pressure of pump ${name} at that flow`,
            pressureFormula(name, 'Q'),
            unit.pressure,
          );
      const curves = pumps.map(({ name, table }) => `Pump ${name} makes ${rows(table, setting)}.`).join(' ');
      if (parallel) {
        d.step('Q', 'Flow of both: in parallel flows add', 'QA + QB', unit.flow);
        d.slip('one-pump-alone', { formulas: { Q: 'QA + 0 * QB' } });
        const half = pumps.map(({ name }) => [`Q${name}`, `q1${name} * 1`]);
        d.slip('wrong-row', {
          formulas: Object.fromEntries(half),
          why: 'The point before was read for each pump.',
        });
        const after = pumps.map(({ name }) => [`Q${name}`, `q2${name} * 1`]);
        d.slip('wrong-row', {
          formulas: Object.fromEntries(after),
          why: 'The point after was read for each pump.',
        });
        const most = pumps.map(({ name, table }) => [
          `Q${name}`,
          `${table[table.length - 1][0]} ${unit.q} + 0 * q1${name}`,
        ]);
        d.slip('wrong-power', {
          formulas: Object.fromEntries(most),
          why: 'The last flow of each curve was taken: a pump moves less against pressure.',
        });
        d.slip('half-sum', {
          formulas: { Q: '(QA + QB) * 3 / 4' },
          why: 'Three quarters of the sum were taken.',
        });
      } else {
        d.step('P', 'Pressure of both: in series pressures add', 'PA + PB', unit.pressure);
        d.slip('staging-confused', {
          formulas: { P: '(PA + PB) / 2' },
          why: 'The pressures were not added: one pump’s was given.',
        });
        const [a, b] = pumps;
        d.slip('shutoff-taken', { formulas: { P: `${a.table[0][1] + b.table[0][1]} ${unit.p} + 0 * PA` } });
        const half = pumps.map(({ name, table }) => [
          `P${name}`,
          `(${table[0][1]} ${unit.p} + p2${name}) / 2`,
        ]);
        d.slip('half-sum', {
          formulas: Object.fromEntries(half),
          why: 'The middle between shutoff and the point after was taken.',
        });
        const after = pumps.map(({ name }) => [`P${name}`, `p2${name} * 1`]);
        d.slip('wrong-row', {
          formulas: Object.fromEntries(after),
          why: 'The point after was read for each pump.',
        });
      }
      const si = SI_VALUE[units];
      const flowAt = (curve: PumpCurve, pressure: number) => {
        const head = heightOfPressure(pressure * si.pressure, REFERENCE_WATER_DENSITY);
        let [low, high] = [0, curve.lastFlow];
        for (let i = 0; i < 60; i++) {
          const middle = (low + high) / 2;
          if (headAt(curve, middle) > head) low = middle;
          else high = middle;
        }
        return low / si.flow;
      };
      const question = parallel
        ? `${layout.engine.name} runs both pumps in parallel, each behind its check valve, unworn and at full speed. ${curves} The manifold stands at ${text}; plumbing is left out. What do both together flow?`
        : `${layout.engine.name} runs its pumps in series from its tank, unworn and at full speed. ${curves} Plumbing is left out. What do both make together at ${text}?`;
      return d.draft(question, parallel ? 'flow of both pumps' : 'pressure after the second pump', {
        keyedBySolver: true,
        crossCheck: (value) =>
          parallel
            ? beside(
                value('Q'),
                pumps.reduce((sum, { curve }) => sum + flowAt(curve, asked), 0),
                unit.flow,
                BENDS,
              )
            : beside(
                value('P'),
                pumps.reduce((sum, { at }) => sum + at(asked), 0),
                unit.pressure,
                BENDS,
              ),
      });
    },
  }) as Topic;
}
