import { FOOT } from '../physics/customary.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A rating that holds has this much height in hand, m. Certification of pumpers holds to 2,000 ft. */
const IN_HAND = 2000 * FOOT;

/** A pass that a climb or a hot day would turn into a failure. */
export const thinAir: Hazard = ({ layout, pumpVerdict, running, judged }) => {
  if (pumpVerdict !== 'meets') return [];
  const { highestPlace } = running ?? {};
  const { hotDay } = judged ?? {};
  const cautions: Caution[] = [];
  const top = highestPlace?.stands === 'up_to' ? highestPlace.upTo : undefined;
  const wanted = layout.site.elevation + IN_HAND;
  if (top !== undefined && top < wanted) {
    cautions.push({
      code: 'thin_air',
      level: 'warn',
      at: 'the verdict',
      value: { value: top, dimension: 'length' },
      limit: { value: wanted, dimension: 'length' },
      message:
        'The pumps make it here, and no longer above {value}: thinner air leaves the engines less power and the suctions less push',
      action:
        'Ask for the verdict across the places where the engine will work, and find more margin for the highest.',
      source:
        'guide for certification of fire department pumpers: performance is certified to 2,000 ft; that much is wanted over the site (common practice, no source)',
    });
  }
  if (hotDay?.verdict === 'falls_short') {
    cautions.push({
      code: 'hot_day',
      level: 'warn',
      at: 'the verdict',
      value: { value: hotDay.airTemperature, dimension: 'temperature' },
      message:
        'The pumps make it in this air, and would not at {value}: hot air leaves the engines less power',
      action: 'Find more margin, or test on the hottest day that the engine will work on.',
      source: 'NFPA 1911, air of 0 to 110 degF at a test (from memory)',
    });
  }
  return cautions;
};
