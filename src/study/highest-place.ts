import type { TypingAsked } from '../layout/layout.js';
import { FOOT } from '../physics/customary.js';
import type { HighestPlace, PowerBracket, VerdictUnder } from './answer.js';
import { under } from './conditions.js';
import { closeIn } from './falling-root.js';
import { atItsLimit, LUGGING, restsOnPower } from './power-bracket.js';
import type { Rig } from './rig.js';
import { slackHere } from './slack-here.js';
import { slackOf } from './verdict-here.js';

/** Highest place that is looked at, m (19,685 ft): as high as the derating rules are read. */
const TOP = 6000;
/** Places are found to this, m. */
const FOUND = 50 * FOOT;

/** Near enough: a slack of this part of what is asked. */
const NEAR = 5e-5;

/**
 * The highest place at which the pumps' verdict still stands, with the day and everything else as laid out: higher up the
 * engines have less power and the air pushes less water into the pumps, so that nothing gets better on the way up. Where a
 * file gives no power it lies in a bracket, as the verdict does, and the least of that is the answer.
 */
export function highestPlace(
  rig: Rig,
  typing: TypingAsked,
  here: VerdictUnder,
  bracket: PowerBracket | undefined,
): HighestPlace {
  const { elevation } = rig.layout.site;
  const rigAt = (height: number) => rig.with(under(rig.layout, { elevation: height }));
  const slackAt = (height: number) => slackHere(rigAt(height), typing);
  const spare = closeInOn(slackAt, elevation, slackOf(here));
  if (bracket === undefined && !restsOnPower(rigAt(TOP))) return spare;
  const cases = LUGGING.map((lugging) => {
    const own = bracket?.cases.find((one) => one.lugging === lugging) ?? here;
    const limitedAt = (height: number) => slackHere(atItsLimit(rigAt(height), lugging), typing);
    return { engine: lugging, ...closeInOn(limitedAt, elevation, slackOf(own)) };
  });
  const all = [{ engine: 'power_to_spare' as const, ...spare }, ...cases];
  const { stands, upTo } = all.reduce((least, one) => (heightOf(one) < heightOf(least) ? one : least));
  return { stands, upTo, cases: all };
}

const heightOf = ({ stands, upTo }: HighestPlace) =>
  stands === 'nowhere' || upTo === undefined ? Number.NEGATIVE_INFINITY : upTo;

function closeInOn(slackAt: (height: number) => number, elevation: number, slackHere: number): HighestPlace {
  const at = (height: number) => ({ value: slackAt(height) });
  const atSite = { value: slackHere };
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
