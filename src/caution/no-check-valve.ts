import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/** Two pumps in parallel of which one has no check valve of its own: when it stops or weakens, water runs back through it. */
export const noCheckValve: Hazard = ({ cases, judged }) => {
  const parallel = cases.find(({ point }) => point.assembly.staging === 'parallel');
  if (parallel === undefined) return [];
  return parallel.point.assembly.pumps
    .filter((pump) => !pump.booster && pump.checkValve === undefined)
    .map((pump): Caution => {
      const back = judged?.pumpsOut
        .find(({ out }) => out === pump.name)
        ?.standing.find(({ check }) => check === 'stuck_open')?.backflowShut;
      const solved =
        back !== undefined ? `: {back} with the outlets shut, should it stand with its valves open` : '';
      return {
        code: 'no_check_valve',
        level: 'warn',
        at: pump.name,
        message: `The discharge of {at} has no check valve: when it stops or weakens, the other pump drives water back through it${solved}`,
        action: 'Put a check valve in the discharge of each pump, behind its own cooling line.',
        values: back === undefined ? undefined : { back: { value: back, dimension: 'flow' } },
        source: 'NWCG S-211 and Water Handling Equipment Guide, check valves on each leg (from memory)',
      };
    });
};
