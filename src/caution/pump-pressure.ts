import { type PumpSideLoad, pumpLoads } from '../limits/pump-limit.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

const SIDES: Record<PumpSideLoad['side'], { code: string; action: string }> = {
  casing: {
    code: 'casing_over_limit',
    action:
      'Do not run it so. Lower the throttle, set a relief valve below the limit, or use another staging.',
  },
  inlet: {
    code: 'inlet_over_limit',
    action:
      'Do not run it so. Throttle the pump before it, put the pump with the higher inlet limit second, or work in parallel.',
  },
};

/** A casing or an inlet with its seal above the limit that its maker sets, in any state. */
export const pumpPressure: Hazard = ({ cases }) =>
  (['casing', 'inlet'] as const).flatMap((side) =>
    cases.flatMap(({ when, point }) =>
      point.assembly.pumps.flatMap((pump): Caution[] =>
        pumpLoads(point, pump).flatMap((load): Caution[] => {
          if (load.side !== side || load.limit === undefined || load.pressure <= load.limit) return [];
          const { code, action } = SIDES[side];
          return [
            {
              code,
              level: 'stop',
              at: pump.name,
              value: { value: load.pressure, dimension: 'pressure' },
              limit: { value: load.limit, dimension: 'pressure' },
              message: `The ${side} of {at} stands at {value} ${when}; its limit is {limit}`,
              action,
              source: 'limit stated for the pump',
            },
          ];
        }),
      ),
    ),
  );
