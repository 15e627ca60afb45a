import type { TypingAsked } from '../layout/layout.js';
import { FOOT } from '../physics/customary.js';
import type { HighestPlace, VerdictUnder } from './answer.js';
import { under } from './conditions.js';
import { closeIn } from './falling-root.js';
import type { Rig } from './rig.js';
import { slackOf, verdictHere } from './verdict-here.js';

/** Highest place that is looked at, m (19,685 ft): as high as the derating rules are read. */
const TOP = 6000;
/** Places are found to this, m. */
const FOUND = 50 * FOOT;

/** Near enough: a slack of this part of what is asked. */
const NEAR = 5e-5;

/**
 * The highest place at which the pumps' verdict still stands, with the day and everything else as laid out: higher up the
 * engines have less power and the air pushes less water into the pumps, so that nothing gets better on the way up.
 */
export function highestPlace(rig: Rig, typing: TypingAsked, here: VerdictUnder): HighestPlace {
  const at = (elevation: number) => ({
    value: slackOf(verdictHere(rig.with(under(rig.layout, { elevation })), typing)),
  });
  const { elevation } = rig.layout.site;
  const atSite = { value: slackOf(here) };
  const stands = atSite.value >= 0;
  if (!stands && elevation <= 0) return { stands: 'nowhere' };
  const atOther = at(stands ? TOP : 0);
  if (stands && atOther.value >= 0) return { stands: 'everywhere', upTo: TOP };
  if (!stands && atOther.value < 0) return { stands: 'nowhere' };
  const bracket = stands
    ? { low: elevation, atLow: atSite, high: TOP, atHigh: atOther }
    : { low: 0, atLow: atOther, high: elevation, atHigh: atSite };
  return { stands: 'up_to', upTo: closeIn(at, bracket, FOUND, ({ value }) => value < NEAR).low };
}
