import type { AssembledNozzle } from '../assembly/assembly.js';
import { localLossLaw, lossAtFlow } from '../assembly/laws.js';
import type { Element } from '../assembly/network-builder.js';
import { flowAtPressure, needOf } from '../assembly/nozzle-needs.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { type AppliancePolicy, applianceLoss } from '../catalogue/schema/appliance.js';
import type { LocalLoss } from '../catalogue/schema/local-loss.js';
import { FOOT, GALLON_PER_MINUTE, PSI } from '../physics/customary.js';
import type { Statement } from './answer.js';
import type { HabitAnswer } from './field-answer.js';
import { habitOf } from './habit.js';
import { LayPaths, trunkOf } from './paths.js';
import type { HandRule, RuleSet } from './require-answer.js';

/** A flow that came through a change of units still stands on the edge of its band. */
const ROUNDING = 1e-9;

interface Rules {
  rules: RuleSet;
  /** What appliances cost by. */
  policy: AppliancePolicy;
  /** Pa per m of height. */
  height: number;
  /** To which the pressure is rounded, Pa; 0 for not at all. */
  rounding: number;
  template: string;
  source: string;
}

/** Kept apart on purpose: a sum that mixes them is nobody's. */
const RULE_SETS: readonly Rules[] = [
  {
    rules: 'wildland',
    policy: 'wildland',
    height: (0.5 * PSI) / FOOT,
    rounding: PSI,
    template:
      'Wildland field rule: hose by C Q^2 L section by section, {stated_appliance} for each appliance, {stated_height} for each {stated_each} of height, to whole psi',
    source: 'NWCG Firefighter Math 3.4',
  },
  {
    rules: 'structural',
    policy: 'structural',
    height: (0.5 * PSI) / FOOT,
    rounding: 5 * PSI,
    template:
      'Structural rule: hose by C Q^2 L section by section, nothing for an appliance under {stated_from} and {stated_appliance} from there up, {stated_height} for each {stated_each} of height, to the nearest {stated_rounding}',
    source: 'IFSTA fireground calculation cards; county driver-certification hydraulics reference, 2019',
  },
  {
    rules: 'engineering',
    policy: 'engineering',
    height: (43.4 * PSI) / (100 * FOOT),
    rounding: 0,
    template:
      'Engineering rule: hose by C Q^2 L section by section, appliances by what is known of each, {stated_height} for each {stated_each} of height, not rounded',
    source:
      'NWCG Firefighter Math 3.4 (0.434 psi per foot); USDA Forest Service Tech Tip 0651-1309-SDTDC (2006)',
  },
];

function stampOf({ rules, template, source, rounding }: Rules): Statement {
  const pressure = (value: number) => ({ value, dimension: 'pressure' as const });
  return {
    template,
    values: {
      stated_appliance: pressure((rules === 'structural' ? 10 : 5) * PSI),
      stated_height: pressure((rules === 'engineering' ? 43.4 : 50) * PSI),
      stated_each: { value: 100 * FOOT, dimension: 'length' },
      stated_rounding: pressure(rounding),
      stated_from: { value: 350 * GALLON_PER_MINUTE, dimension: 'flow' },
    },
    source,
  };
}

/** The lay as a notebook has it: each open nozzle at its rated flow, the flows added up from the far end. */
export class Notebook {
  /** Why no hand rule holds for this lay. */
  readonly omitted: Statement | undefined;
  private readonly state: OperatingPoint;
  private readonly nozzles: readonly {
    nozzle: AssembledNozzle;
    path: Element[];
    pressure: number;
    flow: number;
  }[];
  private readonly paths: LayPaths;
  private readonly flows = new Map<Element, number>();
  /** Where each list of steps starts and ends. */
  private readonly lines = new Map<string, { first: Element; last: Element }>();

  constructor(state: OperatingPoint) {
    const { assembly } = state;
    this.state = state;
    this.paths = new LayPaths(assembly);
    this.nozzles = assembly.nozzles.flatMap((nozzle) => {
      const need = needOf(nozzle);
      if (nozzle.state === 'shut' || need === undefined || nozzle.link === undefined) return [];
      // An automatic nozzle passes what is left: as it flows in the state.
      const flow = flowAtPressure(nozzle, need.pressure, assembly.site) ?? state.flow(nozzle.link);
      return [{ nozzle, path: this.paths.to(nozzle.inlet), pressure: need.pressure, flow }];
    });
    for (const { path, flow } of this.nozzles)
      for (const element of path) this.flows.set(element, (this.flows.get(element) ?? 0) + flow);
    for (const element of assembly.elements) {
      const first = this.lines.get(element.group)?.first ?? element;
      this.lines.set(element.group, { first, last: element });
    }
    const broken = this.nozzles.some(({ path }) =>
      path.some(({ kind }) => kind === 'tank' || kind === 'pump'),
    );
    if (broken) {
      this.omitted = {
        template:
          'A booster or an open tank stands in the line: the hand rules add up one pump and its hose, and are left out',
      };
    }
  }

  /** The same lay by each rule set. */
  byRules(): HandRule[] {
    if (this.omitted || this.nozzles.length === 0) return [];
    return RULE_SETS.map((rules) => {
      const sums = this.nozzles.map((one) => this.sum(one, rules));
      return sums.reduce((kept, one) => (one.pressure > kept.pressure ? one : kept));
    });
  }

  /** The trunk to the farthest nozzle at rated flows, as the habit of taking all flow to the end has it. */
  habits(): HabitAnswer[] {
    if (this.omitted) return [];
    const { assembly } = this.state;
    return assembly.outlets.flatMap(({ name }) => {
      const own = this.nozzles.filter(({ nozzle }) => this.paths.outletOf(nozzle) === name);
      const far = this.paths.farthest(own.map(({ nozzle }) => nozzle));
      const path = own.find(({ nozzle }) => nozzle === far)?.path;
      if (path === undefined) return [];
      const habit = habitOf(
        trunkOf(path),
        (element) => this.flowIn(element),
        (element) => this.friction(element),
        this.state,
      );
      return habit.endToEnd - habit.actual > 5 * PSI ? [{ outlet: name, ...habit }] : [];
    });
  }

  private sum(one: Notebook['nozzles'][number], rules: Rules): HandRule {
    const { nozzle, path, pressure: nozzlePressure } = one;
    const { assembly } = this.state;
    const outletName = this.paths.outletOf(nozzle) ?? 'outlet';
    const outlet = assembly.outlets.find(({ name }) => name === outletName) ?? assembly.outlets[0];
    const climb = nozzle.inlet.elevation - outlet.place.elevation;
    let friction = 0;
    let appliances = 0;
    let applianceCount = 0;
    for (const element of path) {
      const { step, bore } = element;
      if (step?.kind === 'appliance' || step?.kind === 'branch') {
        const model = step.kind === 'appliance' ? step.appliance : step.branch;
        applianceCount += 1;
        appliances += this.allowance(applianceLoss(model, rules.policy), this.flowIn(element), bore);
      } else friction += this.friction(element);
    }
    const height = climb * rules.height;
    const exact = nozzlePressure + friction + appliances + height;
    return {
      rules: rules.rules,
      nozzle: nozzle.name,
      outlet: outlet.name,
      flow: path.length === 0 ? one.flow : this.flowIn(path[0]),
      nozzlePressure,
      friction,
      appliances,
      applianceCount,
      height,
      climb,
      pressure: rules.rounding === 0 ? exact : Math.round(exact / rules.rounding) * rules.rounding,
      stamp: stampOf(rules),
    };
  }

  /** As a rule charges it: a band from its flow up, in full, where the solver has a ramp. */
  private allowance(loss: LocalLoss, flow: number, bore: number | undefined): number {
    if (loss.law === 'fixed') return loss.loss;
    if (loss.law === 'bands')
      return loss.bands.findLast(({ from }) => flow >= from * (1 - ROUNDING))?.loss ?? 0;
    const law = localLossLaw(loss, bore, this.state.assembly.site);
    return law ? this.state.pressureOf(lossAtFlow(law, flow)) : 0;
  }

  private friction(element: Element): number {
    return this.state.pressureOf(lossAtFlow(element.law, this.flowIn(element)));
  }

  /** In one of several lines that part and meet again, the part of the flow that it takes in the state. */
  private flowIn(element: Element): number {
    const flow = this.flows.get(element) ?? 0;
    const own = this.lines.get(element.group);
    if (own === undefined) return flow;
    const beside = [...this.lines.values()].filter(({ first, last }) => {
      return first.from.node === own.first.from.node && last.to.node === own.last.to.node;
    });
    if (beside.length < 2) return flow;
    const all = beside.reduce((sum, { first }) => sum + this.state.flow(first.link), 0);
    return all > 0 ? (flow * this.state.flow(own.first.link)) / all : flow / beside.length;
  }
}
