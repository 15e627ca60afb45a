import { RELAY_RELIEF_OVER, RELAY_RELIEF_SOURCE } from '../physics/relay.js';
import type { Hazard } from './hazard.js';

/** The intake relief of an engine that another one feeds: too low, it spills the supply; too high, it guards nothing. */
export const relayRelief: Hazard = ({ layout }) => {
  const { supply } = layout;
  if (supply.kind !== 'relay' || supply.relief === undefined) return [];
  const { pressure, relief } = supply;
  const low = relief <= pressure;
  if (!low && relief <= pressure + RELAY_RELIEF_OVER * (1 + 1e-9)) return [];
  return [
    {
      code: low ? 'relay_relief_low' : 'relay_relief_high',
      level: 'warn',
      at: 'the intake relief',
      value: { value: relief, dimension: 'pressure' },
      limit: { value: low ? pressure : pressure + RELAY_RELIEF_OVER, dimension: 'pressure' },
      message: low
        ? 'The intake relief opens at {value}, and {limit} stands at the intake: it spills the water that the relay brings'
        : 'The intake relief opens at {value}; {limit} is the usual setting, and a surge below the setting reaches pump and hose',
      action: 'Set it before water flows, while the relay runs at its pressure.',
      source: RELAY_RELIEF_SOURCE,
    },
  ];
};
