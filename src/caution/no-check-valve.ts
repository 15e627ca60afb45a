import type { Hazard } from './hazard.js';

/** Two pumps in parallel of which one has no check valve of its own: when it stops or weakens, water runs back through it. */
export const noCheckValve: Hazard = ({ cases }) => {
  const parallel = cases.find(({ point }) => point.assembly.staging === 'parallel');
  if (parallel === undefined) return [];
  return parallel.point.assembly.pumps
    .filter((pump) => !pump.booster && pump.checkValve === undefined)
    .map((pump) => ({
      code: 'no_check_valve',
      level: 'warn',
      at: pump.name,
      message:
        'The discharge of {at} has no check valve: when it stops or weakens, the other pump drives water back through it',
      action: 'Put a check valve in the discharge of each pump, behind its own cooling line.',
      source: 'NWCG S-211 and Water Handling Equipment Guide, check valves on each leg (from memory)',
    }));
};
