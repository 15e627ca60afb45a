import { type Progressive, sectionOf } from '../layout/progressive.js';
import type { LimitMet } from './advance-answer.js';
import type { Reached } from './further.js';
import { alongTrunk, GrowingLay, type LaidOut, type Variant } from './growing-lay.js';
import { intakeFloor, pressureLimits } from './lay-limits.js';
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
export function placedPump(rig: Rig, plan: Progressive, from: number, tank: boolean): Reached | undefined {
  const asPlanned = new GrowingLay(rig, plan);
  const plain = alongTrunk(asPlanned, asPlanned.at(Math.min(from, plan.trunk.length)));
  const floor = tank ? 0 : intakeFloor(plan).pressure;
  let after = plain.findLastIndex((pressure) => pressure >= floor) + 1;
  if (after === 0) return undefined;
  let found = variantAt(rig, plan, after, tank);
  let laid: LaidOut | undefined;
  let section = Math.max(from, after);
  for (; section <= plan.trunk.length; section++) {
    let stop: LimitMet | undefined;
    for (;;) {
      const here = found.at(section);
      [stop] = pressureLimits(found, here);
      if (stop === undefined) laid = here;
      // Farther in there is more pressure before the pump; what is short beyond it stays short.
      if (stop === undefined || !isBefore(stop, here, after) || after === 1) break;
      after -= 1;
      found = variantAt(rig, plan, after, tank);
    }
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
  const over = pressureLimits(lay, laid).find(
    ({ code, state }) => code === 'hose_over_limit' && state === 'shut',
  );
  if (!over) return throttle;
  const pump = lay.inserted();
  const rise = laid.shut.totalPressure(pump.discharge) - laid.shut.totalPressure(pump.inlet);
  const square = throttle ** 2 * (1 - (over.value.value - over.limit.value) / rise);
  const held = Math.floor(Math.sqrt(Math.max(0, square)) / NOTCH) * NOTCH;
  return held < SLOWEST ? throttle : held;
}

/** Whether a limit is met by what lies before the pump. */
function isBefore(stop: LimitMet, { nozzles }: LaidOut, after: number): boolean {
  if (stop.code === 'intake_below_floor' || stop.code === 'tank_not_fed') return true;
  if (stop.code !== 'nozzle_below_minimum') return false;
  const nozzle = nozzles.find(({ name }) => name === stop.at);
  return nozzle !== undefined && nozzle.path[1] !== 'end' && sectionOf(nozzle.step) < after;
}
