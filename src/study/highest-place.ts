import type { TypingAsked } from '../layout/layout.js';
import { FOOT } from '../physics/customary.js';
import type { HighestPlace } from './answer.js';
import { under } from './conditions.js';
import { closeIn } from './falling-root.js';
import { slackHere } from './judge.js';
import { atItsLimit, LUGGING, restsOnPower } from './power-bracket.js';
import type { Rig } from './rig.js';

/** Highest place that is looked at, m (19,685 ft): as high as the derating rules are read. */
const TOP = 6000;
/** Places are found to this, m. */
const FOUND = 50 * FOOT;

/** Near enough: a slack of this part of what is asked. */
const NEAR = 5e-5;

/**
 * The highest place at which the pumps' verdict still stands, with the day and everything else as laid out: higher up the
 * engines have less power and the air pushes less water into the pumps, so that nothing gets better on the way up. It is
 * looked for from sea level to the top, wherever the layout's own site is. Where a file gives no power it lies in a bracket,
 * as the verdict does, and the least of that is the answer.
 */
export function highestPlace(rig: Rig, typing: TypingAsked): HighestPlace {
  const rigAt = (height: number) => rig.with(under(rig.layout, { elevation: height }));
  const spare = closeInOn((height) => slackHere(rigAt(height), typing));
  if (!restsOnPower(rigAt(TOP))) return spare;
  const cases = LUGGING.map((lugging) => ({
    engine: lugging,
    ...closeInOn((height) => slackHere(atItsLimit(rigAt(height), lugging), typing)),
  }));
  const all = [{ engine: 'power_to_spare' as const, ...spare }, ...cases];
  const { stands, upTo } = all.reduce((least, one) => (heightOf(one) < heightOf(least) ? one : least));
  return { stands, upTo, cases: all };
}

const heightOf = ({ stands, upTo }: HighestPlace) =>
  stands === 'nowhere' || upTo === undefined ? Number.NEGATIVE_INFINITY : upTo;

function closeInOn(slackAt: (height: number) => number): HighestPlace {
  const at = (height: number) => ({ value: slackAt(height) });
  const atLow = at(0);
  if (atLow.value < 0) return { stands: 'nowhere' };
  const atHigh = at(TOP);
  if (atHigh.value >= 0) return { stands: 'everywhere', upTo: TOP };
  const bracket = { low: 0, atLow, high: TOP, atHigh };
  return { stands: 'up_to', upTo: closeIn(at, bracket, FOUND, ({ value }) => value < NEAR).low };
}
