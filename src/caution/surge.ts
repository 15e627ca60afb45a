import type { Hazard } from './hazard.js';

/**
 * A nozzle whose closing throws its hose over the pressure that it is tested to. Where the layout states no wave speed this is told
 * with the surge alone: by what is recalled of hose it would be said of most lays.
 */
export const surge: Hazard = ({ control }) => {
  const over = (control?.surges ?? []).flatMap(({ nozzle, stated, peak, hoseLimit }) =>
    stated && hoseLimit !== undefined && peak > hoseLimit.pressure ? [{ nozzle, peak, hoseLimit }] : [],
  );
  const [worst] = over.sort((a, b) => b.peak / b.hoseLimit.pressure - a.peak / a.hoseLimit.pressure);
  if (worst === undefined) return [];
  return [
    {
      code: 'surge_over_hose',
      level: 'warn',
      at: worst.nozzle,
      value: { value: worst.peak, dimension: 'pressure' },
      limit: { value: worst.hoseLimit.pressure, dimension: 'pressure' },
      message: `When {at} is shut as the layout says, the hose before it is thrown to {value}; ${worst.hoseLimit.what} is {limit}`,
      action:
        'Shut it slowly, as the crew is drilled to; flow less through it, or lay hose of a higher rating.',
      source: `Joukowsky, with the wave speed of the layout; ${worst.hoseLimit.source}`,
    },
  ];
};
