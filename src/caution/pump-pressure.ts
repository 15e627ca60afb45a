import type { AssembledPump } from '../assembly/assembly.js';
import type { OperatingPoint } from '../assembly/operating-point.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

interface Side {
  code: string;
  part: string;
  limit: (pump: AssembledPump) => number | undefined;
  pressure: (point: OperatingPoint, pump: AssembledPump) => number;
  action: string;
}

const CASING: Side = {
  code: 'casing_over_limit',
  part: 'casing',
  limit: (pump) => pump.model.limits?.casing,
  pressure: (point, pump) => point.totalPressure(pump.discharge),
  action: 'Do not run it so. Lower the throttle, set a relief valve below the limit, or use another staging.',
};

const INLET: Side = {
  code: 'inlet_over_limit',
  part: 'inlet',
  limit: (pump) => pump.model.limits?.inlet,
  pressure: (point, pump) => point.totalPressure(pump.inlet),
  action:
    'Do not run it so. Throttle the pump before it, put the pump with the higher inlet limit second, or work in parallel.',
};

/** A casing or an inlet with its seal above the limit that its maker sets, in any state. */
export const pumpPressure: Hazard = ({ cases }) =>
  [CASING, INLET].flatMap((side) =>
    cases.flatMap(({ when, point }) =>
      point.assembly.pumps.flatMap((pump): Caution[] => {
        const limit = side.limit(pump);
        const value = side.pressure(point, pump);
        if (limit === undefined || value <= limit) return [];
        return [
          {
            code: side.code,
            level: 'stop',
            at: pump.name,
            value: { value, dimension: 'pressure' },
            limit: { value: limit, dimension: 'pressure' },
            message: `The ${side.part} of {at} stands at {value} ${when}; its limit is {limit}`,
            action: side.action,
            source: 'limit stated for the pump',
          },
        ];
      }),
    ),
  );
