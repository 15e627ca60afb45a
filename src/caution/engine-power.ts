import type { Caution } from './caution.js';
import type { Hazard } from './hazard.js';

/**
 * An engine that has not the power to hold its governed speed at the required flow, and a verdict that stands only if an
 * engine of unknown power has some to spare.
 */
export const enginePower: Hazard = ({ running, pumpVerdict }) => {
  if (running === undefined) return [];
  const { pumps, powerBracket } = running;
  const limited = pumps.flatMap((pump): Caution[] => {
    if (pump.limitedBy !== 'power' || pump.powerAvailable === undefined) return [];
    return [
      {
        code: 'power_limited',
        level: 'note',
        at: pump.name,
        limit: { value: pump.powerAvailable, dimension: 'power' },
        message:
          'The engine of {at} cannot hold its governed speed at the required flow: its {limit} here turn the pump at {speed} of rated speed',
        action:
          'Count on less higher up and on hotter days; a larger or turbocharged engine, or less flow, would hold the speed.',
        values: { speed: { value: pump.ofRatedSpeed, dimension: 'ratio' } },
        source: 'power balance by the affinity laws, with the derating rule of the layout',
      },
    ];
  });
  const short = powerBracket?.cases.some(({ verdict }) => verdict === 'falls_short') ?? false;
  if (pumpVerdict !== 'meets' || !short || powerBracket === undefined) return limited;
  return [
    ...limited,
    ...powerBracket.pumps.map(
      ({ name, ratio }): Caution => ({
        code: 'verdict_rests_on_power',
        level: 'warn',
        at: name,
        message:
          'The file of {at} gives no engine power: the verdict stands if its engine has power to spare, and falls short if it was at its limit when the curve was measured, with {ratio} of that power left here',
        action:
          'Give the power of the engine and the efficiency of the pump, or test the truck at this height.',
        values: { ratio: { value: ratio, dimension: 'ratio' } },
        source: 'affinity laws between constant power and flat torque, with the derating rule of the layout',
      }),
    ),
  ];
};
