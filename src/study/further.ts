import { literal, type Statement } from '../caution/caution.js';
import { lateralsOn, type Progressive } from '../layout/progressive.js';
import type { AdvanceOption, AdvanceStep, LimitMet, OptionCode, StoreUse } from './advance-answer.js';
import type { StagingName } from './answer.js';
import { GrowingLay, type LaidOut, type Variant } from './growing-lay.js';
import { intakeFloor, pressureLimits } from './lay-limits.js';
import { distanceTo, farNozzle } from './lay-step.js';
import { fittingsUsed, hoseUsed, lacking } from './lay-stores.js';
import { placedPump } from './placement.js';
import type { Rig } from './rig.js';
import { sustainedFlow, tendersNeeded } from './shuttle.js';
import { loweredThrottle } from './throttle-down.js';
import { WaterOnTheWay, waterLimits } from './water-on-the-way.js';

/** Governed speed. */
const FULL = 1;

/** How far a variant goes, and what stops it. */
export interface Reached {
  lay: GrowingLay;
  reached: number;
  /** At the last section that nothing breaks. */
  laid?: LaidOut;
  stop?: LimitMet;
  /** Where the tank would be down to its reserve. */
  dryAt?: number;
  /** The most that is drawn on the way, m3/s. */
  most?: number;
}

/** Follows a variant from a section on until a limit of pressure stops it, or what `dry` finds. */
export function follow(
  lay: GrowingLay,
  from: number,
  dry: (laid: LaidOut) => LimitMet[] = () => [],
): Reached {
  let laid: LaidOut | undefined;
  for (let section = from; section <= lay.plan.trunk.length; section++) {
    const here = lay.at(section);
    const [stop] = [...pressureLimits(lay, here), ...dry(here)];
    if (stop) return { lay, reached: section - 1, laid, stop };
    laid = here;
  }
  return { lay, reached: lay.plan.trunk.length, laid };
}

/** What would take a stopped lay further, each solved, the farthest first. */
export function furtherOptions(
  rig: Rig,
  plan: Progressive,
  steps: readonly AdvanceStep[],
  water: WaterOnTheWay,
): AdvanceOption[] {
  const last = steps[steps.length - 1];
  const [stop] = last.limits;
  const plain = new GrowingLay(rig, plan);
  const started = steps.length - 1;
  // Where water is what ran out, what would go on without more of it is no way further: tenders are then counted on.
  const fed = last.limits.some(({ code }) => code === 'water_run_out');
  const further = new Further(rig, plan, { started, water, fed });
  const stopped = stop.code.endsWith('run_out')
    ? further.followed(plain, last.section)
    : { lay: plain, reached: started, stop };
  if (stop.code.endsWith('run_out')) further.addStores(last, stopped);
  if (stopped.stop) further.addPressure(stopped, steps);
  return further.options.sort((a, b) => b.reached - a.reached);
}

class Further {
  readonly options: AdvanceOption[] = [];
  private readonly rig: Rig;
  private readonly plan: Progressive;
  /** The last sound section of the plan as it stands. */
  private readonly started: number;
  private readonly water: WaterOnTheWay;
  /** Tenders are counted on, and where the tank would run dry is said. */
  private readonly fed: boolean;

  constructor(rig: Rig, plan: Progressive, given: { started: number; water: WaterOnTheWay; fed: boolean }) {
    this.rig = rig;
    this.plan = plan;
    this.started = given.started;
    this.water = given.water;
    this.fed = given.fed;
  }

  /** A variant from a section on; from the first one it pours its own water all the way. */
  followed(lay: GrowingLay, from: number): Reached {
    return { ...follow(lay, from, this.watch(from)), ...this.watched };
  }

  /** What the water of the variant that is followed last came to. */
  private watched: Pick<Reached, 'dryAt' | 'most'> = {};

  private watch(from: number): (laid: LaidOut) => LimitMet[] {
    const water = new WaterOnTheWay(this.rig.layout, from > 1 ? this.water : undefined);
    const watched: Pick<Reached, 'dryAt' | 'most'> = {};
    this.watched = watched;
    return (laid) => {
      const limits = waterLimits(water.left(laid));
      watched.most = Math.max(watched.most ?? 0, water.most(laid.sections, laid.sections));
      if (limits.length > 0) watched.dryAt ??= laid.sections;
      return this.fed ? [] : limits;
    };
  }

  /** What has run out, brought. */
  addStores(last: AdvanceStep, ahead: Reached): void {
    const codes = new Set(last.limits.map(({ code }) => code));
    if (codes.has('hose_run_out'))
      this.add('more_hose', { template: 'more hose of the kind that is laid' }, ahead);
    else if (codes.has('fittings_run_out'))
      this.add('more_fittings', { template: 'more of the fittings that run out' }, ahead);
    if (codes.has('water_run_out'))
      this.add(
        'tender_shuttle',
        this.tenders(Math.max(ahead.most ?? 0, this.water.most(1, last.section))),
        ahead,
      );
  }

  private tenders(flow: number): Statement {
    const { shuttle } = this.rig.layout;
    const values = { flow: { value: flow, dimension: 'flow' as const } };
    if (!shuttle) return { template: 'tenders that sustain {flow}', values };
    const needed = tendersNeeded(shuttle, flow);
    const sustained = { value: sustainedFlow(shuttle), dimension: 'flow' as const };
    return {
      template:
        needed === undefined
          ? 'a second fill and dump site: one passes less than the {flow} drawn; tenders bring {sustained} now'
          : `${needed} tenders, which sustain the {flow} drawn; ${shuttle.tenders} bring {sustained}`,
      values: { ...values, sustained },
    };
  }

  /** What goes on where pressure stops the lay. */
  addPressure(stopped: Reached, steps: readonly AdvanceStep[]): void {
    const from = stopped.reached + 1;
    this.addLaterals(from);
    this.addStagings();
    this.addThrottle(stopped, steps);
    this.addPumps(from);
    this.addTrunks(from);
  }

  private addLaterals(from: number): void {
    const { lateral } = this.plan;
    if (!lateral || lateral.flowing === 'none') return;
    const { flowing } = lateral;
    const open =
      flowing === 'all'
        ? lateralsOn(this.plan, from)
        : 'last' in flowing
          ? Math.min(flowing.last, lateralsOn(this.plan, from))
          : flowing.numbers.filter((number) => number <= lateralsOn(this.plan, from)).length;
    const half = Math.floor(open / 2);
    if (half > 0) {
      const which = half === 1 ? 'the last lateral alone open' : `the last ${half} laterals alone open`;
      this.try('fewer_laterals', { template: which }, { flowing: { last: half } }, from);
    }
    if (open > 0 && this.plan.end.some(({ kind }) => kind === 'nozzle'))
      this.try(
        'laterals_shut',
        { template: 'every lateral shut while the head advances' },
        { flowing: 'none' },
        from,
      );
  }

  private addStagings(): void {
    const { staging } = this.rig.layout;
    const others: StagingName[] = ['parallel', 'series', 'series_reversed'];
    for (const other of others.filter(
      (one) => one !== staging && this.rig.can(one) && staging !== 'separate',
    )) {
      const { a, b } = this.rig.layout.engine.pumps;
      // Two pumps alike make nearly the same in either order.
      if (other === 'series_reversed' && b && a.model === b.model) continue;
      this.try('staging', stagingWords(other, staging), { staging: other }, 1);
    }
  }

  /** Down where hose stands over its limit; up, as far as the hose bears it, where anything else stops the lay. */
  private addThrottle(stopped: Reached, steps: readonly AdvanceStep[]): void {
    const { throttle } = this.rig.layout;
    const down = stopped.stop?.code === 'hose_over_limit';
    const now = throttle.by === 'speed' ? Math.min(throttle.a, throttle.b) : undefined;
    if (!down && (steps.length === 0 || (now !== undefined && now >= FULL))) return;
    // What just clears this section may be stopped by the next: what clears the whole plan is tried as well.
    const lengths = [Math.min(stopped.reached + 1, this.plan.trunk.length), this.plan.trunk.length];
    const found = lengths.map((length) => loweredThrottle(this.rig, this.plan, length));
    const tried = new Set(
      found.filter((one) => one !== undefined && (down || now === undefined || one > now)),
    );
    const [best] = [...tried]
      .map((one = FULL) => ({
        throttle: one,
        found: this.followed(new GrowingLay(this.rig, this.plan, { throttle: one }), 1),
      }))
      .sort((a, b) => b.found.reached - a.found.reached || a.throttle - b.throttle);
    if (best) this.add('throttle', throttleWords(best.throttle, down ? 'down' : 'up'), best.found);
  }

  private addPumps(from: number): void {
    for (const tank of [false, true]) {
      const placing = placedPump(this.rig, this.plan, { from, tank, dry: this.watch(from) });
      if (!placing) continue;
      const found = { ...placing, ...this.watched };
      const { lay, laid, reached } = found;
      const placed = lay.variant.pump;
      const option = this.add(
        tank ? 'portable_tank' : 'booster',
        {
          template: tank
            ? `a portable tank with ${literal(this.plan.booster.modelName)} at the end of section {section}, before the wye there`
            : `${literal(this.plan.booster.modelName)} as a booster at the end of section {section}, before the wye there`,
          values: { section: String(placed?.after ?? 0) },
        },
        found,
      );
      const pump = laid?.pump;
      if (!placed || !pump || reached < from) continue;
      const floor = tank
        ? { pressure: 0, source: 'water runs into an open tank at the pressure of the air' }
        : intakeFloor(this.plan);
      option.placement = {
        section: placed.after,
        distance: distanceTo(this.plan, placed.after),
        height: lay.sectionEnd(placed.after).elevation,
        pump: this.plan.booster.modelName,
        throttle: placed.throttle,
        intake: pump.intake,
        discharge: pump.discharge,
        flow: pump.flow,
        floor: floor.pressure,
        source: floor.source,
      };
    }
  }

  private addTrunks(from: number): void {
    const { bigger } = this.plan;
    this.try(
      'doubled_trunk',
      { template: 'the trunk laid double, two lines side by side' },
      { doubled: true },
      from,
    );
    if (bigger)
      this.try(
        'bigger_trunk',
        { template: `a trunk of ${literal(bigger.modelName)}` },
        { trunk: bigger },
        from,
      );
  }

  private try(code: OptionCode, title: Statement, variant: Variant, from: number): void {
    this.add(code, title, this.followed(new GrowingLay(this.rig, this.plan, variant), from));
  }

  private add(
    code: OptionCode,
    title: Statement,
    { lay, reached, laid, stop, dryAt }: Reached,
  ): AdvanceOption {
    const far = laid && farNozzle(laid);
    const option: AdvanceOption = {
      code,
      title,
      reached: Math.min(reached, this.plan.trunk.length),
      gained: reached - this.started,
      distance: distanceTo(this.plan, reached),
      height: reached > 0 ? lay.sectionEnd(reached).elevation : 0,
      farNozzle: far && { name: far.name, flow: far.flow, pressure: far.pressure },
      stop,
      needs: reached > 0 ? needs(lay, reached) : [],
      dryAt:
        this.fed && code !== 'tender_shuttle' && dryAt !== undefined && dryAt <= reached ? dryAt : undefined,
    };
    this.options.push(option);
    return option;
  }
}

/** What a length takes beyond what is carried. */
function needs(lay: GrowingLay, reached: number): StoreUse[] {
  const layout = lay.layoutAt(reached);
  return lacking([...hoseUsed(layout), ...fittingsUsed(layout)]);
}

function stagingWords(staging: StagingName, now: StagingName): Statement {
  const words: Partial<Record<StagingName, string>> = {
    parallel: 'in parallel',
    series: 'in series, a into b',
    series_reversed: 'in series, b into a',
  };
  const before = now === 'a' || now === 'b' ? `pump ${now} alone` : (words[now] ?? now);
  return { template: `both pumps ${words[staging]} instead of ${before}` };
}

function throttleWords(throttle: number, way: 'up' | 'down'): Statement {
  return {
    template:
      way === 'up'
        ? throttle >= FULL
          ? 'full throttle'
          : 'throttle up to {throttle} of governed speed, as far as the hose may be set for'
        : 'throttle down to {throttle} of governed speed, so that the hose holds',
    values: { throttle: { value: throttle, dimension: 'ratio' } },
  };
}
