import type { Hose } from '../catalogue/schema/hose.js';
import type { Pump } from '../catalogue/schema/pump.js';
import type { BranchStep, HoseStep, Modelled, Placed, Step } from './step.js';

/** Which laterals flow while the lay advances. */
export type Flowing = 'all' | 'none' | { last: number } | { numbers: number[] };

/** The pump that may stand in the line, or draw from a portable tank beside it. */
export interface BoosterPlan extends Modelled {
  pump: Pump;
  /** Part of the speed of its curve, at most. */
  throttle: number;
  /** Least gauge pressure at its intake, Pa; undefined where the layout leaves it to the trade's floor. */
  intake?: number;
}

/** A lay that grows a section at a time from where the layout's `lay` ends. */
export interface Progressive extends Placed {
  outlet: string;
  /** What lies before the first section. */
  base: Step[];
  /** Each section as it lies on its piece of ground. */
  trunk: HoseStep[];
  lateral?: { every: number; branch: BranchStep; steps: Step[]; flowing: Flowing };
  /** What the head of the trunk ends in. */
  end: Step[];
  /** Time that a section takes, s. */
  pace?: number;
  booster: BoosterPlan;
  bigger?: Modelled & { hose: Hose };
}

/** How far a progressive lay has grown, and in what it differs from its plan. */
export interface Growth {
  sections: number;
  flowing?: Flowing;
  trunk?: Modelled & { hose: Hose };
  /** Trunks side by side, for each that the plan has. */
  doubled?: boolean;
  /** Steps that stand after the hose of a section and before its wye. */
  inserted?: { after: number; steps: Step[] };
  /** Every lateral open and an end at each section, for a network in which any length of the lay can be opened. */
  everywhere?: boolean;
}

/** The section that a step of a progressive lay belongs to: its own for trunk and end, that of its wye for a lateral. */
const sectionOfStep = new WeakMap<Step, number>();

/** The section that a step was laid at; 0 for what lies before the first. */
export function sectionOf(step: Step | undefined): number {
  return (step && sectionOfStep.get(step)) ?? 0;
}

function mark(steps: readonly Step[], section: number): void {
  for (const step of steps) {
    sectionOfStep.set(step, section);
    if (step.kind === 'branch') for (const line of step.to) mark(line.steps, section);
    if (step.kind === 'siamese') for (const line of step.siamese) mark(line, section);
  }
}

/** How many laterals hang on so many sections. */
export function lateralsOn({ lateral }: Progressive, sections: number): number {
  return lateral === undefined ? 0 : Math.floor(sections / lateral.every);
}

/** Whether lateral `number` of `count` flows. */
export function flows(flowing: Flowing, number: number, count: number): boolean {
  if (typeof flowing === 'string') return flowing === 'all';
  return 'last' in flowing ? number > count - flowing.last : flowing.numbers.includes(number);
}

/** The whole line as it lies once so many sections are laid. */
export function grown(plan: Progressive, growth: Growth): Step[] {
  const { sections, trunk, doubled, inserted, everywhere } = growth;
  const steps: Step[] = [...plan.base];
  const count = lateralsOn(plan, sections);
  const flowing = everywhere ? 'all' : (growth.flowing ?? plan.lateral?.flowing ?? 'none');
  for (let section = 1; section <= sections; section++) {
    const hose = plan.trunk[section - 1];
    const laid = { ...hose, ...trunk, lines: doubled ? 2 * hose.lines : hose.lines };
    mark([laid], section);
    steps.push(laid);
    if (inserted?.after === section) steps.push(...inserted.steps);
    if (plan.lateral && section % plan.lateral.every === 0) {
      const number = section / plan.lateral.every;
      steps.push(lateralAt(plan, number, flows(flowing, number, count)));
    }
    if (everywhere) steps.push(endAt(plan, section));
  }
  return everywhere ? steps : [...steps, ...endSteps(plan, sections)];
}

function endSteps(plan: Progressive, section: number): Step[] {
  const steps = plan.end.map((step) => ({ ...step }));
  mark(steps, section);
  return steps;
}

/** A branch that costs nothing, to what the head of the lay ends in. */
function endAt(plan: Progressive, section: number): BranchStep {
  const { path, at } = plan;
  const label = `head at section ${section}`;
  const to = [{ name: label, steps: endSteps(plan, section), path, at }];
  return {
    kind: 'branch',
    branch: { loss: 0 },
    policy: 'engineering',
    modelName: label,
    label,
    to,
    path,
    at,
  };
}

/** Steps of one lateral are made once: a lay of sixty is written out for each of its sixty lengths. */
const made = new WeakMap<Progressive, Map<string, BranchStep>>();

function lateralAt(plan: Progressive, number: number, open: boolean): BranchStep {
  const known = made.get(plan) ?? new Map<string, BranchStep>();
  made.set(plan, known);
  const key = `${number} ${open}`;
  const before = known.get(key);
  if (before) return before;
  const { branch, steps } = plan.lateral as NonNullable<Progressive['lateral']>;
  const name = `lateral ${number}`;
  const sole = steps.filter(({ kind }) => kind === 'nozzle').length === 1;
  const written = steps.map((step) => numbered(step, number, open, sole));
  const { path, at } = branch;
  const label = `wye ${number}`;
  const step: BranchStep = { ...branch, name: label, label, to: [{ name, steps: written, path, at }] };
  mark([step], number * (plan.lateral?.every ?? 1));
  known.set(key, step);
  return step;
}

function numbered(step: Step, number: number, open: boolean, sole: boolean): Step {
  const count = (text: string) => text.replaceAll('{n}', String(number));
  const name = step.name === undefined ? undefined : count(step.name);
  const label = name ?? (sole && step.kind === 'nozzle' ? `nozzle ${number}` : count(step.label));
  const copy = { ...step, label, ...(name === undefined ? {} : { name }) } as Step;
  switch (copy.kind) {
    case 'nozzle':
      // A nozzle that the document shuts stays shut.
      return { ...copy, state: open ? copy.state : 'shut' };
    case 'branch':
      return {
        ...copy,
        to: copy.to.map((line) => ({
          ...line,
          name: count(line.name),
          steps: line.steps.map((one) => numbered(one, number, open, sole)),
        })),
      };
    case 'siamese':
      return {
        ...copy,
        siamese: copy.siamese.map((line) => line.map((one) => numbered(one, number, open, sole))),
      };
    case 'gauge':
      return { ...copy, gauge: label };
    default:
      return copy;
  }
}
