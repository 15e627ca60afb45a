import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A pump that runs past the last point of its curve: what it makes there is not known, and it may cavitate or overload. */
export const offCurve: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) =>
    point.assembly.pumps
      .filter((pump) => point.isOffCurve(pump))
      .map((pump): Caution => {
        const limit = pump.curve.lastFlow * point.speedOf(pump);
        return {
          code: 'pump_off_curve',
          level: 'warn',
          at: pump.name,
          value: { value: point.flow(pump.link), dimension: 'flow' },
          limit: { value: limit, dimension: 'flow' },
          message: `{at} would move {value} ${when}, past the end of its curve at {limit}: every figure that rests on it is beyond what was measured`,
          action:
            'Measure the pump further out, shut a line, or throttle a valve until the flow is on the curve.',
          source: 'points of the pump curve',
        };
      }),
  );
