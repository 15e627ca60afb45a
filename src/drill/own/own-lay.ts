import { boreOf, type Nozzle } from '../../catalogue/schema/nozzle.js';
import type { Layout } from '../../layout/layout.js';
import type { HoseStep, Step } from '../../layout/step.js';
import { withArticle } from '../../quantity/article.js';
import type { Setting } from '../draft.js';
import { HOSE } from '../equipment.js';
import { HOSE_SIZES, type HoseSize } from '../rules/rule-set.js';
import { SI_VALUE } from '../solver/si.js';

/** A hose of the trainer's lay in the units of the sheet. */
export interface OwnHose {
  readonly size: HoseSize;
  readonly name: string;
  readonly length: number;
  readonly rise: number;
  readonly lines: number;
  /** What the pump may put on it, psi or kPa. */
  readonly limit: number;
}

export interface OwnNozzle {
  readonly name: string;
  readonly flow: number;
  readonly pressure: number;
}

/** The lay as a tree: hose and appliances in turn, then a nozzle, or lines that part, or nothing. */
export interface OwnLine {
  readonly hoses: readonly OwnHose[];
  readonly appliances: number;
  readonly nozzle?: OwnNozzle;
  readonly lines: readonly OwnLine[];
}

/** Why no problem can be made of a lay. */
export class Unusable extends Error {}

const KINDS = 'hose, branches, appliances, check valves, gauges and nozzles';

/** The first lay of a layout as a tree. Throws `Unusable` with the reason where a step cannot be worked by hand. */
export function ownLay(layout: Layout, setting: Setting): OwnLine {
  const [lay] = layout.lay;
  if (lay === undefined || lay.steps.length === 0) throw new Unusable('the layout has no lay');
  return lineOf(lay.steps, setting);
}

/** Every hose of the lay that the rule set knows, without repeats. */
export function ownHoses(line: OwnLine): OwnHose[] {
  const all = [...line.hoses, ...line.lines.flatMap(ownHoses)];
  return all.filter(
    (hose, index) =>
      all.findIndex((other) => other.size === hose.size && other.length === hose.length) === index,
  );
}

/** Each hose with the flows that it can carry: its first open nozzle alone, and one more at a time. */
export function carriedBy(line: OwnLine): [OwnHose, number[]][] {
  let sum = 0;
  const flows = ownNozzles(line).map(({ flow }) => {
    sum += flow;
    return sum;
  });
  const own = flows.length > 0 ? line.hoses.map((hose): [OwnHose, number[]] => [hose, flows]) : [];
  return [...own, ...line.lines.flatMap(carriedBy)];
}

export function ownNozzles(line: OwnLine): OwnNozzle[] {
  return [...(line.nozzle ? [line.nozzle] : []), ...line.lines.flatMap(ownNozzles)];
}

/** To a tenth: figures were read as SI and go back to the round ones that were written. */
const tidy = (value: number) => Math.round(value * 10) / 10;

function lineOf(steps: readonly Step[], setting: Setting): OwnLine {
  const hoses: OwnHose[] = [];
  let appliances = 0;
  for (const [index, step] of steps.entries()) {
    switch (step.kind) {
      case 'hose':
        hoses.push(hoseOf(step, setting));
        break;
      case 'appliance':
        appliances++;
        break;
      case 'check_valve':
      case 'gauge':
        break;
      case 'branch': {
        const rest = steps.slice(index + 1).filter(({ kind }) => kind !== 'gauge');
        const lines = step.to.map((line) => lineOf(line.steps, setting));
        const main = rest.length > 0 ? [lineOf(steps.slice(index + 1), setting)] : [];
        return { hoses, appliances: appliances + 1, lines: [...lines, ...main] };
      }
      case 'nozzle':
        return {
          hoses,
          appliances,
          nozzle: nozzleOf(step.nozzle, step.name ?? step.label, setting),
          lines: [],
        };
      case 'cap':
        return { hoses, appliances, lines: [] };
      default:
        throw new Unusable(
          `${step.label} is ${withArticle(step.kind.replace('_', ' '))}, and problems are made of ${KINDS}`,
        );
    }
  }
  return { hoses, appliances, lines: [] };
}

function hoseOf(step: HoseStep, setting: Setting): OwnHose {
  const { units } = setting;
  const across = (step.hose.nominal ?? step.hose.inside_diameter) / 0.0254;
  const size = HOSE_SIZES.find((each) => Math.abs(Number(each) - across) < 0.06);
  if (size === undefined || setting.rules.friction.hoses[size] === undefined)
    throw new Unusable(
      `${step.label} is ${step.modelName}, and the rules ${setting.ruleSet.name} have no friction for hose of that size`,
    );
  const si = SI_VALUE[units];
  return {
    size,
    name: HOSE[units][size].name,
    length: tidy(step.length / si.length),
    rise: tidy(step.rise / si.length),
    lines: step.lines ?? 1,
    limit: limitOf(step, size, setting),
  };
}

/** The hose's own working pressure, else nine tenths of its service test (NFPA 1962), else what hose of the size usually bears. */
function limitOf({ hose: { limits } }: HoseStep, size: HoseSize, { units }: Setting): number {
  const si = SI_VALUE[units];
  if (limits?.working !== undefined) return limits.working / si.pressure;
  if (limits?.service_test !== undefined) return (0.9 * limits.service_test) / si.pressure;
  return HOSE[units][size].limit;
}

/** A nozzle at the flow and pressure that it is rated at; a smooth bore by the rule set's pressure and formula. */
function nozzleOf(nozzle: Nozzle, name: string, setting: Setting): OwnNozzle {
  const { units, rules } = setting;
  const si = SI_VALUE[units];
  const whole = (value: number) => (value < 20 ? Math.round(value * 2) / 2 : Math.round(value));
  const round = (value: number, unit: number) => whole(value / unit);
  switch (nozzle.kind) {
    case 'fog':
      return { name, flow: round(nozzle.flow, si.flow), pressure: round(nozzle.pressure, si.pressure) };
    case 'automatic':
      return {
        name,
        flow: round((nozzle.flow_from + nozzle.flow_to) / 2, si.flow),
        pressure: round(nozzle.pressure, si.pressure),
      };
    case 'smooth_bore': {
      const pressure = rules.nozzle.smooth_hand;
      const bore = boreOf(nozzle) / si.bore;
      return { name, flow: whole(rules.smooth_bore.constant * bore ** 2 * Math.sqrt(pressure)), pressure };
    }
    case 'sharp_orifice':
      throw new Unusable(`${name} is a test orifice; the topic typing-orifice has problems of those`);
  }
}
