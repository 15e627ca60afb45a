import type { Progressive } from '../layout/progressive.js';
import { GrowingLay } from './growing-lay.js';
import { overSetting } from './lay-limits.js';
import type { Rig } from './rig.js';

/** A throttle is set by whole hundredths of governed speed. */
const NOTCH = 0.01;
/** Slower than this no pump of an engine is run to fight fire (a choice of this program). */
const SLOWEST = 0.3;

/**
 * The highest throttle at which no hose stands over what a setting may let it stand at, at a length; undefined where none of
 * use is low enough.
 */
export function loweredThrottle(rig: Rig, plan: Progressive, sections: number): number | undefined {
  const holds = (throttle: number) => {
    const lay = new GrowingLay(rig, plan, { throttle });
    return overSetting(lay.at(sections)).length === 0;
  };
  let low = Math.round(SLOWEST / NOTCH);
  let high = Math.round(1 / NOTCH);
  if (!holds(low * NOTCH)) return undefined;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle * NOTCH)) low = middle;
    else high = middle;
  }
  return low * NOTCH;
}
