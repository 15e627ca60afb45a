import { type PumpSideLoad, pumpLoads } from '../limits/pump-limit.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

const ACTION: Record<PumpSideLoad['side'], string> = {
  casing: 'Do not run it so. Lower the throttle, set a relief valve below the limit, or use another staging.',
  inlet:
    'Do not run it so. Throttle the pump before it, put the pump with the higher inlet limit second, or work in parallel.',
};

/** A casing or an inlet with its seal above the limit that its maker sets, in any state. */
export const pumpPressure: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) =>
    point.assembly.pumps.flatMap((pump) =>
      pumpLoads(point, pump).flatMap(({ side, pressure, limit }): Caution[] =>
        limit === undefined || pressure <= limit
          ? []
          : [
              {
                code: side === 'casing' ? 'casing_over_limit' : 'inlet_over_limit',
                level: 'stop',
                at: pump.name,
                value: { value: pressure, dimension: 'pressure' },
                limit: { value: limit, dimension: 'pressure' },
                message: `The ${side} of {at} stands at {value} ${when}; its limit is {limit}`,
                action: ACTION[side],
                source: 'limit stated for the pump',
              },
            ],
      ),
    ),
  );
