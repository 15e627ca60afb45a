import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A pump inlet whose absolute pressure falls to that of water vapour: it cannot pass the flow that is asked of it. */
export const inletVapour: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) => {
    const { atmosphericPressure, vapourPressure } = point.assembly.site;
    return point.assembly.pumps.flatMap((pump): Caution[] => {
      const value = point.gaugePressure(pump.inlet);
      const limit = vapourPressure - atmosphericPressure;
      if (value > limit) return [];
      return [
        {
          code: 'inlet_below_vapour',
          level: 'stop',
          at: pump.name,
          value: { value, dimension: 'pressure' },
          limit: { value: limit, dimension: 'pressure' },
          message: `The inlet of {at} would have to stand at {value} ${when}; water boils at {limit} there, so this flow cannot be had`,
          action: 'Widen or shorten the suction, lower the lift, or ask for less flow.',
          source: 'vapour pressure of water and standard atmosphere',
        },
      ];
    });
  });
