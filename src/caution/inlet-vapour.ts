import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import { boilingPressure } from '../limits/impossible.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Whether the inlet of a pump would have to stand where water boils. */
export function belowVapour(point: OperatingPoint, pump: AssembledPump): boolean {
  return point.gaugePressure(pump.inlet) <= boilingPressure(point);
}

/** A pump inlet whose absolute pressure falls to that of water vapour: it cannot pass the flow that is asked of it. */
export const inletVapour: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) => {
    const limit = boilingPressure(point);
    return point.assembly.pumps.flatMap((pump): Caution[] => {
      if (!belowVapour(point, pump)) return [];
      return [
        {
          code: 'inlet_below_vapour',
          level: 'stop',
          at: pump.name,
          limit: { value: limit, dimension: 'pressure' },
          message: `The inlet of {at} would have to stand below {limit} ${when}, where water boils: this flow cannot be had`,
          action: 'Widen or shorten the suction, lower the lift, or ask for less flow.',
          source: 'vapour pressure of water and standard atmosphere',
        },
      ];
    });
  });
