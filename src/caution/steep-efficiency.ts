import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/**
 * A pump short of power where the rows of its efficiency change so steeply that a little more or less opening changes its speed much:
 * the balance is there, and engines do not hold such a one quietly.
 */
export const steepEfficiency: Hazard = ({ cases }) =>
  cases.flatMap(({ when, point }) =>
    point.assembly.pumps.flatMap((pump): Caution[] => {
      const speed = point.speedOf(pump);
      if (pump.held === undefined || speed >= pump.speed) return [];
      const opened = point.flow(pump.link) / speed;
      const steep = pump.held.unsteadyAt(pump.speed).find(({ from, to }) => opened > from && opened < to);
      if (steep === undefined) return [];
      return [
        {
          code: 'steep_efficiency',
          level: 'warn',
          at: pump.name,
          message: `{at} is short of power ${when} where the efficiency of its file changes too steeply, between {from} and {to} at rated speed: its engine may hunt, and a little change of the lines changes its speed and pressure much`,
          action:
            'Measure the efficiency again between those flows, where a real pump changes more gently; until then stay off them, or run slower.',
          values: {
            from: { value: steep.from, dimension: 'flow' },
            to: { value: steep.to, dimension: 'flow' },
          },
          source:
            'power balance by the affinity laws: several speeds at one flow, or several flows at one pressure',
        },
      ];
    }),
  );
