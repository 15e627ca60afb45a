import { SCALDING } from '../limits/water-temperature.js';
import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** A pump that moves some water, and too little of it: what leaves it scalds. */
export const hotPump: Hazard = ({ heat = [] }) =>
  heat.flatMap(({ name, flow, leaving, shutFlow, shutLeaving, leastFlow }): Caution[] => {
    const states = [
      { temperature: leaving, moved: flow, when: 'as it works' },
      { temperature: shutLeaving, moved: shutFlow, when: 'with the outlets shut' },
    ];
    return states.flatMap(({ temperature, moved, when }) => {
      if (temperature === undefined || temperature < SCALDING || leastFlow === undefined) return [];
      return [
        {
          code: 'pump_runs_hot',
          level: 'warn',
          at: name,
          value: { value: temperature, dimension: 'temperature' },
          limit: { value: SCALDING, dimension: 'temperature' },
          message: `{at} moves {moved} ${when}, and its power warms that to {value}: more than {limit} scalds. {least} would keep it within a few degrees`,
          action: 'Widen the orifice of its cooling line, keep a nozzle cracked open, or throttle down.',
          values: {
            moved: { value: moved, dimension: 'flow' },
            least: { value: leastFlow, dimension: 'flow' },
          },
          source: 'energy balance; least flow by gpm = bhp / 2.95 for 15 degF, general pump texts',
        },
      ];
    });
  });
