import { heightOfPressure } from '../physics/elevation.js';
import { table } from '../study/table.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A pump that has less net positive suction head than it needs at its flow: it cavitates, and its curve no longer holds. */
export const npshShort: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) =>
    point.assembly.pumps.flatMap((pump): Caution[] => {
      const { atmosphericPressure, vapourPressure, waterDensity } = point.assembly.site;
      const flow = point.flow(pump.link);
      const limit = pump.model.npsh_required && flow > 0 ? table(pump.model.npsh_required, flow) : undefined;
      if (limit === undefined) return [];
      const inlet = point.totalPressure(pump.inlet) + atmosphericPressure - vapourPressure;
      const value = heightOfPressure(inlet, waterDensity);
      if (value >= limit) return [];
      return [
        {
          code: 'npsh_short',
          level: 'stop',
          at: pump.name,
          value: { value, dimension: 'length' },
          limit: { value: limit, dimension: 'length' },
          message: `{at} has {value} of net positive suction head ${when} and needs {limit}: it cavitates and gives less than its curve`,
          action: 'Lower the lift, widen or shorten the suction, clear the strainer, or ask for less flow.',
          source: 'Hydraulic Institute definition of NPSH required (from memory); the table of the pump',
        },
      ];
    }),
  );
