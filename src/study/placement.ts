import { type Progressive, sectionOf } from '../layout/progressive.js';
import type { LimitMet } from './advance-answer.js';
import type { Reached } from './further.js';
import { alongTrunk, GrowingLay, type LaidOut, type Variant } from './growing-lay.js';
import { intakeFloor, overSetting, pressureLimits } from './lay-limits.js';
import type { Rig } from './rig.js';

/** Slower than this a booster adds too little to be carried up, of its governed speed (a choice of this program). */
const SLOWEST = 0.4;
/** A throttle is set by whole hundredths of governed speed. */
const NOTCH = 0.01;

/**
 * Where a second pump goes, and how far the lay goes with it. It stands as far out as the pressure along the line still
 * brings it its intake (in the line), or still fills the open tank that it draws from. As the lay grows the flow, and with
 * it the loss before the pump, changes, so that its place is moved in whenever its intake would fail.
 *
 * It is throttled so that hose beyond it holds with every nozzle shut; in the line its head then adds to all before it.
 */
export function placedPump(
  rig: Rig,
  plan: Progressive,
  { from, tank, dry }: { from: number; tank: boolean; dry: (laid: LaidOut) => LimitMet[] },
): Reached | undefined {
  const asPlanned = new GrowingLay(rig, plan);
  const plain = alongTrunk(asPlanned, asPlanned.at(Math.min(from, plan.trunk.length)));
  const floor = tank ? 0 : intakeFloor(plan).pressure;
  let after = plain.findLastIndex((pressure) => pressure >= floor) + 1;
  if (after === 0) return undefined;
  let found = variantAt(rig, plan, after, tank);
  let laid: LaidOut | undefined;
  let first: Reached | undefined;
  let section = Math.max(from, after);
  for (; section <= plan.trunk.length; section++) {
    let stop: LimitMet | undefined;
    for (;;) {
      const here = found.at(section);
      const limits = pressureLimits(found, here);
      [stop] = limits.length > 0 ? limits : dry(here);
      if (stop === undefined) laid = here;
      if (stop && first === undefined) first = { lay: found, reached: section - 1, stop };
      const further = stop && placeBefore(found, here, limits, after, floor);
      if (further === undefined) break;
      after = further;
      found = variantAt(rig, plan, after, tank);
    }
    // Where no place does, the first one tried says why: where the pressure along the line put it.
    if (stop && laid === undefined) return first;
    if (stop) return { lay: laid ? placedAs(laid, found) : found, reached: section - 1, laid, stop };
  }
  return { lay: found, reached: plan.trunk.length, laid };
}

/** The place at which the last sound length was solved, which the search may have moved on from. */
const solvedBy = new WeakMap<LaidOut, GrowingLay>();

function placedAs(laid: LaidOut, otherwise: GrowingLay): GrowingLay {
  return solvedBy.get(laid) ?? otherwise;
}

class Placed extends GrowingLay {
  override at(sections: number): LaidOut {
    const laid = super.at(sections);
    solvedBy.set(laid, this);
    return laid;
  }
}

function variantAt(rig: Rig, plan: Progressive, after: number, tank: boolean): GrowingLay {
  const at = (throttle: number): Variant => ({ pump: { after, throttle, tank } });
  const { throttle } = plan.booster;
  const full = new Placed(rig, plan, at(throttle));
  const lowered = heldThrottle(full, throttle);
  return lowered === throttle ? full : new Placed(rig, plan, at(lowered));
}

/**
 * The highest throttle at which the hose beyond a booster holds with all shut. What it adds there goes with the square of
 * its speed, so that one solve tells: s'^2 = s^2 (1 - excess / rise).
 */
function heldThrottle(lay: GrowingLay, throttle: number): number {
  const laid = lay.at(lay.plan.trunk.length);
  const over = overSetting(laid).find(({ state }) => state === 'shut');
  if (!over) return throttle;
  const pump = lay.inserted();
  const rise = laid.shut.totalPressure(pump.discharge) - laid.shut.totalPressure(pump.inlet);
  const square = throttle ** 2 * (1 - (over.value.value - over.limit.value) / rise);
  const held = Math.floor(Math.sqrt(Math.max(0, square)) / NOTCH) * NOTCH;
  return held < SLOWEST ? throttle : held;
}

/**
 * Where the pump must stand instead for what lies before it to have enough: farther in there is more pressure. Undefined
 * where what is short lies beyond it, or where it cannot be moved.
 */
function placeBefore(
  lay: GrowingLay,
  here: LaidOut,
  limits: readonly LimitMet[],
  after: number,
  floor: number,
): number | undefined {
  if (after <= 1) return undefined;
  if (limits.some(({ code }) => code === 'intake_below_floor' || code === 'tank_not_fed')) {
    const before = alongTrunk(lay, here).slice(0, after - 1);
    return Math.max(1, before.findLastIndex((pressure) => pressure >= floor) + 1);
  }
  const short = new Set(limits.filter(({ code }) => code === 'nozzle_below_minimum').map(({ at }) => at));
  const sections = here.nozzles
    .filter(({ name, path }) => short.has(name) && path[1] !== 'end')
    .map(({ step }) => sectionOf(step));
  // What is short beyond the pump stays short wherever it stands. Of what is short before it half is put behind it: with
  // that the rest may have enough, and if not, the next move halves it again.
  if (sections.length === 0 || sections.some((section) => section >= after || section === 0))
    return undefined;
  return sections.sort((a, b) => a - b)[Math.floor(sections.length / 2)];
}
