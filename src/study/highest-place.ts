import type { TypingAsked } from '../layout/layout.js';
import { FOOT } from '../physics/customary.js';
import type { HighestPlace } from './answer.js';
import { under } from './conditions.js';
import type { Rig } from './rig.js';
import { verdictHere } from './verdict-here.js';

/** Highest place that is looked at, m (19,685 ft): as high as the derating rules are read. */
const TOP = 6000;
/** Places are found to this, m. */
const FOUND = 5 * FOOT;

/**
 * The highest place at which the pumps' verdict still stands, with the day and everything else as laid out: higher up the
 * engines have less power and the air pushes less water into the pumps, so that nothing gets better on the way up.
 */
export function highestPlace(rig: Rig, typing: TypingAsked): HighestPlace {
  const stands = (elevation: number) =>
    verdictHere(rig.with(under(rig.layout, { elevation })), typing).verdict === 'meets';
  const { elevation } = rig.layout.site;
  const here = stands(elevation);
  if (here && stands(TOP)) return { stands: 'everywhere', upTo: TOP };
  const sea = Math.min(0, elevation);
  if (!here && !stands(sea)) return { stands: 'nowhere' };
  let low = here ? elevation : sea;
  let high = here ? TOP : elevation;
  while (high - low > FOUND) {
    const middle = (low + high) / 2;
    if (stands(middle)) low = middle;
    else high = middle;
  }
  return { stands: 'up_to', upTo: low };
}
