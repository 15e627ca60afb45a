import type { AssembledNozzle, AssembledPump, StagingName } from '../assembly/assembly.js';
import type { Element } from '../assembly/network-builder.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Layout, Throttle } from '../layout/layout.js';
import {
  type Flowing,
  flows,
  type Growth,
  grown,
  lateralsOn,
  type Progressive,
  sectionOf,
} from '../layout/progressive.js';
import type { PumpStep, Step } from '../layout/step.js';
import { DEAD, SHUT_SLOPE } from '../network/chain-losses.js';
import { holdPressure } from './governor.js';
import { laidHose } from './ground-line.js';
import { type Rig, SolvedAssembly } from './rig.js';
import { drawnFrom } from './supply.js';

/** In what a lay differs from its plan. */
export interface Variant {
  staging?: StagingName;
  /** Part of governed speed of the engine's pumps. */
  throttle?: number;
  flowing?: Flowing;
  trunk?: Progressive['bigger'];
  doubled?: boolean;
  /** A pump in the line after a section, or with a portable tank before it. */
  pump?: { after: number; throttle: number; tank: boolean };
}

/** A lay at a length of so many sections: flowing, and with every nozzle shut. */
export interface LaidOut {
  sections: number;
  /** Of the whole plan; what is not laid yet stands shut. */
  point: OperatingPoint;
  solved: SolvedAssembly;
  /** Every nozzle shut. */
  shut: OperatingPoint;
  /** What is laid, each as it stands. */
  nozzles: readonly AssembledNozzle[];
  hose: readonly Element[];
  /** The pump of the variant, and where it draws from. */
  pump?: { intake: number; discharge: number; flow: number };
}

const BOOSTER = 'booster';
/** The tank that a variant puts in. */
export const VARIANT_TANK = 'portable tank of the variant';
/** A head that no pump reaches, m: under it a nozzle passes nothing, as if it were shut. */
const SHUT = 2000;
/** What drips from a nozzle that is shut, m3/s: more than presses back in past it, so that the pumps tell its pressure. */
const SEEPS = 1.5 * (SHUT / SHUT_SLOPE + DEAD);

/**
 * A variant of a progressive lay, solved at one length after another. The whole plan is one network, with an end at each
 * section; a length of it is opened by the heads behind its nozzles, so that every solve starts from the last.
 */
export class GrowingLay {
  readonly rig: Rig;
  readonly plan: Progressive;
  readonly variant: Variant;
  readonly staging: StagingName;
  private readonly solved: SolvedAssembly;
  private readonly shutSolved: SolvedAssembly;
  private readonly own: readonly AssembledPump[];
  private readonly hose: readonly Element[];
  private shutPoint: { at: string; point: OperatingPoint } | undefined;

  constructor(rig: Rig, plan: Progressive, variant: Variant = {}) {
    this.rig = rig;
    this.plan = plan;
    this.variant = variant;
    this.staging = variant.staging ?? rig.layout.staging;
    const whole = this.layoutWith({ sections: plan.trunk.length, everywhere: true });
    const assembly = rig.with(whole).assemble({ staging: this.staging, lay: 'whole' });
    this.own = assembly.pumps.filter(({ booster }) => !booster);
    this.solved = new SolvedAssembly(assembly);
    this.shutSolved = new SolvedAssembly(assembly);
    for (const nozzle of assembly.nozzles) set(this.shutSolved, nozzle, false);
    this.hose = laidHose(assembly);
  }

  at(sections: number): LaidOut {
    const { solved } = this;
    const nozzles = this.open(sections);
    const point = this.governed();
    const hose = this.hose.filter(
      ({ step }) => sectionOf(step) <= sections && !this.isOtherEnd(step, sections),
    );
    const laid: LaidOut = { sections, solved, point, shut: this.shutAt(), nozzles, hose };
    const { pump } = this.variant;
    return pump ? this.fed(laid, pump) : laid;
  }

  /** The layout as it lies at a length, with nothing of what comes after. */
  layoutAt(sections: number): Layout {
    return this.layoutWith({ sections, flowing: this.variant.flowing });
  }

  private layoutWith(growth: Growth): Layout {
    const { layout } = this.rig;
    const { outlet } = this.plan;
    const { trunk, doubled, pump } = this.variant;
    const inserted = pump && { after: pump.after, steps: this.pumpSteps(pump) };
    const steps = grown(this.plan, { trunk, doubled, inserted, ...growth });
    const lay = layout.lay.map((one) => (one.outlet === outlet ? { outlet, steps } : one));
    return { ...layout, throttle: this.throttle(), lay };
  }

  private pumpSteps({ throttle, tank }: NonNullable<Variant['pump']>): Step[] {
    const { booster, path, at } = this.plan;
    const { id, modelName, pump } = booster;
    const step: PumpStep = { kind: 'pump', id, modelName, pump, throttle, label: BOOSTER, path, at };
    if (!tank) return [step];
    // The valve at the tank is gated to what is drawn from it, which `fed` puts in as a draw.
    return [
      { kind: 'valve', valve: { k: 0 }, open: 0, modelName: 'valve', label: 'gated inlet', path, at },
      { kind: 'tank', tank: 1, label: VARIANT_TANK, path, at },
      step,
    ];
  }

  /** Opens what flows at a length and shuts all else; gives what is laid. */
  private open(sections: number): AssembledNozzle[] {
    const { plan, solved } = this;
    const flowing = this.variant.flowing ?? plan.lateral?.flowing ?? 'none';
    const count = lateralsOn(plan, sections);
    const laid: AssembledNozzle[] = [];
    for (const nozzle of solved.assembly.nozzles) {
      const section = sectionOf(nozzle.step);
      const there = section <= sections && !this.isOtherEnd(nozzle.step, sections);
      const lateral = nozzle.path[1] === 'lateral' ? section / (plan.lateral?.every ?? 1) : undefined;
      const isOpen =
        there && nozzle.state === 'open' && (lateral === undefined || flows(flowing, lateral, count));
      set(solved, nozzle, isOpen);
      if (there) laid.push(isOpen || nozzle.state === 'shut' ? nozzle : { ...nozzle, state: 'shut' });
    }
    return laid;
  }

  /** Whether a step is an end of the lay at another length. */
  private isOtherEnd(step: Step | undefined, sections: number): boolean {
    return step?.path[0] === 'progressive' && step.path[1] === 'end' && sectionOf(step) !== sections;
  }

  /** Solved at the plan's throttle, which may be a pressure to hold. */
  private governed(): OperatingPoint {
    const { solved } = this;
    const throttle = this.throttle();
    if (throttle.by === 'speed') return solved.solve();
    return holdPressure(solved, throttle.discharge_pressure);
  }

  private throttle(): Throttle {
    const { throttle } = this.variant;
    return throttle === undefined ? this.rig.layout.throttle : { by: 'speed', a: throttle, b: throttle };
  }

  /**
   * Every nozzle shut, with the pumps as fast as they flowed, or turned down by a governor that holds a pressure. Where
   * nothing flows, what is laid further on changes no pressure in what lies before it, so that the whole plan is solved and
   * read as far as it is laid.
   */
  private shutAt(): OperatingPoint {
    const throttle = this.throttle();
    const held = throttle.by === 'discharge_pressure';
    const at = held ? 'held' : this.own.map(({ speed }) => speed).join(' ');
    if (this.shutPoint?.at !== at) {
      const flowing = this.own.map(({ speed }) => speed);
      for (const { link, speed } of this.own) this.shutSolved.setSpeed(link, speed);
      const point = held
        ? holdPressure(this.shutSolved, throttle.discharge_pressure)
        : this.shutSolved.solve();
      // The pumps of both states are the same, and are read at the speeds that water flows at.
      for (const [index, pump] of this.own.entries()) pump.speed = flowing[index];
      this.shutPoint = { at, point };
    }
    return this.shutPoint.point;
  }

  /** The state with the variant's pump fed: out of a portable tank, what it draws must come up the line. */
  private fed(laid: LaidOut, { after, tank }: NonNullable<Variant['pump']>): LaidOut {
    const { solved } = this;
    const pump = this.inserted();
    const before = this.sectionEnd(after);
    let { point } = laid;
    if (tank) {
      solved.setDemand(before.node, Math.max(0, drawnFrom(point, pump.inlet.node)));
      point = solved.solve();
    }
    const intake = point.totalPressure(tank ? before : pump.inlet);
    const fed = { intake, discharge: point.totalPressure(pump.discharge), flow: point.flow(pump.link) };
    return { ...laid, point, pump: fed };
  }

  /** The pump that the variant puts in. */
  inserted(): AssembledPump {
    const pump = this.solved.assembly.pumps.find(({ name, booster }) => booster && name === BOOSTER);
    if (pump === undefined) throw new TypeError('the variant has no pump of its own');
    return pump;
  }

  /** Where a section of the trunk ends. */
  sectionEnd(section: number): Element['to'] {
    const found = this.hose.find(({ step }) => sectionOf(step) === section && step?.path[1] === 'trunk');
    if (found === undefined) throw new TypeError(`section ${section} is not laid`);
    return found.to;
  }
}

/** Opens or shuts a nozzle by the head behind it. */
function set(solved: SolvedAssembly, { link, inlet }: AssembledNozzle, open: boolean): void {
  if (link === undefined) return;
  const { links, nodes } = solved.assembly.network;
  solved.setHead(links[link].to, inlet.elevation + (open ? 0 : SHUT));
  if (nodes[inlet.node].head === undefined) solved.setDemand(inlet.node, open ? 0 : SEEPS);
}

/** Total pressure at the end of each section, Pa. */
export function alongTrunk(lay: GrowingLay, { point, sections }: LaidOut): number[] {
  return Array.from({ length: sections }, (_, index) => point.totalPressure(lay.sectionEnd(index + 1)));
}
