import type { HoseStep, Step } from '../layout/step.js';
import { FOOT, PSI } from '../physics/customary.js';
import { pressureOfHeight } from '../physics/elevation.js';
import { waterDensity } from '../physics/water.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Rise over length of hose at 45 degrees; steeper ground is climbed with hands. Common practice, no source. */
const STEEPEST = Math.SQRT1_2;
/** What the field rule makes of a foot of height. NWCG Firefighter Math 3.4. */
const FIELD_RULE = (0.5 * PSI) / FOOT;
/** Two marks of a common gauge; a gap of the two rules that a reader would see. Common practice, no source. */
const SEEN = 10 * PSI;

/** Heights that look like lengths along the slope, and climbs on which the field rule and the true weight of water part. */
export const slopeAsHeight: Hazard = ({ layout }) => [
  ...layout.lay.flatMap(({ steps }) => hosesOf(steps).flatMap(tooSteep)),
  ...fieldRule(
    layout.lay.map(({ steps }) => highest(steps)),
    waterDensity(layout.site.water_temperature),
  ),
];

function hosesOf(steps: readonly Step[]): HoseStep[] {
  return steps.flatMap((step): HoseStep[] => {
    if (step.kind === 'hose') return [step];
    if (step.kind === 'branch') return step.to.flatMap((line) => hosesOf(line.steps));
    return step.kind === 'siamese' ? step.siamese.flatMap(hosesOf) : [];
  });
}

function tooSteep({ label, rise, riseBasis, length }: HoseStep): Caution[] {
  const limit = STEEPEST * length;
  if (riseBasis !== 'stated' || Math.abs(rise) <= limit) return [];
  return [
    {
      code: 'slope_as_height',
      level: 'warn',
      at: label,
      value: { value: Math.abs(rise), dimension: 'length' },
      limit: { value: limit, dimension: 'length' },
      message:
        '{at} is said to climb or fall {value} in {length} of hose, steeper than one in one ({limit}): that is a cliff, or the length along the slope taken for its height',
      action: 'Take the height from a map or an altimeter, or give it as a grade: rise: 30 %.',
      values: { length: { value: length, dimension: 'length' } },
      source: 'a slope of 45 degrees as the bound (common practice, no source)',
    },
  ];
}

/** How far the highest end of a line lies above its start. */
function highest(steps: readonly Step[]): number {
  let height = 0;
  let most = 0;
  for (const step of steps) {
    if (step.kind === 'branch') {
      for (const line of step.to) most = Math.max(most, height + highest(line.steps));
    } else if ('rise' in step) height += step.rise;
    most = Math.max(most, height);
  }
  return most;
}

function fieldRule(climbs: readonly number[], density: number): Caution[] {
  const climb = Math.max(0, ...climbs);
  const rule = FIELD_RULE * climb;
  const weight = pressureOfHeight(climb, density);
  if (rule - weight <= SEEN) return [];
  return [
    {
      code: 'field_rule_gap',
      level: 'note',
      at: 'the lay',
      value: { value: rule - weight, dimension: 'pressure' },
      message:
        'The lay climbs {climb}: water weighs {weight} there, and the field rule of half a psi a foot says {rule}, {value} more',
      action: 'Name the rule when a figure is passed on; this program takes the weight of the water.',
      values: {
        climb: { value: climb, dimension: 'length' },
        weight: { value: weight, dimension: 'pressure' },
        rule: { value: rule, dimension: 'pressure' },
      },
      source: 'NWCG Firefighter Math 3.4: 0.5 psi/ft in the field, 0.434 exact',
    },
  ];
}
