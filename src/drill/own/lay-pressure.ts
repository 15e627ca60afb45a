import type { Layout } from '../../layout/layout.js';
import { Drafting, type Topic, topic } from '../draft.js';
import { HOSE } from '../equipment.js';
import { levelsTo } from '../levels.js';
import { allowance, besideSolver, covers, friction, pressures, pumpRounding } from '../parts.js';
import { capital, count, figure, listed } from '../print.js';
import type { SketchPart } from '../problem.js';
import { Draw } from '../random.js';
import type { LayLine } from '../solver/required-pressure.js';
import { work } from '../work.js';
import { type OwnHose, type OwnLine, type OwnNozzle, ownLay, ownNozzles, Unusable } from './own-lay.js';
import { mostPressure } from './own-pumps.js';

export interface LayPressureFacts {
  readonly lay: OwnLine;
  /** Which nozzle is pumped to, by its place in the lay. */
  readonly target: number;
  /** Which nozzles are open, the one pumped to among them. */
  readonly open: readonly number[];
}

interface Section extends OwnHose {
  /** Places of the open nozzles beyond it. */
  readonly carries: readonly number[];
}

/** The way from the pump to a nozzle: its hoses with what each carries, and its appliances with theirs. */
function wayTo(lay: OwnLine, { target, open }: LayPressureFacts) {
  const nozzles = ownNozzles(lay);
  const sections: Section[] = [];
  const appliances: (readonly number[])[] = [];
  let line: OwnLine | undefined = lay;
  while (line) {
    const within = ownNozzles(line).map((nozzle) => nozzles.indexOf(nozzle));
    const carries = within.filter((at) => open.includes(at));
    sections.push(...line.hoses.map((hose) => ({ ...hose, carries })));
    for (let i = 0; i < line.appliances; i++) appliances.push(carries);
    line = line.lines.find((next: OwnLine) => ownNozzles(next).includes(nozzles[target]));
  }
  return { nozzles, sections, appliances };
}

/** What the pump must discharge so that one nozzle of the trainer's own lay has its pressure. */
export function layPressure(layout: Layout): Topic {
  const definition: Topic<LayPressureFacts | undefined> = topic<LayPressureFacts | undefined>({
    id: 'own-lay',
    title: `Pump pressure on the lay of ${layout.title}`,
    levels: levelsTo(5),
    lacks(setting) {
      try {
        return ownNozzles(ownLay(layout, setting)).length > 0 ? undefined : 'the lay has no nozzle';
      } catch (error) {
        if (error instanceof Unusable) return error.message;
        throw error;
      }
    },
    draw(draw, setting) {
      const lay = ownLay(layout, setting);
      const nozzles = ownNozzles(lay);
      const first = draw.whole(0, nozzles.length - 1);
      const most = Math.min(nozzles.length, setting.level === 1 ? 1 : setting.level);
      const others = draw.shuffled(nozzles.map((_, at) => at).filter((at) => at !== first));
      const open = [first, ...others.slice(0, draw.whole(Math.min(1, most - 1), most - 1))].sort(
        (a, b) => a - b,
      );
      const known = open.every((target) =>
        wayTo(lay, { lay, target, open }).sections.every(({ size, lines, carries }) =>
          covers(setting, size, flowOf(nozzles, carries) / lines),
        ),
      );
      if (!known) return undefined;
      // The pump has to serve every open nozzle, so it is set for the one that needs most.
      const needs = open.map((target) => {
        const quiet = { ...setting, wording: new Draw('') };
        return work(definition.pose({ lay, target, open }, quiet), undefined, true).exact;
      });
      return { lay, target: open[needs.indexOf(Math.max(...needs))], open };
    },
    pose(facts, setting) {
      if (facts === undefined) throw new Error('nothing to pose');
      const { lay, target, open } = facts;
      const d = new Drafting(setting);
      const { unit, wording, units } = setting;
      const { nozzles, sections, appliances } = wayTo(lay, facts);
      const wanted = nozzles[target];
      const flows = open.map((at) => {
        const { name, flow } = nozzles[at];
        return `${name} flows ${d.give(`q${at + 1}`, `flow of ${name}`, flow, unit.flow)}`;
      });
      const np = d.give('NP', `nozzle pressure of ${wanted.name}`, wanted.pressure, unit.pressure);
      const rises: string[] = [];
      const losses: string[] = [];
      const straight: Record<string, string> = {};
      const single: Record<string, string> = {};
      const words = sections.map((section, index) => {
        const i = index + 1;
        const hose = HOSE[units][section.size];
        d.give(`d${i}`, `hose ${i} on the way`, hose.bore, unit.bore, hose.name);
        const len = d.give(`L${i}`, `length of hose ${i}`, section.length, unit.length);
        const side = section.lines > 1 ? ` (${count(section.lines)} lines side by side)` : '';
        if (section.rise === 0) return `${len} of ${hose.name} hose${side}, level`;
        const h = d.give(`H${i}`, `height gained over hose ${i}`, section.rise, unit.length);
        rises.push(`H${i}`);
        return `${len} of ${hose.name} hose${side}, ${section.rise > 0 ? `rising ${h}` : `falling ${h.replace('-', '')}`}`;
      });
      const all = open.map((at) => `q${at + 1}`).join(' + ');
      sections.forEach((section, index) => {
        const i = index + 1;
        const sum = section.carries.map((at) => `q${at + 1}`).join(' + ');
        const share =
          section.lines > 1
            ? `(${sum}) / ${section.lines}`
            : `${sum}${section.carries.length === 1 ? ' * 1' : ''}`;
        const value = section.carries.reduce((total, at) => total + nozzles[at].flow, 0) / section.lines;
        d.step(
          `Q${i}`,
          `Flow in hose ${i}${section.lines > 1 ? ', each line' : ''}: every open nozzle beyond it`,
          share,
          unit.flow,
        );
        straight[`Q${i}`] = `${all} + 0 * q${target + 1}`;
        single[`Q${i}`] = `q${target + 1} * 1`;
        friction(d, {
          symbol: `FL${i}`,
          say: `Friction loss in hose ${i}`,
          size: section.size,
          flow: `Q${i}`,
          flowValue: value,
          length: `L${i}`,
          tag: `${i}`,
          quiet: true,
        });
        losses.push(`FL${i}`);
      });
      const right = ['NP', ...losses];
      const each = Math.max(0, ...appliances.map((carries) => allowance(setting, flowOf(nozzles, carries))));
      const counted = appliances.filter(
        (carries) => each > 0 && allowance(setting, flowOf(nozzles, carries)) > 0,
      ).length;
      const passes =
        appliances.length === 0
          ? ''
          : ` The way passes ${count(appliances.length)} ${appliances.length === 1 ? 'appliance' : 'appliances'}.`;
      if (appliances.length > 0) {
        d.give(
          'n',
          each > 0 ? 'appliances on the way that the rule set allows for' : 'appliances on the way',
          each > 0 ? counted : appliances.length,
          '',
        );
        d.rule(
          'a',
          'allowance for an appliance at its flow',
          each,
          unit.pressure,
          setting.rules.appliance.source,
        );
        d.step('AL', 'Loss in the appliances', 'n * a', unit.pressure);
        right.push('AL');
        if (each > 0) d.slip('appliance-dropped', { formulas: { AL: '0 * a' } });
        else d.slip('appliance-miscounted', { set: { a: pressures(setting, 10) } });
      }
      if (rises.length > 0) {
        d.rule(
          'e',
          'pressure by height',
          setting.rules.elevation.rate,
          unit.slope,
          setting.rules.elevation.source,
        );
        d.step(
          'H',
          'Height of the nozzle above the pump',
          `${rises.join(' + ')}${rises.length === 1 ? ' * 1' : ''}`,
          unit.length,
        );
        d.step('EL', 'Pressure of the height', 'e * H', unit.pressure);
        right.push('EL');
      }
      const sum = right.join(' + ');
      d.step('PDP', 'Pump discharge pressure', sum, unit.pressure, pumpRounding(setting));
      const limit = Math.min(...sections.map((section) => section.limit));
      d.bound('PDP', 0, Math.min(limit, mostPressure(layout, setting, flowOf(nozzles, open))));
      if (open.length > 1) {
        d.slip('all-flow-to-end', { formulas: straight });
        d.slip('one-leg-in-feeder', { formulas: single });
      }
      if (rises.length > 0) {
        d.slip('elevation-dropped', { formulas: { PDP: sum.replace(' + EL', '') } });
        d.slip('elevation-reversed', { formulas: { PDP: sum.replace('+ EL', '- EL') } });
        d.slip('feet-and-psi-inverted', { formulas: { EL: `H / e * (1 ${unit.p}/${unit.l})^2` } });
      }
      d.slip('nozzle-pressure-dropped', { formulas: { PDP: sum.replace('NP + ', '') } });
      d.slip('friction-dropped', {
        formulas: { PDP: right.filter((term) => !losses.includes(term)).join(' + ') },
      });
      const kind = wanted.pressure === setting.rules.nozzle.fog ? 'smooth_hand' : 'fog';
      d.slip('nozzle-pressure-swapped', { set: { NP: setting.rules.nozzle[kind] } });
      const others = nozzles.length - open.length;
      const shut =
        others === 0
          ? 'Every nozzle of the lay is open'
          : `Only ${open.length === 1 ? 'this nozzle is' : 'these nozzles are'} open`;
      const question = [
        wording.pick([
          `On the lay “${layout.title}”, the way from the pump to ${wanted.name} is ${listed(words)}.`,
          `${capital(wanted.name)} on the lay “${layout.title}” is reached by ${listed(words)}, in that order from the pump.`,
        ]),
        passes.trim(),
        open.length === 1
          ? `${shut}: ${listed(flows)} and wants ${np}. What must the pump discharge?`
          : `${shut}: ${listed(flows)}. The pump must serve every one of them; ${wanted.name} needs most, and wants ${np}, while the others are gated back. What must the pump discharge?`,
      ]
        .filter((part) => part !== '')
        .join(' ');
      return d.draft(question, `pump discharge pressure for ${wanted.name}`, {
        sketch: [{ kind: 'pump', label: layout.engine.name }, ...sketched(lay, nozzles, open, setting.unit)],
        crossCheck: (value) =>
          besideSolver(setting, value('PDP'), [layLines(lay, nozzles, facts)], {
            appliances: appliances.length > 0 ? value('AL') : 0,
            ...(rises.length > 0 ? { elevation: value('EL'), rise: value('H') } : {}),
          }),
      });
    },
  });
  return definition as Topic;
}

const flowOf = (nozzles: readonly OwnNozzle[], at: readonly number[]) =>
  at.reduce((sum, index) => sum + nozzles[index].flow, 0);

/** Low enough that no other nozzle decides what the pump must make. */
const ANY_PRESSURE = -1e6;

function layLines(line: OwnLine, nozzles: readonly OwnNozzle[], facts: LayPressureFacts): LayLine {
  const end = endOf(line, nozzles, facts);
  const [first, ...rest] = line.hoses.length > 0 ? line.hoses : [undefined];
  const size = first?.size ?? '5';
  const made = (hose: OwnHose | undefined, beyond: LayLine['end']): LayLine => ({
    hose: hose?.size ?? size,
    length: hose?.length ?? 0.001,
    lines: hose?.lines ?? 1,
    rise: hose?.rise ?? 0,
    end: beyond,
  });
  let beyond = end;
  for (const hose of [...rest].reverse()) beyond = [made(hose, beyond)];
  return made(first, beyond);
}

function endOf(line: OwnLine, nozzles: readonly OwnNozzle[], facts: LayPressureFacts): LayLine['end'] {
  const { nozzle, lines } = line;
  if (nozzle) {
    const at = nozzles.indexOf(nozzle);
    const flow = facts.open.includes(at) ? nozzle.flow : 0;
    return { flow, pressure: at === facts.target ? nozzle.pressure : ANY_PRESSURE };
  }
  if (lines.length > 0) return lines.map((next) => layLines(next, nozzles, facts));
  return { flow: 0, pressure: ANY_PRESSURE };
}

function sketched(
  line: OwnLine,
  nozzles: readonly OwnNozzle[],
  open: readonly number[],
  unit: { readonly length: string; readonly flow: string },
): SketchPart[] {
  const parts: SketchPart[] = line.hoses.map((hose) => ({
    kind: 'hose',
    label: `${figure(hose.length, 'ft').replace('ft', unit.length)} of ${hose.name}`,
    ...(hose.rise === 0
      ? {}
      : { rise: `${hose.rise > 0 ? 'up' : 'down'} ${Math.abs(hose.rise)} ${unit.length}` }),
    ...(hose.lines > 1 ? { lines: hose.lines } : {}),
  }));
  if (line.nozzle) {
    const shut = !open.includes(nozzles.indexOf(line.nozzle));
    parts.push({ kind: 'nozzle', label: line.nozzle.name, ...(shut ? { shut } : {}) });
  }
  if (line.lines.length > 0) {
    const legs = line.lines.map((next) => sketched(next, nozzles, open, unit));
    // The last line is the main one going on, unless it is a lateral like the others.
    const main = legs.length > 1 ? legs.pop() : undefined;
    parts.push({ kind: 'branch', label: 'branch', legs });
    if (main) parts.push(...main);
  }
  return parts;
}
