import { FOOT } from '../physics/customary.js';
import type { Caution } from './caution.js';
import type { Judged, Running } from './facts.js';
import type { Hazard } from './hazard.js';

/** A rating that holds has this much height in hand, m. Certification of pumpers holds to 2,000 ft. */
const IN_HAND = 2000 * FOOT;

const HEIGHT_SOURCE =
  'guide for certification of fire department pumpers: performance is certified to 2,000 ft; that much is wanted over the site (common practice, no source)';
const HOT_SOURCE = 'NFPA 1911, air of 0 to 110 degF at a test (from memory)';
const MORE_MARGIN_HIGHER =
  'Ask for the verdict across the places where the engine will work, and find more margin for the highest.';
const MORE_MARGIN_HOTTER = 'Find more margin, or test on the hottest day that the engine will work on.';
const GIVE_POWER = 'Give the power of each engine and the efficiency of its pump';

/** A pass that a climb or a hot day would turn into a failure. */
export const thinAir: Hazard = ({ layout, pumpVerdict, running, judged }) => {
  if (pumpVerdict !== 'meets') return [];
  // Where the bracket falls short here already, that is told of the verdict itself.
  const short = running?.powerBracket?.cases.some(({ verdict }) => verdict === 'falls_short') ?? false;
  return [
    ...thinner(running?.highestPlace, layout.site.elevation + IN_HAND, short),
    ...hotter(judged?.hotDay, short),
  ];
};

function thinner(highest: Running['highestPlace'], wanted: number, short: boolean): Caution[] {
  if (highest === undefined) return [];
  const of = (engine: string) => highest.cases?.find((one) => one.engine === engine);
  const [spare, constant, flat] = [of('power_to_spare') ?? highest, of('constant_power'), of('flat_torque')];
  const under = (one: typeof spare | undefined) =>
    one?.stands === 'up_to' && one.upTo !== undefined && one.upTo < wanted ? one.upTo : undefined;
  const made = (top: number, message: string, action: string, more: Partial<Caution> = {}): Caution[] => [
    {
      code: 'thin_air',
      level: 'warn',
      at: 'the verdict',
      value: { value: top, dimension: 'length' },
      limit: { value: wanted, dimension: 'length' },
      message,
      action,
      source: HEIGHT_SOURCE,
      ...more,
    },
  ];
  const limited = short ? undefined : under(flat);
  if (limited !== undefined && constant?.upTo !== undefined) {
    return made(
      limited,
      'A file gives no engine power: if the engine was at its limit when the curve was measured, the pumps make it here and no longer above {value} by flat torque, {constant} by constant power',
      `${GIVE_POWER}, or test the truck as high as it will work.`,
      { values: { constant: { value: constant.upTo, dimension: 'length' } } },
    );
  }
  const top = under(spare);
  if (top === undefined) return [];
  return made(
    top,
    'The pumps make it here, and no longer above {value}: thinner air leaves the engines less power and the suctions less push',
    MORE_MARGIN_HIGHER,
  );
}

function hotter(hotDay: Judged['hotDay'], short: boolean): Caution[] {
  if (hotDay?.verdict !== 'falls_short') return [];
  const { cases = [] } = hotDay;
  const lost = cases.filter(({ verdict }) => verdict === 'falls_short');
  const made = (message: string, action: string): Caution[] => [
    {
      code: 'hot_day',
      level: 'warn',
      at: 'the verdict',
      value: { value: hotDay.airTemperature, dimension: 'temperature' },
      message,
      action,
      source: HOT_SOURCE,
    },
  ];
  if (cases.length === 0 || lost.some(({ engine }) => engine === 'power_to_spare')) {
    return made(
      'The pumps make it in this air, and would not at {value}: hot air leaves the engines less power',
      MORE_MARGIN_HOTTER,
    );
  }
  if (short) return [];
  const by =
    lost.length > 1 ? 'by constant power or by flat torque' : 'by flat torque, though by constant power';
  return made(
    `A file gives no engine power: if the engine was at its limit when the curve was measured, the pumps would not make it at {value} ${by}`,
    `${GIVE_POWER}, or test on the hottest day that the engine will work on.`,
  );
}
